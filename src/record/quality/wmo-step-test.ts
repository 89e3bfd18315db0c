import { answersOf } from '../../quantity/answer.js'
import { numberIn, requireObject, wholeNumberIn } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { HOUR_DEVIATION, READINGS_OF_HOUR, SERIES_READING } from '../domains.js'
import { QUALITY } from './flags.js'

/** Three readings in a row. */
export interface WmoStepInput {
  /** The reading before. Unit: that of the series. Range: (-∞, ∞). */
  readonly before: number
  /** The reading that is judged. Unit: that of the series. Range: (-∞, ∞). */
  readonly value: number
  /** The reading after. Unit: that of the series. Range: (-∞, ∞). */
  readonly after: number
  /** Standard deviation of the readings of the hour before. Unit: that of the series. Range: [0, ∞). */
  readonly standardDeviation: number
}

/** How far a reading stands from its neighbours, and how far it may. */
export interface WmoStep {
  /** Sum of the distances to both neighbours. Unit: that of the series. */
  readonly distance: number
  /** Four standard deviations. Unit: that of the series. */
  readonly limit: number
  readonly consistent: boolean
}

/**
 * Consistency in time of one reading, as meteorological services test it.
 *
 * @equation `|x_i - x_{i-1}| + |x_i - x_{i+1}| \le 4 s`
 * @param input - Three readings and the standard deviation of those before.
 * @returns Distance, limit and whether the reading is consistent.
 * @source zahumensky-2004
 * @example
 * wmoStepConsistency({ before: 20, value: 21, after: 20.1, standardDeviation: 0.2 }) // => { distance: 1.9, limit: 0.8, consistent: false }
 */
export function wmoStepConsistency(input: WmoStepInput): WmoStep {
  requireObject(input, 'input')
  const value = numberIn(input.value, SERIES_READING, 'value')
  const distance =
    Math.abs(value - numberIn(input.before, SERIES_READING, 'before')) +
    Math.abs(value - numberIn(input.after, SERIES_READING, 'after'))
  const limit = 4 * numberIn(input.standardDeviation, HOUR_DEVIATION, 'standardDeviation')
  return answersOf({ distance, limit, consistent: distance <= limit }, 'standardDeviation')
}

/** A series whose steps are tested against its own past. */
export interface WmoStepSeries {
  /** Readings at even steps; NaN is a missing one. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
  /** So many readings before each one give its standard deviation: those of an hour. Unit: 1. Range: integers [3, 100000]. */
  readonly window: number
}

/**
 * Consistency in time of all readings of a series. It is meant for air temperature, humidity and pressure: a shot is a real step
 * that it would call inconsistent.
 *
 * @procedure Takes the standard deviation of the readings in the window before each one and compares the sum of the distances to both
 * neighbours with four times that.
 * @returns One flag for each reading: suspect where it is not consistent; not evaluated where a neighbour or the whole window is missing.
 * @source zahumensky-2004
 * @example
 * wmoStepTest({ value: [20, 20.1, 20, 20.1, 23, 20.1], window: 3 }) // => [2, 2, 2, 3, 3, 2]
 */
export function wmoStepTest(series: WmoStepSeries): Uint8Array {
  requireObject(series, 'series')
  const value = seriesOf(series.value, 'value')
  const size = wholeNumberIn(series.window, READINGS_OF_HOUR, 'window')
  const flags = new Uint8Array(value.length)
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    if (Number.isNaN(x)) {
      flags[i] = QUALITY.missing
      continue
    }
    const distance = Math.abs(x - (value[i - 1] ?? Number.NaN)) + Math.abs(x - (value[i + 1] ?? Number.NaN))
    const limit = i < size ? Number.NaN : 4 * deviationBefore(value, i, size)
    if (Number.isNaN(distance) || Number.isNaN(limit)) flags[i] = QUALITY.notEvaluated
    else flags[i] = distance <= limit ? QUALITY.pass : QUALITY.suspect
  }
  return flags
}

function deviationBefore(value: ArrayLike<number>, i: number, size: number): number {
  let [count, mean, squares] = [0, 0, 0]
  for (let j = i - size; j < i; j++) {
    const x = value[j]!
    if (Number.isNaN(x)) continue
    const apart = x - mean
    mean += apart / ++count
    squares += apart * (x - mean)
  }
  return count < 3 ? Number.NaN : Math.sqrt(squares / (count - 1))
}
