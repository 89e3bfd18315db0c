import { InputError } from '../quantity/errors.js'
import { requireObject } from '../quantity/guard.js'
import { asName, hasRow } from '../quantity/one-of.js'
import type { CalibrationSample, ProbeCalibration } from './calibration.js'
import { checkPorosity, checkSample, exponentOf } from './calibration-samples.js'
import { powerOf } from './power-of.js'
import type { ProbeFinding } from './probe-finding.js'
import { checkSpread, fallingReadings } from './reading-spread.js'
import type { PossibleWater, PowerOfReading } from './terms.js'

/** A dry and a saturated sample of one medium. */
export interface TwoPointInput extends PowerOfReading, PossibleWater {
  /** The dry sample. */
  readonly dry: CalibrationSample
  /** The saturated sample, whose water content is the porosity less trapped air, not 1. */
  readonly saturated: CalibrationSample
  /** A line in the reading when left out. */
  readonly form?: 'line' | 'square-root' | 'power'
}

const METHODS = {
  line: 'straight line through a dry and a saturated sample',
  'square-root': 'line in the square root of the reading through a dry and a saturated sample',
  power: 'line in a power of the reading through a dry and a saturated sample',
}

/**
 * A calibration from a dry and a saturated sample of the user's own medium.
 *
 * The exponent a is 1 for the straight line, 1/2 for the line in the square root (for readings that are permittivities), and free
 * for the power form, which Sakaki and others proposed with an oven-dry sample and the porosity as the two water contents; they
 * fitted 2.5 in sands for one kind of probe and 1.0 to 4.6 for others.
 *
 * The reading may rise or fall with water. Both samples must be packed as in the container and weighed when they are read. Two points
 * cannot tell how good they are: weigh one sample half way and compare. Medium from an oven at 105 °C and its glassware burn, and dry
 * peat, coir and perlite make dust: let it cool, wear gloves and a mask.
 *
 * @equation `\theta = \theta_d + (\theta_s - \theta_d)\,\frac{r^a - r_d^a}{r_s^a - r_d^a}`
 * @param input - The two samples, the form of the curve, and the porosity if it is known.
 * @returns A calibration, as plain data.
 * @throws `DomainError` outside the ranges; `InputError` when the readings are equal, the samples are swapped, a sample holds more water than the medium has pores, or exponent and form do not belong together.
 * @source definition: the line through two points; the line in the square root after herkelrath-1991
 * @source sakaki-2008 (power form and 2.5); sakaki-2011 (1.0 to 4.6): abstracts read, equation [not confirmed, source not seen]
 * @example
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * applyCalibration(calibration, rawReading(700)).waterContent // => 0.40
 */
export function calibrateTwoPoint(input: TwoPointInput): ProbeCalibration {
  requireObject(input, 'input')
  const form = input.form ?? 'line'
  if (!hasRow(METHODS, form))
    throw new InputError('form', `${asName(form)} is not for two points`, 'use line, square root or power')
  const exponent = exponentOf(form, input.exponent)
  const porosity = checkPorosity(input.porosity)
  const dry = checkSample('dry', input.dry, exponent, porosity)
  const saturated = checkSample('saturated', input.saturated, exponent, porosity)
  const [r1, r2, t1, t2] = [dry.reading, saturated.reading, dry.waterContent, saturated.waterContent]
  if (r1 === r2)
    throw new InputError(
      'saturated.reading',
      `equals the reading of the dry sample, ${r1}`,
      'read both samples again: a probe that does not tell dry from wet is broken or not inserted',
    )
  if (t1 >= t2)
    throw new InputError(
      'dry.waterContent',
      `${t1} m³/m³ is not below the ${t2} m³/m³ of the saturated sample`,
      'the samples may be swapped: weigh them again',
    )
  checkSpread(r1, r2, t2 - t1)
  const [x1, x2] = [powerOf(r1, exponent), powerOf(r2, exponent)]
  const slope = (t2 - t1) / (x2 - x1)
  return {
    version: 1,
    method: METHODS[form],
    form,
    exponent,
    coefficients: [t1 - slope * x1, slope],
    knots: [],
    span: { min: Math.min(r1, r2), max: Math.max(r1, r2), driest: t1, wettest: t2 },
    ...(porosity === undefined ? {} : { porosity }),
    samples: [dry, saturated],
    findings: [...fallingReadings(r1, r2), ...littleWater(t2 - t1)],
  }
}

/** Between a dry and a saturated sample of any medium lies more water. Common practice, no source. Unit: m³/m³. */
const MIN_WATER = 0.1

function littleWater(value: number): ProbeFinding[] {
  if (value >= MIN_WATER) return []
  return [
    { code: 'little-water-between', level: 'caution', about: 'saturated', value, limit: MIN_WATER, unit: 'm³/m³' },
  ]
}
