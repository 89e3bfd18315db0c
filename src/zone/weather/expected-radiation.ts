import type { LocalDay } from '../record/local-day.js'
import { type ForecastColumns, LOOK_BACK } from '../record/zone-window.js'
import type { Zone } from '../zone.js'
import { type DayLight, lampMean } from './light-of-day.js'

/**
 * The mean radiation that was expected for a day when it began, lamps included: by the newest forecast for it that was made in the 24 hours before.
 * A day whose light was not measured has no scale to compare it with.
 */
export function expectedRadiation(
  zone: Zone,
  { time, day, irradiance }: ForecastColumns,
  { source }: DayLight,
  wanted: LocalDay,
): number | undefined {
  if (source !== 'measured' && source !== 'measured-and-lamps') return undefined
  for (let i = time.length - 1; i >= 0; i--) {
    const light = irradiance[i]!
    const of = day[i]!
    const made = time[i]!
    if (made < wanted.from - LOOK_BACK) return undefined
    if (made < wanted.from && of >= wanted.from && of < wanted.to && light >= 0) return light + lampMean(zone, wanted)
  }
  return undefined
}
