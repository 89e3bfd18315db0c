import type { DayOfYear, Instant } from '../quantity/calendar.js'
import { INSTANT } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { numberIn, optionsOf, wholeNumberIn } from '../quantity/guard.js'
import { DAY_OF_MONTH, MONTH, YEAR } from './domains.js'

/** Days before each month of a year that is no leap year. */
const BEFORE = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365] as const

/** A date of the calendar. */
export interface CalendarDate {
  /** Year of the Gregorian calendar; without it a year of 365 days is taken. Unit: a. Range: integers [1, 9999]. */
  readonly year?: number
  /** Month. Unit: 1. Range: integers [1, 12]. */
  readonly month: number
  /** Day of the month. Unit: d. Range: integers [1, 31]. */
  readonly day: number
}

/**
 * Number of a date in its year.
 *
 * @procedure Days of the months before, with the leap day of the Gregorian calendar where the year has one, and the day of the month.
 * @returns Day of the year, from 1. Unit: d.
 * @throws `DomainError` outside the ranges, `InputError` for a day that the month does not have.
 * @source allen-1998, Annex 2, Table 2.5
 * @example
 * dayOfDate({ month: 9, day: 3 }) // => 246
 * dayOfDate({ year: 2024, month: 9, day: 3 }) // => 247
 */
export function dayOfDate(date: CalendarDate): DayOfYear {
  const { year, month, day } = optionsOf(date)
  const leap = year !== undefined && isLeapYear(wholeNumberIn(year, YEAR, 'year'))
  const m = wholeNumberIn(month, MONTH, 'month')
  const d = wholeNumberIn(day, DAY_OF_MONTH, 'day')
  const before = BEFORE[m - 1]!
  const length = BEFORE[m]! - before + (leap && m === 2 ? 1 : 0)
  if (d > length) throw new InputError('day', `month ${m} has ${length} days, not ${d}`, 'check day and month')
  return (before + d + (leap && m > 2 ? 1 : 0)) as DayOfYear
}

/**
 * Number of the day in its year, in universal time, at an instant. For the day at a site add the offset of its clock first.
 *
 * @procedure Days since the start of 1970, less the days before the year of the Gregorian calendar in which they fall.
 * @param at - Instant. Unit: s. Range: [-62135596800, 253402300799].
 * @returns Day of the year, from 1. Unit: d.
 * @source iso-8601-1-2019, calendar of the proleptic Gregorian rule
 * @example
 * dayOfInstant(instant(1720267200)) // => 188
 */
export function dayOfInstant(at: Instant): DayOfYear {
  return dayOfEpochDay(Math.floor(numberIn(at, INSTANT) / 86400)) as DayOfYear
}

/** Day of the year of a count of days since the start of 1970. */
export function dayOfEpochDay(days: number): number {
  // The mean length of a year finds the year or one of its neighbours.
  let year = 1970 + Math.floor(days / 365.2425)
  if (daysBeforeYear(year) > days) year--
  else if (daysBeforeYear(year + 1) <= days) year++
  return days - daysBeforeYear(year) + 1
}

function daysBeforeYear(year: number): number {
  const past = year - 1
  return 365 * (year - 1970) + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400) - 477
}

function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0)
}
