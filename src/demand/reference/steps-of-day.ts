import { meanSaturationVapourPressureFao56 } from '../../air/actual-vapour-pressure-fao56.js'
import {
  clearSkyRadiationFao56,
  type NetLongwaveInput,
  netShortwaveRadiationFao56,
} from '../../air/net-radiation-fao56.js'
import { psychrometricConstantFao56 } from '../../air/psychrometric-constant-fao56.js'
import type {
  DailyNetRadiation,
  DailyRadiation,
  Temperature,
  VapourPressure,
  VapourPressureDeficit,
  VapourPressureSlope,
} from '../../quantity/generated/kinds.js'
import { completeDay, type DailyWeather, POLAR_NIGHT_SHARE } from './daily-weather.js'
import { doubtsOfDay } from './weather-doubts.js'
import type { WeatherSteps } from './weather-steps.js'

/** The steps of a day that lead to its reference evapotranspiration, by whichever method. */
export interface StepsOfDay extends WeatherSteps {
  /** Mean of the highest and the lowest temperature. Unit: °C. */
  readonly meanTemperature: Temperature
  /** Mean saturation vapour pressure. Unit: kPa. */
  readonly saturation: VapourPressure
  /** Extraterrestrial radiation. Unit: MJ/m²/d. */
  readonly extraterrestrial: DailyRadiation
  /** Clear-sky radiation. Unit: MJ/m²/d. */
  readonly clearSky: DailyRadiation
  /** Solar radiation, measured or estimated. Unit: MJ/m²/d. */
  readonly solar: DailyRadiation
  /** Net shortwave radiation. Unit: MJ/m²/d. */
  readonly netShortwave: DailyNetRadiation
  /** Net outgoing longwave radiation. Unit: MJ/m²/d. */
  readonly netLongwave: DailyNetRadiation
  /** Net radiation. Unit: MJ/m²/d. */
  readonly netRadiation: DailyNetRadiation
}

/** The two steps in which the methods differ. */
interface MethodOfDay {
  readonly slope: (meanTemperature: Temperature) => VapourPressureSlope
  readonly netLongwave: (day: NetLongwaveInput) => DailyNetRadiation
}

/** The steps of a day. ASCE-EWRI (2005) rounds the slope and bounds the cloudiness of the longwave loss; the rest is that of FAO-56. */
export function stepsOfDay(weather: DailyWeather, method: MethodOfDay): StepsOfDay {
  const { maxTemperature: max, minTemperature: min, elevation } = weather
  const saturation = meanSaturationVapourPressureFao56(weather)
  const { pressure, actual, solar, extraterrestrial, windSpeed, assumedInputs } = completeDay(weather)
  const meanTemperature = ((max + min) / 2) as Temperature
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const slope = method.slope(meanTemperature)
  const deficit = (saturation - actual) as VapourPressureDeficit
  const clearSky = clearSkyRadiationFao56({ extraterrestrial, elevation })
  const netShortwave = netShortwaveRadiationFao56({ solar })
  const relativeShortwave = clearSky > 0 ? solar / clearSky : POLAR_NIGHT_SHARE
  const netLongwave = method.netLongwave({
    maxTemperature: max,
    minTemperature: min,
    actualVapourPressure: actual,
    relativeShortwave,
  })
  return {
    meanTemperature,
    pressure,
    psychrometricConstant,
    slope,
    saturation,
    actual,
    deficit,
    extraterrestrial,
    clearSky,
    solar,
    netShortwave,
    netLongwave,
    netRadiation: (netShortwave - netLongwave) as DailyNetRadiation,
    windSpeed,
    assumedInputs,
    findings: doubtsOfDay({ solar, clearSky, extraterrestrial, deficit }),
  }
}
