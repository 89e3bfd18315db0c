import { InputError } from '../../quantity/errors.js'
import { asName, type NamesOf, onlyNames } from '../../quantity/one-of.js'
import { checkZone } from '../checked-zone.js'
import type { OfZone } from '../day/terms.js'
import type { ZoneDay } from '../day/zone-day.js'
import { noMemory, type ZoneMemory } from '../day/zone-memory.js'
import { type LocalDay, localDayOf, localDayOfDate } from '../record/local-day.js'
import type { ZoneRecord } from '../record/zone-record.js'
import { columnsOfRecord, firstAt, windowOf } from '../record/zone-window.js'
import { restoredMemory } from '../restore/restore-zone.js'
import type { Zone } from '../zone.js'
import { reviewWindow } from './review-day.js'

/** A zone with its record. */
export interface ReviewZoneInput extends OfZone {
  /** Its record. */
  readonly record: ZoneRecord
  /** What was learned before the record begins, made by an earlier review. */
  readonly memory?: ZoneMemory
  /** The last local date that is reviewed, as `2026-05-19`; the last of the record by default. */
  readonly until?: string
}

const NAMES: NamesOf<ReviewZoneInput> = { record: 1, memory: 1, until: 1, zone: 1 }

/** The days of a record, and what was learned from them. */
export interface ZoneReview {
  /** One review for each local day with readings, in order. */
  readonly days: readonly ZoneDay[]
  /** What the next day should know. */
  readonly memory: ZoneMemory
}

/**
 * Reviews a stretch of the record of a zone day by day: which readings can be trusted, which shots the probes saw, how far the container
 * dried overnight, what it drained and used, and how far it is from its limits, for each probe by its own level.
 *
 * What is not known is a result with a reason, and every doubt is a finding with its numbers: `explainZoneFinding` puts it into words.
 * The result is plain data that `JSON.stringify` keeps. `followZone` gives the same, reading by reading.
 *
 * A review is advice. It rests on a few probes, and a probe sees one place: look at plants, drain and the weight of a container.
 *
 * @procedure Cuts the record into local days, each seen with the 24 hours before it; tests and calibrates the readings; finds shots and
 * matches them with the log by time; takes the longest stretch without shots for the night; carries levels after drain to the next days.
 * @param input - Zone, record, and what is known from before.
 * @returns One review for each local day that has readings, and what the next day should know.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for parts that contradict each other.
 * @source definition: water balance of a container and the quality tests of qartod-2016; the rules that put them together: common practice, no source
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const time = Array.from({ length: 576 }, (_, i) => i * 300)
 * const A = time.map((t) => 0.6 - (0.02 * (t % 14400)) / 14400 + 0.0004 * Math.sin(t * t))
 * const review = reviewZone({ zone, record: { time, probes: { A } } })
 * review.days.length // => 2
 * review.days[1]?.probes[0]?.shots.length // => 5
 * review.days[1]?.probes[0]?.night // => { known: true, value: { from: 88800, to: 100500, fall: 0.0154 } }
 */
export function reviewZone(input: ReviewZoneInput): ZoneReview {
  onlyNames(input, NAMES, 'input')
  const zone = checkZone(input.zone)
  const { clock } = zone.place
  const last = input.until === undefined ? undefined : dayOfDate(zone, input.until)
  const columns = columnsOfRecord(zone, input.record)
  const days: ZoneDay[] = []
  let memory = input.memory === undefined ? noMemory() : restoredMemory(zone, input.memory)
  let i = 0
  while (i < columns.time.length) {
    const day = localDayOf(clock, columns.time[i]!)
    if (last !== undefined && day.from > last.from) break
    const found = reviewWindow(zone, windowOf(zone, columns, day), memory)
    days.push(found.day)
    memory = found.memory
    i = firstAt(columns.time, day.to)
  }
  return { days, memory }
}

/** A zone with its record, and the day that is asked. */
export interface ReviewDayInput extends OfZone {
  /** The record; of it the day and the 24 hours before it count. */
  readonly record: ZoneRecord
  /** The local date, as `2026-05-19`. */
  readonly date: string
  /** What was learned before, made by an earlier review. */
  readonly memory?: ZoneMemory
}

const DAY_NAMES: NamesOf<ReviewDayInput> = { record: 1, date: 1, memory: 1, zone: 1 }

/**
 * Reviews one local day of a zone, as `reviewZone` does. What earlier days would have taught must be passed in.
 *
 * @procedure Takes the day with the 24 hours before it out of the record and reviews it.
 * @param input - Zone, record, date, and what is known from before.
 * @returns The day, and what the next day should know.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for a date that does not exist or parts that contradict each other.
 * @source definition: water balance of a container and the quality tests of qartod-2016; the rules that put them together: common practice, no source
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const record = { time: [0, 300, 600], probes: { A: [0.55, null, 0.549] } }
 * reviewDay({ zone, record, date: '1970-01-01' }).day // => { readings: 3, level: { known: false } }
 */
export function reviewDay(input: ReviewDayInput): { readonly day: ZoneDay; readonly memory: ZoneMemory } {
  onlyNames(input, DAY_NAMES, 'input')
  const zone = checkZone(input.zone)
  const day = dayOfDate(zone, input.date)
  const memory = input.memory === undefined ? noMemory() : restoredMemory(zone, input.memory)
  return reviewWindow(zone, windowOf(zone, columnsOfRecord(zone, input.record), day), memory)
}

/** The local day of a date in a zone. */
export function dayOfDate(zone: Zone, date: string): LocalDay {
  const day = typeof date === 'string' ? localDayOfDate(zone.place.clock, date) : undefined
  if (day === undefined)
    throw new InputError('date', `"${asName(date).slice(0, 20)}" is not a day`, 'write it as 2026-05-19')
  return day
}
