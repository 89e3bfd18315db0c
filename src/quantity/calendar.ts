import { DAY_OF_YEAR, INSTANT } from './domains.js'
import { numberIn, wholeNumberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Number of the day in the year; 1 January is 1. Unit: d. */
export type DayOfYear = number & Kind<'day of the year, from dayOfYear()', 'point'>

/** Moment in universal time, in seconds since 1970-01-01T00:00Z. Unit: s. */
export type Instant = number & Kind<'instant in seconds since 1970-01-01T00:00Z, from instant()', 'point'>

/**
 * Number of the day in the year, from a plain number.
 *
 * @equation `J = v`
 * @param value - Number of the day in the year. Unit: d. Range: integers [1, 366].
 * @returns Number of the day in the year. Unit: d.
 * @source allen-1998, Annex 2, Table 2.5
 * @example
 * dayOfYear(172) // => 172
 */
export function dayOfYear(value: number): DayOfYear {
  return wholeNumberIn(value, DAY_OF_YEAR) as DayOfYear
}

/**
 * Moment in universal time, in seconds since 1970-01-01T00:00Z, from a plain number.
 *
 * @equation `t = v`
 * @param value - Moment in universal time, in seconds since 1970-01-01T00:00Z. Unit: s. Range: [-62135596800, 253402300799].
 * @returns Moment in universal time, in seconds since 1970-01-01T00:00Z. Unit: s.
 * @source ieee-1003-1, seconds since the Epoch
 * @example
 * instant(1750000000) // => 1750000000
 */
export function instant(value: number): Instant {
  return numberIn(value, INSTANT) as Instant
}
