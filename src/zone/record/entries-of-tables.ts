import { requireList, requireObject } from '../../quantity/guard.js'
import type { Missable, ZoneEntry, ZoneRecord } from './zone-record.js'

export function readingEntries(record: ZoneRecord): ZoneEntry[] {
  const names = Object.keys(record.probes)
  return Array.from(record.time, (time, i) => ({
    kind: 'reading',
    time,
    probes: Object.fromEntries(names.map((name) => [name, at(record.probes[name], i, `probes.${name}`)])),
    rootTemperature: at(record.rootTemperature, i, 'rootTemperature'),
  }))
}

export function climateEntries({ climate }: ZoneRecord): ZoneEntry[] {
  return Array.from(timesOf(climate, 'climate'), (time, i) => ({
    kind: 'climate',
    time,
    airTemperature: at(climate?.airTemperature, i, 'climate.airTemperature'),
    relativeHumidity: at(climate?.relativeHumidity, i, 'climate.relativeHumidity'),
    irradiance: at(climate?.irradiance, i, 'climate.irradiance'),
    windSpeed: at(climate?.windSpeed, i, 'climate.windSpeed'),
  }))
}

export function wateringEntries({ watering }: ZoneRecord): ZoneEntry[] {
  return Array.from(timesOf(watering, 'watering'), (time, i) => ({
    kind: 'watering',
    time,
    given: at(watering?.given, i, 'watering.given'),
    drained: at(watering?.drained, i, 'watering.drained'),
    feedEC: at(watering?.feedEC, i, 'watering.feedEC'),
    drainEC: at(watering?.drainEC, i, 'watering.drainEC'),
  }))
}

export function forecastEntries({ forecast }: ZoneRecord): ZoneEntry[] {
  return Array.from(timesOf(forecast, 'forecast'), (time, i) => ({
    kind: 'forecast',
    time,
    day: at(forecast?.day, i, 'forecast.day'),
    irradiance: at(forecast?.irradiance, i, 'forecast.irradiance'),
  }))
}

/** Times of a table, none where there is no table. */
function timesOf(table: { readonly time: ArrayLike<number> } | null | undefined, name: string): ArrayLike<number> {
  if (table == null) return []
  requireObject(table, name)
  requireList(table.time, `${name}.time`)
  return table.time
}

/** An entry of a column, null where it is missing. */
function at(column: ArrayLike<Missable> | null | undefined, i: number, name: string): Missable {
  if (column == null) return null
  requireList(column, name)
  return column[i] ?? null
}
