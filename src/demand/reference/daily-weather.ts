import { actualVapourPressureFao56, type DayTemperatures } from '../../air/actual-vapour-pressure-fao56.js'
import { atmosphericPressureFao56 } from '../../air/atmospheric-pressure-fao56.js'
import { ACTUAL_VAPOUR, AIR_PRESSURE, DAILY_SOLAR, RELATIVE_HUMIDITY, SUNSHINE } from '../../air/domains.js'
import { saturationAt } from '../../air/saturation-vapour-pressure-fao56.js'
import { dayLengthFao56, extraterrestrialRadiationFao56, type SolarDay } from '../../air/solar-geometry-fao56.js'
import {
  RADIATION_ADJUSTMENT,
  solarRadiationFromTemperatureFao56,
  solarRadiationOnIslandFao56,
} from '../../air/solar-radiation-estimates-fao56.js'
import { solarRadiationFromSunshineFao56 } from '../../air/solar-radiation-from-sunshine-fao56.js'
import type { HumidityRange } from '../../air/terms.js'
import {
  vapourPressureFromMaxHumidityFao56,
  vapourPressureFromMeanHumidityFao56,
  vapourPressureFromMinTemperatureFao56,
} from '../../air/vapour-pressure-from-fao56.js'
import { type MeasuredWind, windSpeedAtTwoMetresFao56 } from '../../air/wind-at-two-metres-fao56.js'
import { SITE_ELEVATION } from '../../quantity/domains.js'
import type {
  DailyRadiation,
  Duration,
  Pressure,
  RelativeHumidity,
  Temperature,
  TemperatureChange,
  VapourPressure,
  WindSpeed,
} from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { notAbove } from '../../quantity/not-above.js'
import { oneOf } from '../../quantity/one-of.js'
import type { WeatherSite } from '../terms.js'
import type { WeatherAssumption } from './weather-assumption.js'

/** Wind speed at 2 m that FAO-56 takes where none is known, m/s: the mean of 2000 stations. */
const USUAL_WIND = 2

/**
 * A day of weather at a place. Humidity is taken from the first of these that is given: vapour pressure, dew point, highest and lowest
 * humidity, highest humidity, mean humidity; solar radiation from itself, or from sunshine. What is missing is estimated as FAO-56 says,
 * and named in the result.
 */
export interface DailyWeather extends WeatherSite, Partial<HumidityRange>, DayTemperatures, SolarDay {
  /** Actual vapour pressure, mean of the day. Unit: kPa. Range: [0, 10]. */
  readonly vapourPressure?: VapourPressure
  /** Dew point, mean of the day. Unit: °C. Range: [-60, 100]. */
  readonly dewPoint?: Temperature
  /** Mean relative humidity of the day. Unit: 1. Range: [0, 1]. */
  readonly meanHumidity?: RelativeHumidity
  /** Without any humidity: how far the dew point lies below the lowest temperature; 0 K by default. Unit: K. Range: [0, 10]. */
  readonly aridity?: TemperatureChange
  /** Solar radiation on the ground. Unit: MJ/m²/d. Range: [0, 60]. */
  readonly solar?: DailyRadiation
  /** Bright sunshine, where solar radiation is not measured. Unit: s. Range: [0, 86400]. */
  readonly sunshine?: Duration
  /** Without radiation and sunshine: where the site lies; `interior` by default. */
  readonly exposure?: 'interior' | 'coastal' | 'island'
  /** Wind, with the height at which it was measured. */
  readonly wind?: MeasuredWind
}

/** The day with what was missing filled in. */
export interface CompletedDay {
  readonly pressure: Pressure
  readonly actual: VapourPressure
  readonly solar: DailyRadiation
  readonly extraterrestrial: DailyRadiation
  readonly windSpeed: WindSpeed
  readonly assumedInputs: readonly WeatherAssumption[]
}

/** Fills in what a day lacks by the procedures of FAO-56, chapter 3, and says so. */
export function completeDay(weather: DailyWeather): CompletedDay {
  const assumed: WeatherAssumption[] = []
  notAbove('minTemperature', weather.minTemperature, 'maxTemperature', weather.maxTemperature)
  const extraterrestrial = extraterrestrialRadiationFao56(weather)
  return {
    pressure: pressureOf(weather),
    actual: vapourOf(weather, assumed),
    solar: solarOf(weather, extraterrestrial, assumed),
    extraterrestrial,
    windSpeed: windOf(weather, assumed),
    assumedInputs: assumed,
  }
}

