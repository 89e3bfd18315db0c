import { requireObject } from '../../quantity/guard.js'
import type { Row } from '../record/kept-rows.js'
import type { Missable, ZoneEntry } from '../record/zone-record.js'
import { plainNumber } from '../record/zone-window.js'
import type { Zone } from '../zone.js'

/** An entry as a row of numbers, in the order in which a day takes them apart again. */
export function rowOf(zone: Zone, input: ZoneEntry, time: number): Row {
  const number = (x: Missable | undefined, name: string): Missable => {
    const value = plainNumber(x, name)
    return Number.isNaN(value) ? null : value
  }
  if (input.kind === 'reading') {
    const { probes } = input
    requireObject(probes, 'probes')
    const of = (name: string) => (Object.hasOwn(probes, name) ? number(probes[name], `probes.${name}`) : null)
    return [time, number(input.rootTemperature, 'rootTemperature'), ...zone.probes.map(({ name }) => of(name))]
  }
  const named = (columns: Readonly<Record<string, Missable | undefined>>): Missable[] =>
    Object.entries(columns).map(([name, x]) => number(x, name))
  if (input.kind === 'climate') {
    const { airTemperature, relativeHumidity, irradiance, windSpeed } = input
    return [time, ...named({ airTemperature, relativeHumidity, irradiance, windSpeed })]
  }
  if (input.kind === 'forecast') return [time, ...named({ day: input.day, irradiance: input.irradiance })]
  const { given, drained, feedEC, drainEC } = input
  return [time, ...named({ given, drained, feedEC, drainEC })]
}
