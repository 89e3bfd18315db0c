import type { Finding } from '../quantity/finding.js'
import type { WaterContent } from '../quantity/generated/water-content.js'
import { numberIn } from '../quantity/guard.js'
import { requireObject } from '../quantity/require-object.js'
import type { CalibratedReading, ProbeCalibration, ProbeReading } from './calibration.js'
import { slopeOf, valueAt } from './calibration-curve.js'
import { checkReading } from './calibration-samples.js'
import { CALIBRATED_CONTENT } from './domains.js'

/**
 * Water content from a reading of a calibrated probe. A reading outside the span of the samples keeps its value and gets a warning.
 *
 * ```math
 * \theta = c_0 + c_1 x + c_2 x^2 + c_3 x^3, \quad x = r^a
 * ```
 *
 * A monotone cubic passes through its samples and goes on straight beyond them.
 *
 * @param calibration - What the readings mean, made by `calibrateTwoPoint`, `fitCalibration` or `restoreCalibration`.
 * @param reading - What the probe reports; zero or more for the forms with a square root or a power. Unit: raw. Range: (-∞, ∞).
 * @returns The water content with its warnings.
 * @throws `DomainError` for a reading that is not finite, or negative under a root or a power.
 * @source definition
 * @example
 * ```ts
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * applyCalibration(calibration, rawReading(1200)).warnings.length // => 1
 * ```
 */
export function applyCalibration(calibration: ProbeCalibration, reading: ProbeReading): CalibratedReading {
  requireObject(calibration, 'calibration')
  const r = checkReading(reading, calibration.exponent)
  const value = numberIn(valueAt(calibration, r), CALIBRATED_CONTENT)
  return { waterContent: value as WaterContent, warnings: warningsAt(calibration, r, value) }
}

function warningsAt(calibration: ProbeCalibration, reading: number, value: number): Finding[] {
  const { min: lowest, max: highest } = calibration.span
  const warnings: Finding[] = []
  const waterContent = `${value.toFixed(3)} m³/m³`
  if (!(reading >= lowest && reading <= highest)) {
    const turned = slopeOf(calibration, reading) * slopeOf(calibration, (lowest + highest) / 2) <= 0
    warnings.push({
      code: turned ? 'beyond-turning-point' : 'outside-calibration',
      level: turned ? 'danger' : 'caution',
      message: `the reading ${reading} lies outside ${lowest} to ${highest}, between which this probe was calibrated: its water content of ${waterContent} is an extrapolation${turned ? ' beyond the point where the curve turns, and has no meaning' : ''}`,
      about: 'reading',
      value: reading,
      unit: 'raw',
    })
  }
  const full = calibration.porosity ?? 1
  if (value < 0 || value > full) {
    warnings.push({
      code: value < 0 ? 'below-zero' : 'above-porosity',
      level: 'caution',
      message: `a water content of ${waterContent} cannot be${value < 0 ? ', less than none' : `, more than the pores hold (${full})`}: the probe is not in contact, salt or temperature moves its reading, or the medium is not the calibrated one`,
      about: 'waterContent',
      value,
      unit: 'm³/m³',
    })
  }
  return warnings
}
