import { meanSaturationVapourPressureFao56, vapourPressureDeficit } from '../air/actual-vapour-pressure-fao56.js'
import {
  clearSkyRadiationFao56,
  netLongwaveRadiationFao56,
  netShortwaveRadiationFao56,
} from '../air/net-radiation-fao56.js'
import { psychrometricConstantFao56 } from '../air/psychrometric-constant-fao56.js'
import { slopeOfSaturationVapourPressureFao56 } from '../air/saturation-vapour-pressure-fao56.js'
import type { DailyNetRadiation, DailyRadiation, DailySoilHeat } from '../quantity/daily-radiation.js'
import type { ReferenceET } from '../quantity/evapotranspiration.js'
import type { Finding } from '../quantity/finding.js'
import type { Pressure, VapourPressure, VapourPressureDeficit } from '../quantity/pressure.js'
import type { VapourPressureSlope } from '../quantity/psychrometrics.js'
import type { Temperature } from '../quantity/temperature.js'
import type { WindSpeed } from '../quantity/wind.js'
import { completeDay, type DailyWeather, doubtsOfDay, POLAR_NIGHT_SHARE } from './daily-weather.js'
import { referenceETFao56 } from './reference-et-fao56.js'

/** Reference evapotranspiration of a day, with every step that leads to it. */
export interface DailyReferenceET {
  /** Reference evapotranspiration. Unit: mm/d. */
  readonly referenceET: ReferenceET
  /** The part of it that radiation drives. Unit: mm/d. */
  readonly radiationPart: ReferenceET
  /** The part of it that wind and dry air drive. Unit: mm/d. */
  readonly aerodynamicPart: ReferenceET
  /** Mean of the highest and the lowest temperature. Unit: °C. */
  readonly meanTemperature: Temperature
  /** Atmospheric pressure. Unit: kPa. */
  readonly pressure: Pressure
  /** Psychrometric constant. Unit: kPa/K. */
  readonly psychrometricConstant: VapourPressureSlope
  /** Slope of the saturation vapour pressure curve. Unit: kPa/K. */
  readonly slope: VapourPressureSlope
  /** Mean saturation vapour pressure. Unit: kPa. */
  readonly saturation: VapourPressure
  /** Actual vapour pressure. Unit: kPa. */
  readonly actual: VapourPressure
  /** Deficit of vapour pressure. Unit: kPa. */
  readonly deficit: VapourPressureDeficit
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
  /** Soil heat flux. Unit: MJ/m²/d. */
  readonly soilHeat: DailySoilHeat
  /** Wind speed at 2 m. Unit: m/s. */
  readonly windSpeed: WindSpeed
  /** What was not given and had to be estimated. */
  readonly assumed: readonly Finding[]
  /** What is doubtful. */
  readonly warnings: readonly Finding[]
}

/**
 * Reference evapotranspiration of grass for a day from its weather, with all steps of the FAO Penman-Monteith method.
 *
 * ```math
 * ET_o = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{900}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + 0.34\,u_2)}
 * ```
 *
 * The soil heat flux of a day is taken as zero. Humidity, radiation and wind that are missing are estimated by the procedures of FAO-56,
 * and `assumed` names each of them. Where the sun does not rise, a clear-sky share of 0.7 is assumed for the longwave loss and said so.
 *
 * @param weather - Temperatures and place; humidity, solar radiation and wind where they are known.
 * @returns Reference evapotranspiration, the steps to it and what was assumed.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @validity A large field of green, well-watered grass; under cover it is at best an index.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 6 with the steps of chapters 3 and 4, Box 11
 * @example
 * ```ts
 * const day = dailyReferenceETFao56({
 *   latitude: latitude(50.8), elevation: metresAboveSeaLevel(100), day: dayOfYear(187),
 *   highest: celsius(21.5), lowest: celsius(12.3), highestHumidity: percent(84), lowestHumidity: percent(63),
 *   solar: megajoulesPerSquareMetreDay(22.07), wind: { speed: kilometresPerHour(10), height: metres(10) },
 * })
 * day.referenceET // => 3.88
 * ```
 */
export function dailyReferenceETFao56(weather: DailyWeather): DailyReferenceET {
  return referenceETOfDay(weather, 0 as DailySoilHeat)
}

/** The steps with a given soil heat flux, for a day or a month. */
export function referenceETOfDay(weather: DailyWeather, soilHeat: DailySoilHeat): DailyReferenceET {
  const saturation = meanSaturationVapourPressureFao56(weather)
  const { pressure, actual, solar, extraterrestrial, windSpeed, assumed } = completeDay(weather)
  const meanTemperature = ((weather.highest + weather.lowest) / 2) as Temperature
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const slope = slopeOfSaturationVapourPressureFao56(meanTemperature)
  const deficit = vapourPressureDeficit({ saturation, actual })
  const clearSky = clearSkyRadiationFao56({ extraterrestrial, elevation: weather.elevation })
  const netShortwave = netShortwaveRadiationFao56({ solar })
  const netLongwave = netLongwaveRadiationFao56({
    highest: weather.highest,
    lowest: weather.lowest,
    actualVapourPressure: actual,
    relativeShortwave: clearSky > 0 ? solar / clearSky : POLAR_NIGHT_SHARE,
  })
  const netRadiation = (netShortwave - netLongwave) as DailyNetRadiation
  const terms = { netRadiation, soilHeat, meanTemperature, windSpeed, deficit, slope, psychrometricConstant }
  const referenceET = referenceETFao56(terms)
  const radiationPart = referenceETFao56({ ...terms, deficit: 0 as VapourPressureDeficit })
  return {
    referenceET,
    radiationPart,
    aerodynamicPart: (referenceET - radiationPart) as ReferenceET,
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
    netRadiation,
    soilHeat,
    windSpeed,
    assumed,
    warnings: doubtsOfDay(solar, clearSky, deficit),
  }
}
