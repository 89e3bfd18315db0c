import { InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { RawReading } from '../quantity/raw-reading.js'
import type { Porosity } from '../quantity/share.js'
import type { Span } from '../quantity/span.js'
import type { WaterContent } from '../quantity/water-content.js'
import type { ProbeCalibration } from './calibration.js'

const READING: Span = {
  quantity: 'reading of a sample',
  unit: 'raw',
  min: -Infinity,
  max: Infinity,
  hint: 'give the number that the probe reports',
}
const CONTENT: Span = {
  quantity: 'water content of a sample',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  hint: 'weigh the sample and give the volume of its water per volume of medium',
}
const PORES: Span = {
  quantity: 'porosity',
  unit: '1',
  min: 0,
  max: 1,
  open: 'both',
  hint: 'give the share of pores, between 0 and 1',
}

/** One sample of medium: what the probe reported in it, and what the scale says it held. */
export interface CalibrationSample {
  /** Reading of the probe. Unit: raw. Range: (-∞, ∞). */
  readonly reading: RawReading
  /** Water content from weighing. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** A dry and a saturated sample of one medium. */
export interface TwoPointInput {
  /** The dry sample. */
  readonly dry: CalibrationSample
  /** The saturated sample, whose water content is the porosity less trapped air, not 1. */
  readonly saturated: CalibrationSample
  /** Porosity of the medium, above which no sample can lie. Unit: 1. Range: (0, 1). */
  readonly porosity?: Porosity
}

/**
 * A calibration from a dry and a saturated sample of the user's own medium: the straight line through both.
 *
 * ```math
 * \theta = \theta_d + (r - r_d)\,\frac{\theta_s - \theta_d}{r_s - r_d}
 * ```
 *
 * The reading may rise or fall with water. Both samples must be packed as in the container and weighed when they are read.
 * Oven-dry medium at 105 °C is hot and dusty: handle it with gloves and a mask.
 *
 * @param input - The two samples, and the porosity if it is known.
 * @returns A calibration, as plain data.
 * @throws `DomainError` outside the ranges; `InputError` when the readings are equal, the samples are swapped or a sample holds more water than the medium has pores.
 * @source definition: the line through two points
 * @example
 * ```ts
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * applyCalibration(calibration, rawReading(700)).waterContent // => 0.40
 * ```
 */
export function calibrateTwoPoint({ dry, saturated, porosity }: TwoPointInput): ProbeCalibration {
  const [r1, r2] = [within(dry.reading, READING), within(saturated.reading, READING)]
  const [t1, t2] = [within(dry.waterContent, CONTENT), within(saturated.waterContent, CONTENT)]
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
  if (porosity !== undefined && t2 > within(porosity, PORES)) {
    throw new InputError(
      'saturated.waterContent',
      `${t2} m³/m³ is more than the pores can hold, ${porosity}`,
      'check the volume of the sample and its dry mass',
    )
  }
  const slope = (t2 - t1) / (r2 - r1)
  return {
    version: 1,
    method: 'straight line through a dry and a saturated sample',
    of: 'reading',
    coefficients: [t1 - slope * r1, slope],
    span: { lowest: Math.min(r1, r2), highest: Math.max(r1, r2) },
  }
}
