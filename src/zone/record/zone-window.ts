import { InputError } from '../../quantity/errors.js'
import { requireList, requireObject, requireOption } from '../../quantity/guard.js'
import type { Zone } from '../zone.js'
import { believedClimate, believedForecast } from './believed-climate.js'
import { type KeepsLeftOut, leftOutOn, leftOutSince } from './left-out.js'
import type { LocalDay } from './local-day.js'
import { farAhead, orderOfReadings, sortedByTime, timeIn } from './order-of-time.js'
import type { Missable, ZoneClimate, ZoneForecast, ZoneRecord, ZoneWatering } from './zone-record.js'

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

/** Forecasts of radiation in columns of the same length. */
export interface ForecastColumns {
  readonly time: Float64Array
  readonly day: Float64Array
  readonly irradiance: Float64Array
}

/** Columns of a record with rising times; NaN is missing. */
export interface ZoneColumns extends KeepsLeftOut {
  readonly time: Float64Array
  /** Readings in the order of the probes of the zone. */
  readonly probes: readonly Float64Array[]
  readonly rootTemperature: Float64Array
  readonly climate: ClimateColumns
  readonly watering: WateringColumns
  readonly forecast: ForecastColumns
  /** For each reading that was out of order, the time of the last one that was not. */
  readonly outOfOrder: Float64Array
}

/** What a review of one day sees: the columns from the look-back before the day to its end. */
export interface ZoneWindow extends ZoneColumns {
  readonly day: LocalDay
  /** Light as it was read, beside that of the climate which can be. Unit: W/m². */
  readonly irradianceRead: Float64Array
  /** Last reading of a day that is under way; undefined where the day is over. */
  readonly now: number | undefined
}

/** Readings so long before the end of a day stand for its end. Unit: s. */
export function lateHours({ readingStep }: Zone): number {
  return Math.max(10800, 3 * readingStep)
}

/** The columns of a record: readings in the order in which they came, without those out of order; climate and log sorted by time. */
export function columnsOfRecord(zone: Zone, record: ZoneRecord): ZoneColumns {
  requireObject(record, 'record')
  requireObject(record.probes, 'record.probes')
  const time = timesOf(record.time, 'time')
  const { keep, outOfOrder } = orderOfReadings(time, farAhead(zone))
  const picked = columnPicker(record.time.length, keep)
  const climate = climateColumns(record.climate)
  const watering = wateringColumns(record.watering)
  const forecast = forecastColumns(record.forecast)
  const leftOut = [...climate.leftOut, ...watering.leftOut, ...forecast.leftOut]
  return {
    time: picked(time, 'time'),
    probes: zone.probes.map(({ name }) =>
      picked(Object.hasOwn(record.probes, name) ? record.probes[name] : undefined, `probes.${name}`),
    ),
    rootTemperature: picked(record.rootTemperature, 'rootTemperature'),
    climate: climate.columns,
    watering: watering.columns,
    forecast: forecast.columns,
    outOfOrder: Float64Array.from(outOfOrder),
    leftOut: leftOutSince(leftOut, time[keep[0] ?? 0] ?? 0),
  }
}

/** The columns of a table beside the readings, and its entries that were left out. */
interface Sorted<C> extends KeepsLeftOut {
  readonly columns: C
}

function climateColumns(climate: ZoneClimate | undefined): Sorted<ClimateColumns> {
  if (climate !== null) requireOption(climate, 'climate')
  const time = timesOf(climate?.time ?? [], 'climate.time')
  const { keep, leftOut } = sortedByTime(time, 'climate')
  const picked = columnPicker(time.length, keep)
  const columns = {
    time: picked(time, 'climate.time'),
    airTemperature: picked(climate?.airTemperature, 'climate.airTemperature'),
    relativeHumidity: picked(climate?.relativeHumidity, 'climate.relativeHumidity'),
    irradiance: picked(climate?.irradiance, 'climate.irradiance'),
    windSpeed: picked(climate?.windSpeed, 'climate.windSpeed'),
  }
  return { columns, leftOut }
}

