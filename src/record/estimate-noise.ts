import { medianInPlace, selectInPlace } from '../numerics/select.js'

/** Readings whose noise is wanted. */
export interface NoiseInput {
  /** Readings at even steps; NaN where one is missing. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
}

/** How much readings scatter about their own course, or why that is not known. */
export type Noise =
  | {
      readonly known: true
      /** Standard deviation of one reading. Unit: that of the series. */
      readonly deviation: number
      /** Six of them: a difference that noise hardly makes, to start with as the least rise of a shot. Unit: that of the series. */
      readonly threshold: number
      /** Whether the readings come in steps of at most half the deviation; if not, equal readings mean nothing. */
      readonly resolved: boolean
      /** Readings with two good neighbours, on which it rests. Unit: 1. */
      readonly readings: number
    }
  | { readonly known: false; readonly reason: string }

/**
 * Noise of a probe from its own record, whatever trends and shots are in it.
 *
 * ```math
 * s = \frac{1.4826}{\sqrt{3/2}} \; \mathrm{median}\left| x_i - \frac{x_{i-1} + x_{i+1}}{2} \right|
 * ```
 *
 * A straight course leaves nothing in these differences, and the median does not see shots and spikes as long as they are rare. A
 * series that was smoothed or interpolated looks quieter than its probe.
 *
 * @param input - The readings.
 * @returns Deviation and threshold, or why they are not known.
 * @source The median absolute deviation and its factor for a normal distribution: Rousseeuw, P. J. and Croux, C. (1993), Journal of the American Statistical Association 88:1273-1283 [not confirmed, source not seen]; six deviations: common practice, no source
 * @example
 * ```ts
 * const noise = estimateNoise({ value: Array.from({ length: 200 }, (_, i) => 0.6 - 0.0001 * i + 0.001 * Math.sin(i * i)) })
 * noise // => { known: true, deviation: 0.0009, resolved: true, readings: 198 }
 * ```
 */
export function estimateNoise({ value }: NoiseInput): Noise {
  const bends = new Float64Array(value.length)
  const steps = new Float64Array(value.length)
  let count = 0
  let moved = 0
  for (let i = 1; i + 1 < value.length; i++) {
    const x = value[i] as number
    const before = value[i - 1] as number
    const bend = Math.abs(x - (before + (value[i + 1] as number)) / 2)
    if (Number.isNaN(bend)) continue
    bends[count++] = bend
    if (x !== before) steps[moved++] = Math.abs(x - before)
  }
  if (count < 20)
    return { known: false, reason: `${count} readings have two good neighbours; it takes at least 20 to judge noise` }
  const typical = medianInPlace(bends, count)
  if (moved === 0) return { known: false, reason: 'all readings are the same' }
  // Few steps are smaller than this; in a rounded record none is.
  const step = selectInPlace(steps, Math.floor(moved / 20), moved)
  // Where the course is straight to the last digit, what is left is rounding, even over one step.
  const deviation = Math.max((1.4826 * typical) / Math.sqrt(1.5), typical > 1e-12 ? 0 : step / Math.sqrt(12))
  return { known: true, deviation, threshold: 6 * deviation, resolved: 2 * step <= deviation, readings: count }
}
