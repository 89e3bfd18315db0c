import { meanSaturationVapourPressureFao56 } from '../air/actual-vapour-pressure-fao56.js'
import { clearSkyRadiationFao56, netShortwaveRadiationFao56 } from '../air/net-radiation-fao56.js'
import { psychrometricConstantFao56 } from '../air/psychrometric-constant-fao56.js'
import type { DailyNetRadiation, DailyRadiation } from '../quantity/daily-radiation.js'
import type { ReferenceET } from '../quantity/evapotranspiration.js'
import type { Finding } from '../quantity/finding.js'
import type { Pressure, VapourPressure, VapourPressureDeficit } from '../quantity/pressure.js'
import type { VapourPressureSlope } from '../quantity/psychrometrics.js'
import type { Temperature } from '../quantity/temperature.js'
import type { WindSpeed } from '../quantity/wind.js'
import { cloudinessAsce, SHORT_DAY, SIGMA_DAY, slopeAsce, TALL_DAY } from './asce-2005.js'
import { completeDay, type DailyWeather, doubtsOfDay, POLAR_NIGHT_SHARE } from './daily-weather.js'
import { penmanMonteith } from './reference-et-hour.js'

/** Standardized reference evapotranspiration of a day for both surfaces, with every step that leads to it. */
export interface DailyReferenceETAsce {
  /** Of the short surface, clipped grass of 12 cm (ETos). Unit: mm/d. */
  readonly short: ReferenceET
  /** Of the tall surface, full-cover alfalfa of 50 cm (ETrs). Unit: mm/d. */
  readonly tall: ReferenceET
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
  /** Wind speed at 2 m. Unit: m/s. */
  readonly windSpeed: WindSpeed
  /** What was not given and had to be estimated. */
  readonly assumed: readonly Finding[]
  /** What is doubtful. */
  readonly warnings: readonly Finding[]
}

/**
 * Standardized reference evapotranspiration of a day for short and tall surfaces from its weather.
 *
 * ```math
 * ET_{sz} = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{C_n}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + C_d\,u_2)}
 * ```
 *
 * The constants are 900 and 0.34 for the short, 1600 and 0.38 for the tall surface. Measured over clear-sky radiation is held between 0.3
 * and 1. What is missing is estimated as in FAO-56 and named in `assumed`.
 *
 * @param weather - Temperatures and place; humidity, solar radiation and wind where they are known.
 * @returns Reference evapotranspiration of both surfaces, the steps and what was assumed.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @validity Large fields of the two surfaces without stress; under cover it is at best an index.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 with Table 1 and the daily steps
 * @example
 * ```ts
 * const day = dailyReferenceETAsce2005({
 *   latitude: latitude(40.41), elevation: metresAboveSeaLevel(1462.4), day: dayOfYear(183),
 *   highest: celsius(32.4), lowest: celsius(10.9), vapourPressure: kilopascals(1.27),
 *   solar: megajoulesPerSquareMetreDay(22.4), wind: { speed: metresPerSecond(1.94), height: metres(3) },
 * })
 * day.short // => 5.69
 * day.tall // => 7.32
 * ```
 */
export function dailyReferenceETAsce2005(weather: DailyWeather): DailyReferenceETAsce {
  const saturation = meanSaturationVapourPressureFao56(weather)
  const { pressure, actual, solar, extraterrestrial, windSpeed, assumed } = completeDay(weather)
  const { highest, lowest, elevation } = weather
  const meanTemperature = ((highest + lowest) / 2) as Temperature
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const slope = slopeAsce(meanTemperature) as VapourPressureSlope
  const deficit = (saturation - actual) as VapourPressureDeficit
  const clearSky = clearSkyRadiationFao56({ extraterrestrial, elevation })
  const netShortwave = netShortwaveRadiationFao56({ solar })
  const clouds = cloudinessAsce(clearSky > 0 ? solar / clearSky : POLAR_NIGHT_SHARE)
  const black = (SIGMA_DAY * ((highest + 273.16) ** 4 + (lowest + 273.16) ** 4)) / 2
  const netLongwave = (black * (0.34 - 0.14 * Math.sqrt(actual)) * clouds) as DailyNetRadiation
  const netRadiation = (netShortwave - netLongwave) as DailyNetRadiation
  const et = (surface: { readonly numerator: number; readonly denominator: number }) =>
    penmanMonteith(
      slope,
      psychrometricConstant,
      netRadiation,
      meanTemperature,
      windSpeed,
      deficit,
      surface.numerator,
      surface.denominator,
    ) as ReferenceET
  return {
    short: et(SHORT_DAY),
    tall: et(TALL_DAY),
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
    windSpeed,
    assumed,
    warnings: doubtsOfDay(solar, clearSky, deficit),
  }
}
