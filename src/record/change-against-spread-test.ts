import type { Duration } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../quantity/guard.js'
import { DEVIATIONS, SPREAD_WINDOW } from './domains.js'
import { equalLengths } from './equal-lengths.js'
import { QUALITY } from './flags.js'
import type { Readings } from './terms.js'

/** A series, and how its changes are judged by its own spread. */
export interface ChangeAgainstSpreadInput extends Readings {
  /** Times of the readings, rising. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Standard deviations that a change may be; 3 by default. Unit: 1. Range: (0, ∞). */
  readonly deviations?: number
  /** Time before a reading from which the standard deviation comes; 25 h by default. Unit: s. Range: (0, ∞). */
  readonly window?: Duration
}

/**
 * Rate of change test of the QARTOD manual: a reading that differs from the one before by more than a few standard deviations of the
 * readings of the hours before.
 *
 * A medium that is watered a few times a day jumps at every shot: test such a series for falls with `rateOfChangeTest`, or test
 * temperatures and climate with this one.
 *
 * @equation `|x_i - x_{i-1}| > k\,s_i, \qquad s_i = \text{standard deviation of the readings from } t_i - w \text{ to before } t_i`
 * @param input - Times, readings and limits.
 * @returns One flag for each reading; not evaluated where the reading before is missing or fewer than three readings lie in the window.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths.
 * @source qartod-2016, Test 7; 3 deviations and 25 h as in public settings of the test
 * @example
 * changeAgainstSpreadTest({ time: [0, 300, 600, 900, 1200], value: [20, 20.1, 20, 20.1, 21] }) // => [2, 2, 2, 1, 3]
 */
export function changeAgainstSpreadTest(input: ChangeAgainstSpreadInput): Uint8Array {
  requireObject(input, 'input')
  const { time, value } = optionsOf(input)
  const deviations = numberIn(input.deviations ?? 3, DEVIATIONS, 'deviations')
  const window = numberIn(input.window ?? 90000, SPREAD_WINDOW, 'window')
  equalLengths(time, value)
  const flags = new Uint8Array(value.length)
  let first = 0
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    while (time[first]! < time[i]! - window) first++
    const change = Math.abs(x - (i === 0 ? Number.NaN : value[i - 1]!))
    const spread = Number.isNaN(change) ? Number.NaN : deviationOf(value, first, i)
    if (Number.isNaN(x)) flags[i] = QUALITY.missing
    else if (Number.isNaN(spread)) flags[i] = QUALITY.notEvaluated
    else flags[i] = change > deviations * spread ? QUALITY.suspect : QUALITY.pass
  }
  return flags
}

/** Sample standard deviation of the readings of a slice that are not missing; NaN for fewer than three. */
function deviationOf(value: ArrayLike<number>, from: number, to: number): number {
  let count = 0
  let mean = 0
  let squares = 0
  for (let i = from; i < to; i++) {
    const x = value[i]!
    if (Number.isNaN(x)) continue
    count++
    const off = x - mean
    mean += off / count
    squares += off * (x - mean)
  }
  return count < 3 ? Number.NaN : Math.sqrt(squares / (count - 1))
}
