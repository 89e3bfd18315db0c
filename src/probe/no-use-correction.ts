import type { LinearFit } from '../numerics/least-squares.js'
import { InputError } from '../quantity/errors.js'
import type { Temperature } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../quantity/guard.js'
import { REFERENCE_TEMPERATURE } from './domains.js'
import { type Cause, causeOf, fitCauses, refuseNarrow, refuseTogether, wholeRows } from './no-use-causes.js'
import type { ProbeFinding } from './probe-finding.js'

/** A period in which the water did not change: covered containers in the dark, without plants, shots or drain. */
export interface NoUsePeriod {
  /** Water contents that the probe gave; NaN is missing. Unit: m³/m³. Range: any. */
  readonly waterContents: Float64Array
  /** Temperatures of the medium at the same times; NaN is missing. Unit: °C. Range: any. */
  readonly temperatures: Float64Array
  /** Bulk EC at 25 °C at the same times, to be fitted as well; NaN is missing. Unit: dS/m. Range: any. */
  readonly bulkECs?: Float64Array
  /** Hours since the start, to take off a slow loss of water; NaN is missing. Unit: h. Range: any. */
  readonly hours?: Float64Array
  /** Temperature to which readings are brought, 25 when left out. Unit: °C. Range: [-10, 60]. */
  readonly referenceTemperature?: Temperature
}

/** One fitted slope. */
export interface CorrectionSlope {
  /** Change of the water content that the probe gives, per kelvin, dS/m or hour. Unit: m³/m³ per unit of the cause. */
  readonly slope: number
  /** Standard error, widened for readings that follow each other. Unit: m³/m³ per unit of the cause. */
  readonly standardError: number
  /** Where the correction is zero. Unit: that of the cause. */
  readonly reference: number
  /** Lowest value seen. Unit: that of the cause. */
  readonly min: number
  /** Highest value seen. Unit: that of the cause. */
  readonly max: number
}

/** How temperature and salt move a probe's water content: plain data, to be kept with the calibration. */
export interface NoUseCorrection {
  readonly temperature: CorrectionSlope
  readonly bulkEC?: CorrectionSlope
  readonly hours?: CorrectionSlope
  /** Standard deviation of the residuals. Unit: m³/m³. */
  readonly residualStandardDeviation: number
  /** Correlation of each residual with the one before. Unit: 1. */
  readonly serialCorrelation: number
  /** Rows used. Unit: 1. */
  readonly rows: number
  /** Rows left out because a value was missing. Unit: 1. */
  readonly missing: number
  readonly findings: readonly ProbeFinding[]
}

const NAMES = ['temperatures', 'bulkECs', 'hours']
/** Units of the slopes that a finding may tell. */
const SLOPE_UNITS = ['m³/m³ per K', 'm³/m³ per dS/m']

/** Common practice, no source: less than this tells nothing. */
const MIN = { rows: 24, kelvins: 3, decisiemens: 0.2 }

/**
 * How temperature, and if wanted salt, move the water content that a probe gives, from a period in which the water itself did not
 * change.
 *
 * A probe may read wetter or drier as it warms, by its frequency and by the salt in the medium: only an own record can tell. Bulk EC
 * follows temperature and water itself; where the two go together their slopes cannot be told apart and the fit is refused.
 *
 * @equation `\theta = \theta_0 + b_T (T - T_r) + b_E (\sigma - \bar\sigma) + b_t\,t + e`
 * @param period - Water contents with temperatures, and if known bulk EC and time.
 * @procedure Least squares on the rows without gaps; standard errors are widened by the serial correlation of the residuals. Refuses fewer than 24 rows, less than 3 K or 0.2 dS/m of spread, and causes that go together.
 * @returns Slopes with standard errors, residual spread and findings.
 * @throws `DomainError` outside the range; `InputError` for lists of unequal length or a record that cannot tell.
 * @source definition of least squares; limits are common practice, no source
 * @example
 * const temperatures = Float64Array.from({ length: 48 }, (_, i) => 20 + 5 * Math.sin((i * Math.PI) / 12))
 * const waterContents = temperatures.map((t) => 0.55 + 0.002 * (t - 25))
 * fitNoUseCorrection({ waterContents, temperatures }).temperature.slope // => 0.002
 */
export function fitNoUseCorrection(period: NoUsePeriod): NoUseCorrection {
  requireObject(period, 'period')
  const reference = numberIn(optionOr(period.referenceTemperature, 25), REFERENCE_TEMPERATURE, 'referenceTemperature')
  const given = [period.temperatures, period.bulkECs, period.hours]
  const kept = wholeRows(period.waterContents, given, NAMES)
  if (kept.length < MIN.rows)
    throw new InputError('waterContents', `has ${kept.length} whole rows`, 'record a day or more without use')
  const causes = given.map((list, k) =>
    list === undefined ? undefined : causeOf(list, kept, k === 0 ? reference : undefined),
  )
  refuseNarrow('temperatures', causes[0], MIN.kelvins, 'K')
  refuseNarrow('bulkECs', causes[1], MIN.decisiemens, 'dS/m')
  const used = causes.filter((cause) => cause !== undefined)
  refuseTogether(
    used,
    NAMES.filter((_, k) => causes[k] !== undefined),
  )
  const fit = fitCauses(
    used,
    kept.map((i) => period.waterContents[i]!),
  )
  const squares = fit.residuals.reduce((total, e) => total + e * e, 0)
  const variance = squares / (kept.length - (1 + used.length))
  const serial = squares > 0 ? serialCorrelation(fit.residuals, squares) : 0
  const wider = Math.sqrt((1 + Math.max(0, serial)) / (1 - Math.max(0, serial)))
  const slopes = slopesOf(causes, fit, variance, wider)
  const findings = slopes.flatMap((slope, k) => (k < 2 && slope !== undefined ? unproven(k, slope) : []))
  const [temperature, bulkEC, hours] = slopes
  return {
    temperature: temperature as CorrectionSlope,
    ...(bulkEC === undefined ? {} : { bulkEC }),
    ...(hours === undefined ? {} : { hours }),
    residualStandardDeviation: Math.sqrt(variance),
    serialCorrelation: serial,
    rows: kept.length,
    missing: period.waterContents.length - kept.length,
    findings,
  }
}

/** The fitted slope of each cause that was given. */
function slopesOf(
  causes: readonly (Cause | undefined)[],
  { coefficients, inverse }: LinearFit,
  variance: number,
  wider: number,
): (CorrectionSlope | undefined)[] {
  let column = 0
  return causes.map((cause) => {
    if (cause === undefined) return undefined
    column++
    const { reference, min, max } = cause
    const standardError = wider * Math.sqrt(variance * inverse[column]![column]!)
    return { slope: coefficients[column]!, standardError, reference, min, max }
  })
}

function serialCorrelation(residuals: readonly number[], squares: number): number {
  const shared = residuals.slice(1).reduce((total, e, i) => total + e * residuals[i]!, 0)
  return Math.min(0.99, shared / squares)
}

function unproven(k: number, { slope, standardError }: CorrectionSlope): ProbeFinding[] {
  if (Math.abs(slope) > 2 * standardError) return []
  return [{ code: 'slope-not-proven', level: 'note', about: NAMES[k]!, value: slope, unit: SLOPE_UNITS[k]! }]
}
