import type { DayUnderWay, ZoneDay } from '../day/zone-day.js'
import { type Known, known, unknown } from '../findings/known.js'
import { type LocalDay, localDayOf } from '../record/local-day.js'
import type { Zone } from '../zone.js'

/** The day that is planned, and what is over of it. */
export interface TimeToPlan extends LocalDay {
  /** From here on it is planned. */
  readonly begin: number
  /** No shot before this. */
  readonly earliest: number
  /** Water given on it already. */
  readonly given: number
}

export function nextDay(zone: Zone, { to }: ZoneDay): Known<TimeToPlan> {
  return known({ ...localDayOf(zone.place.clock, to), begin: to, earliest: to, given: 0 })
}

/** The rest of a day. How much was given on it and when must be told by a log of openings: the limit of the day counts it. */
export function restOfDay(zone: Zone, day: ZoneDay, { at }: DayUnderWay): Known<TimeToPlan> {
  const { date, from, to, openings } = day
  if (zone.wateringLog === 'days') return unknown('no-log-of-openings')
  const { given } = day.balance
  if (!given.known && given.reason !== 'no-entry-on-this-day') return given
  const last = openings[openings.length - 1] ?? -Infinity
  // The level is the middle of three readings: what was given since is not in it.
  if (at < last + 3 * zone.readingStep) return unknown('shot-not-read-yet')
  const earliest = Math.max(at, last + zone.limits.maxRunTime + zone.limits.minRest)
  return known({ date, from, to, begin: at, earliest, given: given.known ? given.value : 0 })
}
