import type { LocalDay } from './local-day.js'
import type { Zone } from './zone.js'
import type { Missable, ZoneClimate, ZoneRecord, ZoneWatering } from './zone-record.js'

/** How far before a day its review looks: a night begins the day before, and levels are learned from both days. */
export const LOOK_BACK = 86400

/** Climate in columns of the same length; a column that is not there is missing throughout. */
export interface ClimateColumns {
  readonly time: Float64Array
  readonly airTemperature: Float64Array
  readonly relativeHumidity: Float64Array
  readonly irradiance: Float64Array
  readonly windSpeed: Float64Array
}

/** Entries of the watering log in columns of the same length. */
export interface WateringColumns {
  readonly time: Float64Array
  readonly given: Float64Array
  readonly drained: Float64Array
  readonly feedEC: Float64Array
  readonly drainEC: Float64Array
}

/** Columns of a record with rising times; NaN is missing. */
export interface ZoneColumns {
  readonly time: Float64Array
  /** Readings in the order of the probes of the zone. */
  readonly probes: readonly Float64Array[]
  readonly rootTemperature: Float64Array
  readonly climate: ClimateColumns
  readonly watering: WateringColumns
  /** For each reading that was out of order, the time of the last one that was not. */
  readonly outOfOrder: Float64Array
}

/** What a review of one day sees: the columns from the look-back before the day to its end. */
export interface ZoneWindow extends ZoneColumns {
  readonly day: LocalDay
}

/** The columns of a record, without what is out of order. */
export function columnsOfRecord(zone: Zone, record: ZoneRecord): ZoneColumns {
  const { climate, watering } = record
  const { keep, skipped } = rising(record.time, true)
  const outOfOrder = Float64Array.from(skipped, (k) => (k < 0 ? Number.NaN : record.time[keep[k]!]!))
  return {
    time: picked(record.time, keep),
    probes: zone.probes.map(({ name }) => picked(record.probes[name], keep)),
    rootTemperature: picked(record.rootTemperature, keep),
    climate: climateColumns(climate),
    watering: wateringColumns(watering),
    outOfOrder,
  }
}

function climateColumns(climate: ZoneClimate | undefined): ClimateColumns {
  const { keep } = rising(climate?.time ?? [], true)
  return {
    time: picked(climate?.time, keep),
    airTemperature: picked(climate?.airTemperature, keep),
    relativeHumidity: picked(climate?.relativeHumidity, keep),
    irradiance: picked(climate?.irradiance, keep),
    windSpeed: picked(climate?.windSpeed, keep),
  }
}

function wateringColumns(watering: ZoneWatering | undefined): WateringColumns {
  const { keep } = rising(watering?.time ?? [], false)
  return {
    time: picked(watering?.time, keep),
    given: picked(watering?.given, keep),
    drained: picked(watering?.drained, keep),
    feedEC: picked(watering?.feedEC, keep),
    drainEC: picked(watering?.drainEC, keep),
  }
}

/** Positions whose times rise, and for each that does not, how many were kept before it, less one. */
function rising(time: ArrayLike<number>, strictly: boolean): { keep: number[]; skipped: number[] } {
  const keep: number[] = []
  const skipped: number[] = []
  let last = -Infinity
  for (let i = 0; i < time.length; i++) {
    const now = time[i]!
    if (isLater(now, last, strictly)) {
      keep.push(i)
      last = now
    } else skipped.push(keep.length - 1)
  }
  return { keep, skipped }
}

/** Whether a time comes after the last one; a time that is no number never does. */
export function isLater(now: number, last: number, strictly: boolean): boolean {
  return now - now === 0 && (strictly ? now > last : now >= last)
}

function picked(column: ArrayLike<Missable> | undefined, keep: readonly number[]): Float64Array {
  const values = new Float64Array(keep.length)
  if (column === undefined) return values.fill(Number.NaN)
  for (let k = 0; k < keep.length; k++) values[k] = column[keep[k]!] ?? Number.NaN
  return values
}

/** The part of the columns that the review of a day sees. Views, not copies. */
export function windowOf(columns: ZoneColumns, day: LocalDay): ZoneWindow {
  const begin = day.from - LOOK_BACK
  const cut = <C extends { readonly time: Float64Array }>(all: C): C => {
    const [a, b] = [firstAt(all.time, begin), firstAt(all.time, day.to)]
    return Object.fromEntries(Object.entries(all).map(([name, list]) => [name, list.subarray(a, b)])) as unknown as C
  }
  const [a, b] = [firstAt(columns.time, begin), firstAt(columns.time, day.to)]
  return {
    day,
    time: columns.time.subarray(a, b),
    probes: columns.probes.map((list) => list.subarray(a, b)),
    rootTemperature: columns.rootTemperature.subarray(a, b),
    climate: cut(columns.climate),
    watering: cut(columns.watering),
    outOfOrder: columns.outOfOrder.filter((time) => time >= day.from && time < day.to),
  }
}

/** Position of the first time at or after a moment. */
export function firstAt(time: ArrayLike<number>, moment: number): number {
  let low = 0
  let high = time.length
  while (low < high) {
    const middle = (low + high) >> 1
    if (time[middle]! < moment) low = middle + 1
    else high = middle
  }
  return low
}
