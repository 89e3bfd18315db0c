import type { WaterContent } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { CalibratedReading, ProbeCalibration, ProbeReading } from './calibration.js'
import { requireCalibration, slopeOf, valueAt } from './calibration-curve.js'
import { checkReading } from './calibration-samples.js'
import { CALIBRATED_CONTENT } from './domains.js'
import type { ProbeFinding } from './probe-finding.js'

/**
 * Water content from a reading of a calibrated probe. A reading outside the span of the samples keeps its value and gets a warning.
 *
 * A monotone cubic passes through its samples and goes on straight beyond them.
 *
 * @equation `\theta = c_0 + c_1 x + c_2 x^2 + c_3 x^3, \quad x = r^a`
 * @param calibration - What the readings mean, made by `calibrateTwoPoint`, `fitCalibration` or `restoreCalibration`.
 * @param reading - What the probe reports; zero or more for the forms with a square root or a power. Unit: raw. Range: (-∞, ∞).
 * @returns The water content with its findings.
 * @throws `DomainError` for a reading that is not finite, or negative under a root or a power.
 * @source definition
 * @example
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * applyCalibration(calibration, rawReading(1200)).findings.length // => 1
 */
export function applyCalibration(calibration: ProbeCalibration, reading: ProbeReading): CalibratedReading {
  requireCalibration(calibration)
  const r = checkReading(reading, calibration.exponent)
  const value = numberIn(valueAt(calibration, r), CALIBRATED_CONTENT)
  return { waterContent: value as WaterContent, findings: findingsAt(calibration, r, value) }
}

function findingsAt(calibration: ProbeCalibration, reading: number, value: number): ProbeFinding[] {
  const { min, max } = calibration.span
  const found: ProbeFinding[] = []
  if (!(reading >= min && reading <= max)) {
    const numbers = { about: 'reading', value: reading, min, max, unit: 'raw' }
    const turned = slopeOf(calibration, reading) * slopeOf(calibration, (min + max) / 2) <= 0
    if (turned) found.push({ code: 'beyond-turning-point', level: 'danger', ...numbers })
    else found.push({ code: 'outside-calibration', level: 'caution', ...numbers })
  }
  const limit = value < 0 ? 0 : (calibration.porosity ?? 1)
  if (value < 0 || value > limit) {
    const code = value < 0 ? 'below-zero' : 'above-porosity'
    found.push({ code, level: 'caution', about: 'waterContent', value, limit, unit: 'm³/m³' })
  }
  return found
}
