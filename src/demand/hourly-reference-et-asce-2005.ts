import { clearSkyRadiationHourFao56, netShortwaveRadiationHourFao56 } from '../air/net-radiation-hour-fao56.js'
import { psychrometricConstantFao56 } from '../air/psychrometric-constant-fao56.js'
import { saturationVapourPressureFao56 } from '../air/saturation-vapour-pressure-fao56.js'
import { extraterrestrialRadiationHourFao56, solarHourFao56 } from '../air/solar-hour-fao56.js'
import type { HourlyReferenceET } from '../quantity/evapotranspiration-hourly.js'
import type { Finding } from '../quantity/finding.js'
import type { HourlyNetRadiation, HourlyRadiation } from '../quantity/hourly-radiation.js'
import type { Pressure, VapourPressure, VapourPressureDeficit } from '../quantity/pressure.js'
import type { VapourPressureSlope } from '../quantity/psychrometrics.js'
import type { WindSpeed } from '../quantity/wind.js'
import { cloudinessAsce, SHORT_HOUR, SIGMA_HOUR, slopeAsce, TALL_HOUR } from './asce-2005.js'
import { assumedCloudiness, type HourlyWeather, pressureOfHour, vapourOfHour, windOfHour } from './hourly-weather.js'
import { penmanMonteith, relativeShortwaveOfHour } from './reference-et-hour.js'

/** Standardized reference evapotranspiration of an hour for both surfaces, with every step that leads to it. */
export interface HourlyReferenceETAsce {
  /** Of the short surface, clipped grass of 12 cm (ETos); negative values are dew. Unit: mm/h. */
  readonly short: HourlyReferenceET
  /** Of the tall surface, full-cover alfalfa of 50 cm (ETrs); negative values are dew. Unit: mm/h. */
  readonly tall: HourlyReferenceET
  /** Atmospheric pressure. Unit: kPa. */
  readonly pressure: Pressure
  /** Psychrometric constant. Unit: kPa/K. */
  readonly psychrometricConstant: VapourPressureSlope
  /** Slope of the saturation vapour pressure curve. Unit: kPa/K. */
  readonly slope: VapourPressureSlope
  /** Saturation vapour pressure. Unit: kPa. */
  readonly saturation: VapourPressure
  /** Actual vapour pressure. Unit: kPa. */
  readonly actual: VapourPressure
  /** Deficit of vapour pressure. Unit: kPa. */
  readonly deficit: VapourPressureDeficit
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
  /** Net radiation; the hour counts as day where it is above zero. Unit: MJ/m²/h. */
  readonly netRadiation: HourlyNetRadiation
  /** Wind speed at 2 m. Unit: m/s. */
  readonly windSpeed: WindSpeed
  /** What was not given and had to be estimated. */
  readonly assumed: readonly Finding[]
}

/**
 * Standardized reference evapotranspiration of an hour for short and tall surfaces from its weather.
 *
 * ```math
 * ET_{sz} = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{C_n}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + C_d\,u_2)}
 * ```
 *
 * Numerator constants are 37 (short) and 66 (tall); denominator constants 0.24 by day and 0.96 by night (short), 0.25 and 1.7 (tall); the
 * soil takes 0.1 and 0.5 (short), 0.04 and 0.2 (tall) of the net radiation. An hour counts as day where the net radiation is positive.
 *
 * @param weather - Place, hour, temperature, humidity, solar radiation and wind.
 * @returns Reference evapotranspiration of both surfaces, the steps and what was assumed.
 * @throws `DomainError` outside the ranges, `InputError` without any humidity.
 * @validity Large fields of the two surfaces without stress; under cover it is at best an index.
 * @source ASCE-EWRI (2005), The ASCE Standardized Reference Evapotranspiration Equation, Eq. 1 with Table 1 and the hourly steps
 * @example
 * ```ts
 * const hour = hourlyReferenceETAsce2005({
 *   latitude: latitude(40.41), longitude: longitude(-104.78), zoneLongitude: longitude(-105), elevation: metresAboveSeaLevel(1462.4),
 *   day: dayOfYear(183), middle: hours(16.5), temperature: celsius(30.9), vapourPressure: kilopascals(1.09),
 *   solar: megajoulesPerSquareMetreHour(2.24), wind: { speed: metresPerSecond(4.07), height: metres(3) },
 * })
 * hour.short // => 0.599
 * hour.tall // => 0.807
 * ```
 */
export function hourlyReferenceETAsce2005(weather: HourlyWeather): HourlyReferenceETAsce {
  const { temperature, solar, elevation } = weather
  const pressure = pressureOfHour(weather)
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const saturation = saturationVapourPressureFao56(temperature)
  const slope = slopeAsce(temperature) as VapourPressureSlope
  const actual = vapourOfHour(weather)
  const deficit = (saturation - actual) as VapourPressureDeficit
  const extraterrestrial = extraterrestrialRadiationHourFao56(weather)
  const { sunHeight } = solarHourFao56(weather)
  const clearSky = clearSkyRadiationHourFao56({ extraterrestrial, elevation })
  const netShortwave = netShortwaveRadiationHourFao56({ solar })
  const clouds = relativeShortwaveOfHour(solar, clearSky, sunHeight, weather.relativeShortwaveBeforeSunset)
  const emissivity = 0.34 - 0.14 * Math.sqrt(actual)
  const netLongwave = (SIGMA_HOUR *
    (temperature + 273.16) ** 4 *
    emissivity *
    cloudinessAsce(clouds.ratio)) as HourlyNetRadiation
  const netRadiation = (netShortwave - netLongwave) as HourlyNetRadiation
  const windSpeed = windOfHour(weather)
  const et = (surface: typeof SHORT_HOUR | typeof TALL_HOUR) =>
    penmanMonteith(
      slope,
      psychrometricConstant,
      netRadiation * (1 - (netRadiation > 0 ? surface.soilDay : surface.soilNight)),
      temperature,
      windSpeed,
      deficit,
      surface.numerator,
      netRadiation > 0 ? surface.day : surface.night,
    ) as HourlyReferenceET
  return {
    short: et(SHORT_HOUR),
    tall: et(TALL_HOUR),
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
    netRadiation,
    windSpeed,
    assumed: clouds.assumed ? [assumedCloudiness(sunHeight)] : [],
  }
}
