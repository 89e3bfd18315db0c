import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { DEVIATIONS, MAX_CHANGE, SPREAD_TIME } from '../domains.js'
import type { Readings, ReadingTimes } from '../terms.js'
import { type Direction, directionOf } from './direction.js'
import { QUALITY } from './flags.js'
import { NO_SPREAD, type RecentSpread, spreadOf, withSpread } from './recent-spread.js'

/** How many standard deviations of the readings before it a step may have. */
export interface StepDeviations {
  /** So many standard deviations are believed. Unit: 1. Range: (0, ∞). */
  readonly count: number
  /** The standard deviation is that of the readings of so long. Unit: s. Range: (0, 31536000). */
  readonly over: Duration
}

/** What a step from one reading to the next is measured by; at least one of the two limits. */
export interface RateOfChangeLimits {
  /** Fastest change that is believed. Unit: that of the series per s. Range: [0, ∞). */
  readonly max?: number
  /** Largest step that is believed, in standard deviations of the readings before. */
  readonly deviations?: StepDeviations
  /** Which way a change counts; irrigation is a real fast rise, so that only falls may be tested. */
  readonly direction?: Direction
}

/** A series with the change that is believed. */
export interface RateOfChangeInput extends Readings, ReadingTimes, RateOfChangeLimits {}

/**
 * Rate of change test: a reading that differs from the one before by more than is believed, in that time or against the spread of the
 * readings before it.
 *
 * The standard deviation s is that of the readings of the time before, in twenty-fifths of it that leave one by one; with fewer than
 * ten readings or no spread it judges nothing.
 *
 * @equation `\frac{|x_i - x_{i-1}|}{t_i - t_{i-1}} > \text{limit} \quad\text{or}\quad |x_i - x_{i-1}| > n\,s_{i-1}`
 * @returns One flag for each reading; the first, and those after a missing reading or a clock that did not advance, are not evaluated.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths, no limit, or an unknown direction.
 * @source qartod-2016, Test 7
 * @example
 * rateOfChangeTest({ time: [0, 300, 600], value: [0.5, 0.501, 0.55], max: 0.0001 }) // => [2, 1, 3]
 * const value = Array.from({ length: 40 }, (_, i) => (i === 39 ? 0.9 : 0.5 + 0.01 * Math.sin(i)))
 * const deviations = { count: 3, over: hours(25) }
 * rateOfChangeTest({ time: value.map((_, i) => 3600 * i), value, deviations }).at(-1) // => 3
 */
export function rateOfChangeTest(input: RateOfChangeInput): Uint8Array {
  requireObject(input, 'input')
  const limits = checkedRate(input)
  const [time, value] = alignedSeries(input.time, input.value, 'value')
  const flags = new Uint8Array(value.length)
  let before = Number.NaN
  let then = Number.NaN
  let spread = NO_SPREAD
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    const now = time[i]!
    flags[i] = rateFlag(before, x, now - then, limits, spread)
    if (limits.over > 0) spread = withSpread(spread, now, x, limits.over)
    before = x
    then = now
  }
  return flags
}

/** The limits as plain numbers; infinite or zero where there is none. */
export interface CheckedRate {
  readonly max: number
  readonly count: number
  readonly over: number
  readonly direction: Direction
}

export function checkedRate({ max, deviations, direction }: RateOfChangeLimits): CheckedRate {
  if (max === undefined && deviations === undefined)
    throw new InputError('max', 'is missing, and so is deviations', 'give at least one of the two limits')
  if (deviations !== undefined) requireObject(deviations, 'deviations')
  return {
    max: max === undefined ? Infinity : numberIn(max, MAX_CHANGE, 'max'),
    count: deviations === undefined ? Infinity : numberIn(deviations.count, DEVIATIONS, 'deviations.count'),
    over: deviations === undefined ? 0 : numberIn(deviations.over, SPREAD_TIME, 'deviations.over'),
    direction: directionOf(direction),
  }
}

export function rateFlag(
  before: number,
  x: number,
  seconds: number,
  { max, count, over, direction }: CheckedRate,
  spread: RecentSpread,
): number {
  if (Number.isNaN(x)) return QUALITY.missing
  const change = x - before
  if (Number.isNaN(change) || !(seconds > 0)) return QUALITY.notEvaluated
  const size = direction === 'both' ? Math.abs(change) : direction === 'rise' ? change : -change
  if (size / seconds > max) return QUALITY.suspect
  if (over === 0) return QUALITY.pass
  const deviation = spreadOf(spread)
  if (deviation === undefined) return max === Infinity ? QUALITY.notEvaluated : QUALITY.pass
  return size > count * deviation ? QUALITY.suspect : QUALITY.pass
}
