import { RAW_READING } from './domains.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** What a probe reports before calibration, in a unit of its own (counts, mV, period). Unit: raw. */
export type RawReading = number & Kind<'raw reading of a probe in its own unit, from rawReading()', 'point'>

/**
 * What a probe reports before calibration, in a unit of its own, from a plain number.
 *
 * @equation `r = v`
 * @param value - What a probe reports before calibration, in a unit of its own. Unit: raw. Range: (-∞, ∞).
 * @returns What a probe reports before calibration, in a unit of its own. Unit: raw.
 * @source definition
 * @example
 * rawReading(640) // => 640
 */
export function rawReading(value: number): RawReading {
  return numberIn(value, RAW_READING) as RawReading
}