function pressureOf({ elevation, pressure }: DailyWeather): Pressure {
  numberIn(elevation, SITE_ELEVATION, 'elevation')
  return pressure === undefined
    ? atmosphericPressureFao56(elevation)
    : (numberIn(pressure, AIR_PRESSURE, 'pressure') as Pressure)
}

function vapourOf(weather: DailyWeather, assumed: WeatherAssumption[]): VapourPressure {
  const { vapourPressure, dewPoint, maxHumidity, minHumidity, meanHumidity } = weather
  // Every value that is given must have a meaning, also where another one is preferred.
  for (const name of ['maxHumidity', 'minHumidity', 'meanHumidity'] as const)
    if (weather[name] !== undefined) numberIn(weather[name], RELATIVE_HUMIDITY, name)
  notAbove('minHumidity', minHumidity ?? 0, 'maxHumidity', maxHumidity ?? 1)
  const ofDew = dewPoint === undefined ? undefined : saturationAt(dewPoint, 'dewPoint')
  const ofNight = vapourPressureFromMinTemperatureFao56(weather)
  if (vapourPressure !== undefined) return numberIn(vapourPressure, ACTUAL_VAPOUR, 'vapourPressure') as VapourPressure
  if (ofDew !== undefined) return ofDew
  if (maxHumidity !== undefined && minHumidity !== undefined)
    return actualVapourPressureFao56({ ...weather, maxHumidity, minHumidity })
  if (maxHumidity !== undefined)
    return vapourPressureFromMaxHumidityFao56({ minTemperature: weather.minTemperature, maxHumidity })
  if (meanHumidity !== undefined) return vapourPressureFromMeanHumidityFao56({ ...weather, meanHumidity })
  assumed.push({
    code: 'assumed-humidity',
    level: 'caution',
    about: 'vapourPressure',
    value: ofNight,
    unit: 'kPa',
    aridity: weather.aridity ?? 0,
  })
  return ofNight
}

function solarOf(
  weather: DailyWeather,
  extraterrestrial: DailyRadiation,
  assumed: WeatherAssumption[],
): DailyRadiation {
  const { solar, sunshine, exposure = 'interior' } = weather
  oneOf(exposure, ['interior', 'coastal', 'island'], 'exposure')
  if (sunshine !== undefined) numberIn(sunshine, SUNSHINE, 'sunshine')
  if (solar !== undefined) return numberIn(solar, DAILY_SOLAR, 'solar') as DailyRadiation
  if (sunshine !== undefined) {
    const dayLength = dayLengthFao56(weather)
    return dayLength > 0
      ? solarRadiationFromSunshineFao56({ sunshine, dayLength, extraterrestrial })
      : (0 as DailyRadiation)
  }
  const estimate =
    exposure === 'island'
      ? solarRadiationOnIslandFao56({ extraterrestrial })
      : solarRadiationFromTemperatureFao56({ ...weather, extraterrestrial, adjustment: RADIATION_ADJUSTMENT[exposure] })
  assumed.push({
    code: 'assumed-radiation',
    level: 'caution',
    about: 'solar',
    value: estimate,
    unit: 'MJ/m²/d',
    exposure,
  })
  return estimate
}

function windOf({ wind }: DailyWeather, assumed: WeatherAssumption[]): WindSpeed {
  // A wind that was measured at 2 m is taken as it is; the logarithm would change it by 0.02 %.
  if (wind !== undefined) {
    const reduced = windSpeedAtTwoMetresFao56(wind)
    return wind.height === 200 ? wind.speed : reduced
  }
  assumed.push({ code: 'assumed-wind', level: 'caution', about: 'wind', value: USUAL_WIND, unit: 'm/s' })
  return USUAL_WIND as WindSpeed
}

/** Clear-sky share that is assumed where the sun does not rise (FAO-56 gives none for a whole day). */
export const POLAR_NIGHT_SHARE = 0.7
