import { medianInPlace, selectInPlace } from '../../numerics/select.js'
import { requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'

/** Readings whose noise is wanted. */
export interface NoiseInput {
  /** Readings at even steps; NaN where one is missing. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
}

/** How much readings scatter about their own course, or why that is not known. */
export type Noise =
  | {
      readonly known: true
      /** Standard deviation of one reading, rounding included. Unit: that of the series. */
      readonly standardDeviation: number
      /** Six of them: a difference that noise hardly makes, to start with as the least rise of a shot. Unit: that of the series. */
      readonly threshold: number
      /** Step in which the readings come, or the smallest that is common. Unit: that of the series. */
      readonly step: number
      /** Whether that step is at most half the deviation; if not, a few equal readings mean nothing. */
      readonly resolved: boolean
      /** Equal readings in a row that one run in twenty passes. Unit: 1. */
      readonly longRun: number
      /** Readings with two good neighbours, on which it rests. Unit: 1. */
      readonly readings: number
    }
  | { readonly known: false; readonly reason: 'few-readings' | 'constant'; readonly readings: number }

/**
 * Noise of a probe from its own record, whatever trends and shots are in it.
 *
 * A straight course leaves nothing in these differences, and the median does not see shots and spikes as long as they are rare. Rounded
 * readings leave few values, of which half a step is the smallest: the median is then taken as if each were spread over its half step,
 * and is at least what rounding alone makes. A series that was smoothed or interpolated looks quieter than its probe.
 *
 * @equation `s = \frac{1.4826}{\sqrt{3/2}} \; \mathrm{median}\left| x_i - \frac{x_{i-1} + x_{i+1}}{2} \right|`
 * @returns Deviation, step and threshold, or why they are not known: `few-readings` (fewer than 20 with two good neighbours), or
 *   `constant` (all readings are the same).
 * @throws `InputError` for what is no list.
 * @source The median absolute deviation and its factor for a normal distribution: rousseeuw-1993; the median of grouped values: definition; six deviations: common practice, no source
 * @example
 * const noise = estimateNoise({ value: Array.from({ length: 200 }, (_, i) => 0.6 - 0.0001 * i + 0.001 * Math.sin(i * i)) })
 * noise // => { known: true, standardDeviation: 0.0009, resolved: true, readings: 198 }
 */
export function estimateNoise(input: NoiseInput): Noise {
  requireObject(input, 'input')
  const value = seriesOf(input.value, 'value')
  const bends = new Float64Array(value.length)
  const steps = new Float64Array(value.length)
  let count = 0
  let moved = 0
  for (let i = 1; i + 1 < value.length; i++) {
    const x = value[i]!
    const before = value[i - 1]!
    const bend = Math.abs(x - (before + value[i + 1]!) / 2)
    if (Number.isNaN(bend)) continue
    bends[count++] = bend
    // Differences of equal decimals that differ by their last digit only are no step.
    if (Math.abs(x - before) > SAME) steps[moved++] = Math.abs(x - before)
  }
  if (count < 20) return { known: false, reason: 'few-readings', readings: count }
  if (moved === 0) return { known: false, reason: 'constant', readings: count }
  // Few steps are smaller than this; in a rounded record none is.
  const step = selectInPlace(steps, Math.floor(moved / 20), moved)
  const typical = groupedMedian(bends, count, step / 2)
  const deviation = Math.max((1.4826 * typical) / Math.sqrt(1.5), step / Math.sqrt(12))
  return {
    known: true,
    standardDeviation: deviation,
    threshold: 6 * deviation,
    step,
    resolved: 2 * step <= deviation,
    longRun: longRunOf(value),
    readings: count,
  }
}

/** Two readings that differ by less are the same. Unit: that of the series. */
const SAME = 1e-12

/** The median of sizes that come in steps: those of one step are spread evenly about it. */
function groupedMedian(sizes: Float64Array, count: number, step: number): number {
  const middle = Math.round(medianInPlace(sizes, count) / step) * step
  const low = Math.max(0, middle - step / 2)
  const high = middle + step / 2
  let [below, inside] = [0, 0]
  for (let k = 0; k < count; k++) {
    const size = sizes[k]!
    if (size < low) below++
    else if (size < high) inside++
  }
  return inside === 0 ? middle : low + ((high - low) * (count / 2 - below)) / inside
}

/** The number of equal readings in a row that one run in twenty passes. */
function longRunOf(value: ArrayLike<number>): number {
  const runs = new Float64Array(value.length)
  let [count, length] = [0, 0]
  let before = Number.NaN
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    if (Math.abs(x - before) <= SAME) length++
    else {
      if (length > 0) runs[count++] = length
      length = Number.isNaN(x) ? 0 : 1
    }
    before = x
  }
  // The run that the record ends in is one as well: a probe that has frozen stays so.
  if (length > 0) runs[count++] = length
  return selectInPlace(runs, Math.floor(0.95 * (count - 1)), count)
}
