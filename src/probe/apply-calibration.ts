import type { Finding } from '../quantity/finding.js'
import { within } from '../quantity/guard.js'
import type { RawReading } from '../quantity/raw-reading.js'
import type { Span } from '../quantity/span.js'
import type { WaterContent } from '../quantity/water-content.js'
import type { CalibratedReading, ProbeCalibration } from './calibration.js'

const READING: Span = {
  quantity: 'reading',
  unit: 'raw',
  min: -Infinity,
  max: Infinity,
  hint: 'give the number that the probe reports; leave a missing reading out',
}

/**
 * Water content from a reading of a calibrated probe. A reading outside the span of the samples keeps its value and gets a warning.
 *
 * ```math
 * \theta = c_0 + c_1 x + c_2 x^2 + c_3 x^3
 * ```
 *
 * @param calibration - What the readings mean, made by `calibrateTwoPoint`.
 * @param reading - What the probe reports. Unit: raw. Range: (-∞, ∞).
 * @returns The water content with its warnings.
 * @throws `DomainError` for a reading that is not finite.
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
export function applyCalibration(calibration: ProbeCalibration, reading: RawReading): CalibratedReading {
  const value = calibratedValue(calibration, within(reading, READING))
  const { lowest, highest } = calibration.span
  if (reading >= lowest && reading <= highest) return { waterContent: value as WaterContent, warnings: [] }
  const warning: Finding = {
    code: 'outside-calibration',
    level: 'caution',
    message: `the reading ${reading} lies outside ${lowest} to ${highest}, between which this probe was calibrated: its water content of ${value.toFixed(3)} m³/m³ is an extrapolation`,
    about: 'reading',
    value: reading,
    unit: 'raw',
  }
  return { waterContent: value as WaterContent, warnings: [warning] }
}

/** The bare polynomial, for loops over many readings. NaN stays NaN. */
export function calibratedValue({ of, coefficients }: ProbeCalibration, reading: number): number {
  const x = of === 'reading' ? reading : Math.sqrt(reading)
  let value = 0
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + (coefficients[i] as number)
  return value
}
