import type { ZoneEntry, ZoneRecord } from './zone-record.js'

export function readingEntries(record: ZoneRecord): ZoneEntry[] {
  const names = Object.keys(record.probes)
  return Array.from(record.time, (time, i) => ({
    kind: 'reading',
    time,
    probes: Object.fromEntries(names.map((name) => [name, record.probes[name]?.[i] ?? null])),
    rootTemperature: record.rootTemperature?.[i] ?? null,
  }))
}

export function climateEntries({ climate }: ZoneRecord): ZoneEntry[] {
  return Array.from(climate?.time ?? [], (time, i) => ({
    kind: 'climate',
    time,
    airTemperature: climate?.airTemperature?.[i] ?? null,
    relativeHumidity: climate?.relativeHumidity?.[i] ?? null,
    irradiance: climate?.irradiance?.[i] ?? null,
    windSpeed: climate?.windSpeed?.[i] ?? null,
  }))
}

export function wateringEntries({ watering }: ZoneRecord): ZoneEntry[] {
  return Array.from(watering?.time ?? [], (time, i) => ({
    kind: 'watering',
    time,
    given: watering?.given?.[i] ?? null,
    drained: watering?.drained?.[i] ?? null,
    feedEC: watering?.feedEC?.[i] ?? null,
    drainEC: watering?.drainEC?.[i] ?? null,
  }))
}

export function forecastEntries({ forecast }: ZoneRecord): ZoneEntry[] {
  return Array.from(forecast?.time ?? [], (time, i) => ({
    kind: 'forecast',
    time,
    day: forecast?.day?.[i] ?? null,
    irradiance: forecast?.irradiance?.[i] ?? null,
  }))
}
