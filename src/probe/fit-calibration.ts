import { InputError } from '../quantity/errors.js'
import { maxOf, minOf } from '../quantity/extremes.js'
import { numberIn, requireObject, requireRows } from '../quantity/guard.js'
import { asName, hasRow } from '../quantity/one-of.js'
import type { CalibrationForm, CalibrationSample, ProbeCalibration } from './calibration.js'
import { checkPorosity, checkSample, exponentOf } from './calibration-samples.js'
import { monotoneShape, polynomialShape } from './calibration-shapes.js'
import { SAMPLE_WEIGHT } from './domains.js'
import { levelsOf } from './monotone-cubic.js'
import type { ProbeFinding } from './probe-finding.js'
import { worstDisorder } from './sample-order.js'
import type { PossibleWater, PowerOfReading } from './terms.js'

/** A sample that may count more or less than others. */
export interface WeightedSample extends CalibrationSample {
  /** How much it counts, 1 when left out: the inverse of its variance, up to a factor. Unit: 1. Range: (0, ∞). */
  readonly weight?: number
}

/** Samples of one medium and the curve to fit. */
export interface CalibrationFitInput extends PowerOfReading, PossibleWater {
  /** Samples from dry to wet; at least one more than the curve has parameters. */
  readonly samples: readonly WeightedSample[]
  /** Curve to fit: a line where the samples allow it, the fewest parameters that leave no bend. */
  readonly form: CalibrationForm
}

const FORMS = {
  line: { degree: 1, words: 'straight line by least squares' },
  'square-root': { degree: 1, words: 'line in the square root of the reading by least squares' },
  power: { degree: 1, words: 'line in a power of the reading by least squares' },
  quadratic: { degree: 2, words: 'parabola by least squares' },
  cubic: { degree: 3, words: 'cubic by least squares' },
  'monotone-cubic': { degree: 0, words: 'cubic through the samples that never turns' },
}

/**
 * A calibration from several samples of the user's own medium.
 *
 * Weights are first scaled to a mean of 1; h is the leverage of a sample. The monotone cubic passes through every sample (through the
 * mean of samples of equal reading) with the slopes of Fritsch and Butland, and is judged by leaving one reading out at a time.
 *
 * Take at least five samples spread from dry to wet, packed as in the container, and read several insertions in each. The
 * leave-one-out error says what to expect between the samples; the RMSE does not. Oven-dry medium is hot and dusty: let it cool, wear
 * gloves and a mask.
 *
 * @equation `\min_c \sum_i w_i \left(\theta_i - \sum_k c_k r_i^{ak}\right)^2, \quad
 * \mathrm{RMSE} = \sqrt{\frac{\sum w_i e_i^2}{n}}, \quad s = \sqrt{\frac{\sum w_i e_i^2}{n - p}}, \quad
 * \mathrm{LOO} = \sqrt{\frac1n \sum w_i \left(\frac{e_i}{1 - h_i}\right)^2}`
 * @param input - The samples, the form of the curve, and the porosity if it is known.
 * @returns A calibration, as plain data, with its statistics.
 * @throws `DomainError` outside the ranges; `InputError` for too few samples or readings, more water than pores, samples that rise and fall, or a curve that turns between them.
 * @source definition of weighted least squares and of the leave-one-out residual
 * @source fritsch-1984 (monotone cubic)
 * @example
 * const samples = [
 *   [2.1, 0.04], [8.4, 0.2], [16.8, 0.36], [27, 0.5], [39.7, 0.64], [54.8, 0.8],
 * ].map(([e, theta]) => ({ reading: permittivity(e), waterContent: waterContent(theta) }))
 * const calibration = fitCalibration({ samples, form: 'square-root' })
 * calibration.coefficients // => [-0.1593057780, 0.1278378894]
 * calibration.statistics // => { rmse: 0.0097935, residualStandardDeviation: 0.0119945, rSquared: 0.998545, leaveOneOutRmse: 0.018772 }
 */
export function fitCalibration(input: CalibrationFitInput): ProbeCalibration {
  requireObject(input, 'input')
  const { form } = input
  if (!hasRow(FORMS, form))
    throw new InputError('form', `"${asName(form)}" is not known`, `use one of ${Object.keys(FORMS).join(', ')}`)
  const { degree, words } = FORMS[form]
  const exponent = exponentOf(form, input.exponent)
  const porosity = checkPorosity(input.porosity)
  requireRows(input.samples, 'samples')
  const samples = input.samples.map((sample, i) => checkSample(`samples[${i}]`, sample, exponent, porosity))
  refuseFewSamples(samples.length, degree)
  const weights = weightsOf(input.samples)
  const readings = samples.map(({ reading }) => reading as number)
  const waterContents = samples.map(({ waterContent }) => waterContent as number)
  refuseFewReadings(levelsOf(readings, waterContents, weights).length, degree)
  const findings = worstDisorder(readings, waterContents)
  const shape =
    degree === 0
      ? monotoneShape(readings, waterContents, weights)
      : polynomialShape(readings, waterContents, weights, degree, exponent)
  if (shape.statistics.leaveOneOutRmse === undefined) findings.push(ALONE)
  return {
    version: 1,
    method: words,
    form,
    exponent,
    coefficients: shape.coefficients,
    knots: shape.knots,
    span: { min: minOf(readings), max: maxOf(readings), driest: minOf(waterContents), wettest: maxOf(waterContents) },
    ...(porosity === undefined ? {} : { porosity }),
    samples,
    statistics: shape.statistics,
    findings,
  }
}

const ALONE: ProbeFinding = { code: 'one-sample-decides', level: 'caution', about: 'samples' }

function refuseFewSamples(count: number, degree: number): void {
  const needed = degree === 0 ? 3 : degree + 2
  if (count < needed)
    throw new InputError(
      'samples',
      `there are ${count}, and this form needs at least ${needed}`,
      'take more samples; calibrateTwoPoint() takes a dry and a saturated one',
    )
}

function refuseFewReadings(count: number, degree: number): void {
  if (count < Math.max(2, degree + 1, degree === 0 ? 3 : 0))
    throw new InputError(
      'samples',
      `they have only ${count} different readings`,
      'take samples at more water contents; a probe that does not tell dry from wet is broken or not inserted',
    )
}

/** Weights of samples, scaled to a mean of 1. */
function weightsOf(samples: readonly WeightedSample[]): number[] {
  const given = samples.map(({ weight = 1 }) => numberIn(weight, SAMPLE_WEIGHT))
  const mean = given.reduce((total, weight) => total + weight, 0) / given.length
  return given.map((weight) => weight / mean)
}
