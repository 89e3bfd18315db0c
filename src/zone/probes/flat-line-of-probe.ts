import { selectInPlace } from '../../numerics/select.js'
import { estimateNoise } from '../../record/quality/estimate-noise.js'
import { flatLineLimits } from '../../record/quality/flat-line-limits.js'

/** Limits of the flat line test for one probe. */
export interface FlatLine {
  readonly tolerance: number
  readonly suspectAfter: number
  readonly failAfter: number
}

/** Fewer repeats are never held against a probe whose readings are rounded. */
const MIN_REPEATS = 6
/** Of readings finer than their noise, eight in a row agree once in 1.2 million by chance; four do so on one day of five, and a doubt breaks off a dry-down. */
const MIN_OF_FINE = 8

/**
 * Limits of the flat line test from a probe's own record. Where readings are rounded more coarsely than their noise, equal ones are no
 * proof by themselves: then a run of them is doubted that is three times as long as nearly all runs of this record.
 */
export function flatLineOfProbe(value: Float64Array): FlatLine {
  const limits = flatLineLimits({ noise: estimateNoise({ value }) })
  if (limits.known)
    return limits.suspectAfter >= MIN_REPEATS
      ? limits
      : { ...limits, suspectAfter: MIN_OF_FINE, failAfter: 1.5 * MIN_OF_FINE }
  const usual = usualRun(value)
  const suspectAfter = Math.max(MIN_REPEATS, 3 * usual)
  return { tolerance: 0, suspectAfter, failAfter: 4 * suspectAfter }
}

/** The length that 95 of 100 readings do not exceed with the run of equal readings in which they stand. */
function usualRun(value: Float64Array): number {
  const runs = new Float64Array(value.length)
  let count = 0
  let begin = 0
  for (let i = 1; i <= value.length; i++) {
    if (i < value.length && value[i] === value[begin]) continue
    const first = value[begin]!
    if (!Number.isNaN(first)) for (let k = begin; k < i; k++) runs[count++] = i - begin
    begin = i
  }
  return count === 0 ? 0 : selectInPlace(runs, Math.floor(0.95 * (count - 1)), count)
}
