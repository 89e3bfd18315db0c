import {
  clearSkyRadiationHourFao56,
  type NetLongwaveHourInput,
  netShortwaveRadiationHourFao56,
} from '../../air/net-radiation-hour-fao56.js'
import { psychrometricConstantFao56 } from '../../air/psychrometric-constant-fao56.js'
import { saturationAt } from '../../air/saturation-vapour-pressure-fao56.js'
import { extraterrestrialRadiationHourFao56, solarHourFao56 } from '../../air/solar-hour-fao56.js'
import type {
  HourlyNetRadiation,
  HourlyRadiation,
  Temperature,
  VapourPressure,
  VapourPressureDeficit,
  VapourPressureSlope,
} from '../../quantity/generated/kinds.js'
import { assumedCloudiness, type HourlyWeather, pressureOfHour, vapourOfHour, windOfHour } from './hourly-weather.js'
import { relativeShortwaveOfHour } from './reference-et-hour.js'
import { doubtsOfHour } from './weather-doubts.js'
import type { WeatherSteps } from './weather-steps.js'

/** The steps of an hour that lead to its reference evapotranspiration, by whichever method. */
export interface StepsOfHour extends WeatherSteps {
  /** Saturation vapour pressure. Unit: kPa. */
  readonly saturation: VapourPressure
  /** Extraterrestrial radiation. Unit: MJ/m²/h. */
  readonly extraterrestrial: HourlyRadiation
  /** Clear-sky radiation. Unit: MJ/m²/h. */
  readonly clearSky: HourlyRadiation
  /** Solar over clear-sky radiation, measured, from before sunset, or assumed. Unit: 1. */
  readonly relativeShortwave: number
  /** Net shortwave radiation. Unit: MJ/m²/h. */
  readonly netShortwave: HourlyNetRadiation
  /** Net outgoing longwave radiation. Unit: MJ/m²/h. */
  readonly netLongwave: HourlyNetRadiation
  /** Net radiation. Unit: MJ/m²/h. */
  readonly netRadiation: HourlyNetRadiation
}

/** The two steps in which the methods differ. */
interface MethodOfHour {
  readonly slope: (temperature: Temperature) => VapourPressureSlope
  readonly netLongwave: (hour: NetLongwaveHourInput) => HourlyNetRadiation
}

/** The steps of an hour. ASCE-EWRI (2005) rounds the slope and bounds the cloudiness of the longwave loss; the rest is that of FAO-56. */
export function stepsOfHour(weather: HourlyWeather, method: MethodOfHour): StepsOfHour {
  const { temperature, solar, elevation } = weather
  const pressure = pressureOfHour(weather)
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const saturation = saturationAt(temperature, 'temperature')
  const slope = method.slope(temperature)
  const actual = vapourOfHour(weather)
  const extraterrestrial = extraterrestrialRadiationHourFao56(weather)
  const { sunElevation } = solarHourFao56(weather)
  const clearSky = clearSkyRadiationHourFao56({ extraterrestrial, elevation })
  const netShortwave = netShortwaveRadiationHourFao56({ solar })
  const clouds = relativeShortwaveOfHour(solar, clearSky, sunElevation, weather.relativeShortwaveBeforeSunset)
  const netLongwave = method.netLongwave({
    temperature,
    actualVapourPressure: actual,
    relativeShortwave: clouds.ratio,
  })
  const deficit = (saturation - actual) as VapourPressureDeficit
  return {
    pressure,
    psychrometricConstant,
    slope,
    saturation,
    actual,
    deficit,
    extraterrestrial,
    clearSky,
    relativeShortwave: clouds.ratio,
    netShortwave,
    netLongwave,
    netRadiation: (netShortwave - netLongwave) as HourlyNetRadiation,
    windSpeed: windOfHour(weather),
    assumedInputs: clouds.assumed ? [assumedCloudiness(sunElevation)] : [],
    findings: doubtsOfHour({ solar, clearSky, extraterrestrial, deficit }, weather),
  }
}
