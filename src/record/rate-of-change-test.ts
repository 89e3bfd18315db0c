import type { Domain } from '../quantity/domain.js'
import { numberIn } from '../quantity/guard.js'
import { equalLengths } from './equal-lengths.js'
import { QUALITY } from './flags.js'

const MOST: Domain = {
  quantity: 'fastest change',
  unit: 'unit of the series per second',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a change per second, zero or more',
}

/** A series with the fastest change that is believed. */
export interface RateOfChangeInput {
  /** Times of the readings. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Readings; NaN is a missing one. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
  /** Fastest change that is believed. Unit: that of the series per s. Range: [0, ∞). */
  readonly most: number
  /** Which way a change counts; irrigation is a real fast rise, so that only falls may be tested. */
  readonly direction?: 'both' | 'rise' | 'fall'
}

/**
 * Rate of change test with a fixed limit: a reading that differs from the one before by more than is believed in that time.
 *
 * The manual's own limit is a multiple of the standard deviation of the hours before: see `changeAgainstSpreadTest`. A fixed limit a second,
 * as here, is the usual choice where the fastest true change is known.
 *
 * ```math
 * \frac{|x_i - x_{i-1}|}{t_i - t_{i-1}} > \text{limit}
 * ```
 *
 * @param input - Times, readings and limit.
 * @returns One flag for each reading; the first, and those after a missing reading or a clock that did not advance, are not evaluated.
 * @throws `DomainError` outside the range, `InputError` for lists of different lengths.
 * @source Integrated Ocean Observing System (2016), Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data (QARTOD), version 2.0, Test 7, with a fixed limit in place of its standard deviations
 * @example
 * ```ts
 * rateOfChangeTest({ time: [0, 300, 600], value: [0.5, 0.501, 0.55], most: 0.0001 }) // => [2, 1, 3]
 * ```
 */
export function rateOfChangeTest(input: RateOfChangeInput): Uint8Array {
  const { time, value } = input
  const limits = checkedRate(input)
  equalLengths(time, value)
  const flags = new Uint8Array(value.length)
  let before = Number.NaN
  let then = Number.NaN
  for (let i = 0; i < value.length; i++) {
    const x = value[i] as number
    const now = time[i] as number
    flags[i] = rateFlag(before, x, now - then, limits)
    before = x
    then = now
  }
  return flags
}

type RateLimits = Required<Omit<RateOfChangeInput, 'time' | 'value'>>

export function checkedRate(input: Omit<RateOfChangeInput, 'time' | 'value'>): RateLimits {
  return { most: numberIn(input.most, MOST, 'most'), direction: input.direction ?? 'both' }
}

export function rateFlag(before: number, x: number, seconds: number, { most, direction }: RateLimits): number {
  if (Number.isNaN(x)) return QUALITY.missing
  const change = x - before
  if (Number.isNaN(change) || !(seconds > 0)) return QUALITY.notEvaluated
  const size = direction === 'both' ? Math.abs(change) : direction === 'rise' ? change : -change
  return size / seconds > most ? QUALITY.suspect : QUALITY.pass
}
