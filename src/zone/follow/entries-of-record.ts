import { requireList, requireObject } from '../../quantity/guard.js'
import { climateEntries, forecastEntries, readingEntries, wateringEntries } from '../record/entries-of-tables.js'
import { BEFORE_ALL } from '../record/left-out.js'
import { timeIn, whenPassedOn } from '../record/order-of-time.js'
import type { ZoneEntry, ZoneRecord } from '../record/zone-record.js'

/**
 * The record of a zone as single inputs in the order of time, to feed a follower with it.
 *
 * @procedure Takes readings, climate, watering log and forecasts one after the other by their times; at the same time climate comes first, then
 * the log.
 * @param record - The record. Unit: any. Range: any.
 * @returns The inputs.
 * @throws `InputError` for a record that lost its times or probes.
 * @source definition
 * @example
 * const inputs = entriesOfRecord({ time: [0, 300], probes: { A: [0.5, null] }, watering: { time: [60], given: [0.4] } })
 * inputs.map((input) => [input.kind, input.time]) // => [['reading', 0], ['watering', 60], ['reading', 300]]
 */
export function entriesOfRecord(record: ZoneRecord): ZoneEntry[] {
  requireObject(record, 'record')
  requireObject(record.probes, 'probes')
  requireList(record.time, 'time')
  const others = [climateEntries(record), wateringEntries(record), forecastEntries(record)].flatMap(withMoments)
  return merged(
    readingEntries(record),
    others.sort((a, b) => a.moment - b.moment),
  )
}

/** An entry and the moment at which it is passed on. */
interface Momentary {
  readonly moment: number
  readonly entry: ZoneEntry
}

/** Entries of one table with the moments at which they are passed on: without a time, that of the entry before it. */
function withMoments(entries: readonly ZoneEntry[]): Momentary[] {
  let moment = BEFORE_ALL
  return entries.map((entry) => {
    const time = timeIn(entry.time, 'time')
    if (!Number.isNaN(time)) moment = time
    return { moment, entry }
  })
}

/** Merges readings with climate and log by time. Readings keep their order, whatever their stamps say. */
function merged(readings: readonly ZoneEntry[], others: readonly Momentary[]): ZoneEntry[] {
  const moments = whenPassedOn(readings.map(({ time }) => timeIn(time, 'time')))
  const out: ZoneEntry[] = []
  let k = 0
  readings.forEach((reading, i) => {
    while (k < others.length && others[k]!.moment <= moments[i]!) out.push(others[k++]!.entry)
    out.push(reading)
  })
  return [...out, ...others.slice(k).map(({ entry }) => entry)]
}
