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
  | { readonly known: false; readonly reason: string }

/** The noise of a probe. */
export interface FlatLineLimitsInput {
  /** The noise, made by `estimateNoise`. */
  readonly noise: Noise
}

/**
 * Limits for `flatLineTest` from the noise of the probe. A full container at night is flat too; only readings that agree better than the
 * noise of a living probe allows are frozen.
 *
 * ```math
 * P_n = \int \varphi(x) \left[\Phi(x + \tfrac14) - \Phi(x - \tfrac14)\right]^n dx
 * ```
 *
 * With a tolerance of a quarter of the standard deviation, four equal readings before one happen by chance about once in 1,400 readings,
 * eight once in 1.2 million, when noise is normal and independent.
 *
 * @param input - The noise, made by `estimateNoise`.
 * @returns Limits, or that the readings are too coarse or too few to know.
 * @validity For probes with normal noise that is not smoothed on its way.
 * @source definition of the normal distribution; four and eight in a row: common practice, no source
 * @example
 * ```ts
 * const noise = estimateNoise({ value: Array.from({ length: 200 }, (_, i) => 0.6 + 0.001 * Math.sin(i * i)) })
 * flatLineLimits({ noise }) // => { known: true, tolerance: 0.0002, suspectAfter: 4, failAfter: 8 }
 * ```
 */
export function flatLineLimits({ noise }: FlatLineLimitsInput): FlatLineLimits {
  if (!noise.known) return { known: false, reason: noise.reason }
  if (!noise.resolved)
    return { known: false, reason: 'the readings are rounded more coarsely than their noise: equal ones prove nothing' }
  return { known: true, tolerance: noise.deviation / 4, suspectAfter: 4, failAfter: 8 }
}
