import { cropET, waterUsePerPlant } from '../demand/crop/crop-et.js'
import { dailyReferenceETFao56 } from '../demand/reference/daily-reference-et-fao56.js'
import type { DailyWeather } from '../demand/reference/daily-weather.js'
import { dayOfCivilDate } from '../numerics/civil-date.js'
import { attempt } from '../quantity/attempt.js'
import type { DayOfYear } from '../quantity/calendar.js'
import { maxOf, minOf } from '../quantity/extremes.js'
import type { DailyRadiation, Length, RelativeHumidity, Temperature, WindSpeed } from '../quantity/generated/kinds.js'
import { type Known, known, unknown } from './known.js'
import type { LocalDay } from './local-day.js'
import type { Zone } from './zone.js'
import type { ZoneFinding } from './zone-finding.js'
import { type ClimateColumns, firstAt } from './zone-window.js'

/** What the climate of a day says of the water use. */
export interface ClimateDemand {
  /** Reference evapotranspiration by FAO-56. Unit: mm/d. */
  readonly referenceET: number
  /** Times the crop coefficient. Unit: mm/d. */
  readonly cropET: number
  /** Water that a plant uses. Unit: L/d. */
  readonly perPlant: number
  /** Water that a container uses. Unit: L/d. */
  readonly perContainer: number
  /** What was assumed. */
  readonly findings: readonly ZoneFinding[]
}

/** A longer gap may hide the noon. Unit: s. */
const MAX_GAP = 7200
/** The air of one place warmed by 57 °C within a day at most (Loma, Montana, 1972, from memory): a broken sensor goes on to 85 or -40 °C. */
const MAX_SWING = 60
/** Sensors read a little above saturation. */
const MAX_HUMIDITY = 1.1

/** The water use of a day from its climate, by the FAO Penman-Monteith method. */
export function climateDemand(zone: Zone, climate: ClimateColumns, day: LocalDay): Known<ClimateDemand> {
  const [a, b] = [firstAt(climate.time, day.from), firstAt(climate.time, day.to)]
  const time = climate.time.subarray(a, b)
  const good = (column: Float64Array) => column.subarray(a, b).filter((x) => !Number.isNaN(x))
  const air = good(climate.airTemperature)
  const humidity = good(climate.relativeHumidity)
  const radiation = good(climate.irradiance)
  const wind = good(climate.windSpeed)
  if (Math.min(air.length, humidity.length, radiation.length) === 0) return unknown('climate-not-recorded')
  const step = medianStep(time)
  const needed = (0.8 * (day.to - day.from)) / step
  const light = overTime(time, climate.irradiance.subarray(a, b), day, step)
  if (Math.min(air.length, humidity.length, radiation.length) < needed || light.gap > Math.max(MAX_GAP, 3 * step))
    return unknown('climate-has-gaps')
  const [warmest, coldest, dampest] = [maxOf(air), minOf(air), maxOf(humidity)]
  if (warmest - coldest > MAX_SWING || dampest > MAX_HUMIDITY) return unknown('climate-impossible')
  const found = attempt(() =>
    demandOf(zone, {
      latitude: zone.place.latitude,
      elevation: zone.place.elevation,
      day: dayOfYearOf(day.date),
      maxTemperature: warmest as Temperature,
      minTemperature: coldest as Temperature,
      maxHumidity: Math.min(1, dampest) as RelativeHumidity,
      minHumidity: Math.min(1, minOf(humidity)) as RelativeHumidity,
      solar: (Math.max(0, light.mean) * 0.0864) as DailyRadiation,
      ...(wind.length > 0 && { wind: { speed: meanOf(wind) as WindSpeed, height: 200 as Length } }),
    }),
  )
  return found.ok ? known(found.value) : unknown('climate-impossible')
}

/** What a zone uses under a day's weather. */
function demandOf(zone: Zone, weather: DailyWeather): ClimateDemand {
  const reference = dailyReferenceETFao56(weather)
  const crop = cropET({ referenceET: reference.referenceET, cropCoefficient: zone.cropCoefficient })
  const perPlant = waterUsePerPlant({ cropET: crop, plantDensity: zone.plantDensity })
  const findings = [...reference.assumedInputs, ...reference.findings].map(
    (weather): ZoneFinding => ({ code: 'climate-doubted', level: weather.level, weather }),
  )
  return {
    referenceET: reference.referenceET,
    cropET: crop,
    perPlant,
    perContainer: perPlant * zone.container.plants,
    findings,
  }
}

/** The mean of a day whose gaps are filled by straight lines, and the longest gap. */
function overTime(time: Float64Array, values: Float64Array, { from, to }: LocalDay, step: number) {
  let [sum, count, gap, before, last] = [0, 0, 0, from, Number.NaN]
  const pass = (until: number, mean: number, missing: number) => {
    gap = Math.max(gap, until - before)
    count += missing
    sum += missing * mean
  }
  for (let i = 0; i < time.length; i++) {
    const value = values[i]!
    if (Number.isNaN(value)) continue
    const steps = Math.round((time[i]! - before) / step)
    if (Number.isNaN(last)) pass(time[i]!, value, steps)
    else pass(time[i]!, (last + value) / 2, Math.max(0, steps - 1))
    sum += value
    count++
    before = time[i]!
    last = value
  }
  pass(to, last, Math.max(0, Math.round((to - before) / step) - 1))
  return { mean: sum / count, gap }
}

function medianStep(time: Float64Array): number {
  const steps = time.subarray(1).map((t, i) => t - time[i]!)
  return steps.length === 0 ? 86400 : steps.sort()[steps.length >> 1]!
}

function dayOfYearOf(date: string): DayOfYear {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number]
  return (dayOfCivilDate(year, month, day) - dayOfCivilDate(year, 1, 1) + 1) as DayOfYear
}

function meanOf(list: Float64Array): number {
  return list.reduce((sum, x) => sum + x, 0) / list.length
}
