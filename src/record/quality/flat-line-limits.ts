import { requireObject } from '../../quantity/guard.js'
import type { Noise } from './estimate-noise.js'

/** Limits of the flat line test for a probe of known noise, or why it cannot be judged. */
export type FlatLineLimits =
  | {
      readonly known: true
      /** Readings that differ by less are the same. Unit: that of the series. */
      readonly tolerance: number
      /** So many in a row hardly happen. Unit: 1. */
      readonly suspectAfter: number
      /** So many in a row practically never happen. Unit: 1. */
      readonly failAfter: number
    }
  | { readonly known: false; readonly reason: 'few-readings' }

/** The noise of a probe. */
export interface FlatLineLimitsInput {
  /** The noise, made by `estimateNoise`. */
  readonly noise: Noise
}

/** No record of equal readings is long enough to be sure below this. */
const MIN_ROUNDED = 6

/**
 * Limits for `flatLineTest` from the noise of the probe and the step in which its readings come. A full container at night is flat
 * too; only readings that agree better than the noise of a living probe allows are frozen.
 *
 * With a tolerance of a quarter of the standard deviation, four equal readings before one happen by chance about once in 1,400 readings,
 * eight once in 1.2 million, when noise is normal and independent. Readings that are rounded more coarsely than their noise are equal for
 * as long as the course takes for a step: then six and twelve times as long as one run in twenty of this record is suspect and fails.
 *
 * @equation `P_n = \int \varphi(x) \left[\Phi(x + \tfrac14) - \Phi(x - \tfrac14)\right]^n dx`
 * @param input - The noise, made by `estimateNoise`.
 * @returns Limits, or that there are too few readings.
 * @throws `InputError` for a missing noise.
 * @validity For probes whose noise is not smoothed on its way. Of a rounded record a frozen stretch shows only when it is long, and when
 *   it is not most of the record.
 * @source definition of the normal distribution; four and eight in a row, six and twelve long runs: common practice, no source
 * @example
 * const noise = estimateNoise({ value: Array.from({ length: 200 }, (_, i) => 0.6 + 0.001 * Math.sin(i * i)) })
 * flatLineLimits({ noise }) // => { known: true, tolerance: 0.0002, suspectAfter: 4, failAfter: 8 }
 * const rounded = estimateNoise({ value: Array.from({ length: 200 }, (_, i) => Math.round(60 - i / 9) / 100) })
 * flatLineLimits({ noise: rounded }) // => { known: true, suspectAfter: 54, failAfter: 108 }
 */
export function flatLineLimits(input: FlatLineLimitsInput): FlatLineLimits {
  requireObject(input, 'input')
  const { noise } = input
  requireObject(noise, 'noise')
  if (!noise.known) {
    if (noise.reason === 'few-readings') return { known: false, reason: 'few-readings' }
    // All readings are the same: a living probe may rest on one step for a while, not for days.
    return { known: true, tolerance: 0, suspectAfter: 30, failAfter: 60 }
  }
  if (noise.resolved) return { known: true, tolerance: noise.standardDeviation / 4, suspectAfter: 4, failAfter: 8 }
  const suspectAfter = Math.max(MIN_ROUNDED, 6 * noise.longRun)
  return { known: true, tolerance: noise.step / 4, suspectAfter, failAfter: 2 * suspectAfter }
}
