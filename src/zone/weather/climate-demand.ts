import { cropET, waterUsePerPlant } from '../../demand/crop/crop-et.js'
import { dailyReferenceETFao56 } from '../../demand/reference/daily-reference-et-fao56.js'
import { dayOfCivilDate } from '../../numerics/civil-date.js'
import { attempt } from '../../quantity/attempt.js'
import type { DayOfYear } from '../../quantity/calendar.js'
import type {
  DailyRadiation,
  Length,
  RelativeHumidity,
  Temperature,
  WindSpeed,
} from '../../quantity/generated/kinds.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import type { LocalDay } from '../record/local-day.js'
import type { ClimateColumns } from '../record/zone-window.js'
import type { Zone } from '../zone.js'
import { dayWeather } from './day-weather.js'

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
  const weather = dayWeather(climate, day)
  if (!weather.known) return weather
  const { warmest, coldest, dampest, driest, radiation, wind } = weather.value
  const { place, container } = zone
  const found = attempt(() => {
    const reference = dailyReferenceETFao56({
      latitude: place.latitude,
      elevation: place.elevation,
      day: dayOfYearOf(day.date),
      maxTemperature: warmest as Temperature,
      minTemperature: coldest as Temperature,
      maxHumidity: Math.min(1, dampest) as RelativeHumidity,
      minHumidity: Math.min(1, driest) as RelativeHumidity,
      solar: (Math.max(0, radiation) * 0.0864) as DailyRadiation,
      ...(wind !== undefined && { wind: { speed: wind as WindSpeed, height: 200 as Length } }),
    })
    const crop = cropET({ referenceET: reference.referenceET, cropCoefficient: zone.cropCoefficient })
    const perPlant = waterUsePerPlant({ cropET: crop, plantDensity: zone.plantDensity })
    const findings = [...reference.assumedInputs, ...reference.findings].map(
      (one): ZoneFinding => ({ code: 'climate-doubted', level: one.level, weather: one }),
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

function dayOfYearOf(date: string): DayOfYear {
  const [year, month, day] = date.split('-').map(Number) as [number, number, number]
  return (dayOfCivilDate(year, month, day) - dayOfCivilDate(year, 1, 1) + 1) as DayOfYear
}
