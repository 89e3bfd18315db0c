import { minOf } from '../quantity/extremes.js'
import { applyCalibration } from './apply-calibration.js'
import type { ProbeCalibration } from './calibration.js'

/**
 * How far a curve passes by every one of its own samples, where it is of another probe or was changed by hand; undefined where it is their own.
 * A fitted one comes as near as its scatter to one of them at least: the smallest miss is never above the root mean square of all. Unit: m³/m³.
 */
export function missOfOwnSamples(calibration: ProbeCalibration): number | undefined {
  const { samples, statistics } = calibration
  if (samples.length === 0) return undefined
  const nearest = minOf(
    samples.map(({ reading, waterContent }) =>
      Math.abs(applyCalibration(calibration, reading).waterContent - waterContent),
    ),
  )
  // Coefficients may have been rounded.
  return nearest <= 1.01 * (statistics?.rmse ?? 0) + 0.001 ? undefined : nearest
}