function wateringColumns(watering: ZoneWatering | undefined): Sorted<WateringColumns> {
  if (watering !== null) requireOption(watering, 'watering')
  const time = timesOf(watering?.time ?? [], 'watering.time')
  const { keep, leftOut } = sortedByTime(time, 'watering')
  const picked = columnPicker(time.length, keep)
  const columns = {
    time: picked(time, 'watering.time'),
    given: picked(watering?.given, 'watering.given'),
    drained: picked(watering?.drained, 'watering.drained'),
    feedEC: picked(watering?.feedEC, 'watering.feedEC'),
    drainEC: picked(watering?.drainEC, 'watering.drainEC'),
  }
  return { columns, leftOut }
}

function forecastColumns(forecast: ZoneForecast | undefined): Sorted<ForecastColumns> {
  if (forecast !== null) requireOption(forecast, 'forecast')
  const time = timesOf(forecast?.time ?? [], 'forecast.time')
  const { keep, leftOut } = sortedByTime(time, 'forecast')
  const picked = columnPicker(time.length, keep)
  const columns = {
    time: picked(time, 'forecast.time'),
    day: picked(forecast?.day, 'forecast.day'),
    irradiance: picked(forecast?.irradiance, 'forecast.irradiance'),
  }
  return { columns, leftOut }
}

function timesOf(time: ArrayLike<number>, name: string): Float64Array {
  requireList(time, name)
  const times = new Float64Array(time.length)
  for (let i = 0; i < time.length; i++) times[i] = timeIn(time[i], name)
  return times
}

/** Takes some positions out of a column of this length; a shorter or longer one would be another record. */
function columnPicker(length: number, keep: readonly number[]) {
  return (column: ArrayLike<Missable> | undefined, name: string): Float64Array => {
    const values = new Float64Array(keep.length)
    if (column === undefined) return values.fill(Number.NaN)
    requireList(column, name)
    if (column.length !== length)
      throw new InputError(
        name,
        `has ${column.length} entries for ${length} times`,
        'give one for each, null where it is missing',
      )
    for (let k = 0; k < keep.length; k++) values[k] = plainNumber(column[keep[k]!], name)
    return values
  }
}

/** A number, or NaN where it is missing; what is no number is refused. */
export function plainNumber(value: Missable | undefined, name: string): number {
  if (typeof value === 'number') return value - value === 0 ? value : Number.NaN
  if (value === null || value === undefined) return Number.NaN
  throw new InputError(name, `holds a ${typeof value}`, 'give numbers, and null where one is missing')
}

/** The part of the columns that the review of a day sees. Views, not copies. A day is over when a later reading has come, or in its last hours. */
export function windowOf(zone: Zone, columns: ZoneColumns, day: LocalDay, laterReading?: boolean): ZoneWindow {
  const begin = day.from - LOOK_BACK
  const cut = <C extends { readonly time: Float64Array }>(all: C): C => {
    const [a, b] = [firstAt(all.time, begin), firstAt(all.time, day.to)]
    return Object.fromEntries(Object.entries(all).map(([name, list]) => [name, list.subarray(a, b)])) as unknown as C
  }
  const [a, b] = [firstAt(columns.time, begin), firstAt(columns.time, day.to)]
  const last = columns.time[b - 1] ?? -Infinity
  const climate = cut(columns.climate)
  const believed = believedClimate(climate)
  const foreseen = believedForecast(cut(columns.forecast))
  const over = (laterReading ?? b < columns.time.length) || last < day.from || day.to - last <= lateHours(zone)
  return {
    day,
    now: over ? undefined : last,
    time: columns.time.subarray(a, b),
    probes: columns.probes.map((list) => list.subarray(a, b)),
    rootTemperature: columns.rootTemperature.subarray(a, b),
    climate: believed.climate,
    irradianceRead: climate.irradiance,
    watering: cut(columns.watering),
    forecast: foreseen.forecast,
    outOfOrder: columns.outOfOrder.filter((time) => time >= day.from && time < day.to),
    leftOut: leftOutOn([...columns.leftOut, ...believed.leftOut, ...foreseen.leftOut], day),
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
