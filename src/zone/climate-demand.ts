import { cropET, waterUsePerPlant } from '../demand/crop/crop-et.js'
import { dailyReferenceETFao56 } from '../demand/reference/daily-reference-et-fao56.js'
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

/** The water use of a day from its climate, by the FAO Penman-Monteith method. */
export function climateDemand(zone: Zone, climate: ClimateColumns, day: LocalDay): Known<ClimateDemand> {
  const [a, b] = [firstAt(climate.time, day.from), firstAt(climate.time, day.to)]
  const good = (column: Float64Array) => column.subarray(a, b).filter((x) => !Number.isNaN(x))
  const air = good(climate.airTemperature)
  const humidity = good(climate.relativeHumidity)
  const radiation = good(climate.irradiance)
  const wind = good(climate.windSpeed)
  if (Math.min(air.length, humidity.length, radiation.length) === 0) return unknown('climate-not-recorded')
  const step = medianStep(climate.time.subarray(a, b))
  const needed = (0.8 * (day.to - day.from)) / step
  if (Math.min(air.length, humidity.length, radiation.length) < needed) return unknown('climate-has-gaps')
  const { place, container } = zone
  const found = attempt(() => {
    const reference = dailyReferenceETFao56({
      latitude: place.latitude,
      elevation: place.elevation,
      day: dayOfYearOf(day.date),
      maxTemperature: maxOf(air) as Temperature,
      minTemperature: minOf(air) as Temperature,
      maxHumidity: Math.min(1, maxOf(humidity)) as RelativeHumidity,
      minHumidity: Math.min(1, minOf(humidity)) as RelativeHumidity,
      solar: (Math.max(0, meanOf(radiation)) * 0.0864) as DailyRadiation,
      ...(wind.length > 0 && { wind: { speed: meanOf(wind) as WindSpeed, height: 200 as Length } }),
    })
    const crop = cropET({ referenceET: reference.referenceET, cropCoefficient: zone.cropCoefficient })
    const perPlant = waterUsePerPlant({ cropET: crop, plantDensity: zone.plantDensity })
    const findings = [...reference.assumedInputs, ...reference.findings].map(
      (weather): ZoneFinding => ({ code: 'climate-doubted', level: weather.level, weather }),
    )
    return {
      referenceET: reference.referenceET,
      cropET: crop,
      perPlant,
      perContainer: perPlant * container.plants,
      findings,
    }
  })
  return found.ok ? known(found.value) : unknown('climate-impossible')
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
