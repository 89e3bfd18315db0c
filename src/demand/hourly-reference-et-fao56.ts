import {
  clearSkyRadiationHourFao56,
  netLongwaveRadiationHourFao56,
  netShortwaveRadiationHourFao56,
  soilHeatHourFao56,
} from '../air/net-radiation-hour-fao56.js'
import { psychrometricConstantFao56 } from '../air/psychrometric-constant-fao56.js'
import {
  saturationVapourPressureFao56,
  slopeOfSaturationVapourPressureFao56,
} from '../air/saturation-vapour-pressure-fao56.js'
import { extraterrestrialRadiationHourFao56, solarHourFao56 } from '../air/solar-hour-fao56.js'
import type { HourlyReferenceET } from '../quantity/evapotranspiration-hourly.js'
import type { Finding } from '../quantity/finding.js'
import type { HourlyNetRadiation, HourlyRadiation, HourlySoilHeat } from '../quantity/hourly-radiation.js'
import type { Pressure, VapourPressure, VapourPressureDeficit } from '../quantity/pressure.js'
import type { VapourPressureSlope } from '../quantity/psychrometrics.js'
import type { WindSpeed } from '../quantity/wind.js'
import { assumedCloudiness, type HourlyWeather, pressureOfHour, vapourOfHour, windOfHour } from './hourly-weather.js'
import { penmanMonteith, relativeShortwaveOfHour } from './reference-et-hour.js'

/** Reference evapotranspiration of an hour, with every step that leads to it. */
export interface HourlyReferenceETSteps {
  /** Reference evapotranspiration; negative values are dew. Unit: mm/h. */
  readonly referenceET: HourlyReferenceET
  /** The part of it that radiation drives. Unit: mm/h. */
  readonly radiationPart: HourlyReferenceET
  /** The part of it that wind and dry air drive. Unit: mm/h. */
  readonly aerodynamicPart: HourlyReferenceET
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
  /** Net radiation. Unit: MJ/m²/h. */
  readonly netRadiation: HourlyNetRadiation
  /** Soil heat flux. Unit: MJ/m²/h. */
  readonly soilHeat: HourlySoilHeat
  /** Wind speed at 2 m. Unit: m/s. */
  readonly windSpeed: WindSpeed
  /** What was not given and had to be estimated. */
  readonly assumed: readonly Finding[]
}

/**
 * Reference evapotranspiration of grass for an hour from its weather, with all steps of the hourly FAO Penman-Monteith method.
 *
 * ```math
 * ET_o = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{37}{T + 273} u_2 (e^\circ(T) - e_a)}{\Delta + \gamma (1 + 0.34\,u_2)}
 * ```
 *
 * Cloudiness is measured while the sun stands 0.3 rad or higher; below that the ratio before sunset is taken, or 0.7 is assumed and named.
 * An hour counts as day while any sun shines above the atmosphere.
 *
 * @param weather - Place, hour, temperature, humidity, solar radiation and wind.
 * @returns Reference evapotranspiration, the steps to it and what was assumed.
 * @throws `DomainError` outside the ranges, `InputError` without any humidity.
 * @validity A large field of green, well-watered grass; under cover it is at best an index.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 53 with the steps of chapters 3 and 4
 * @example
 * ```ts
 * const hour = hourlyReferenceETFao56({
 *   latitude: latitude(16.216667), longitude: longitude(-16.25), zoneLongitude: longitude(-15), elevation: metresAboveSeaLevel(8),
 *   day: dayOfYear(274), middle: hours(14.5), temperature: celsius(38), humidity: percent(52),
 *   solar: megajoulesPerSquareMetreHour(2.45), wind: { speed: metresPerSecond(3.3), height: metres(2) },
 * })
 * hour.referenceET // => 0.63
 * ```
 */
export function hourlyReferenceETFao56(weather: HourlyWeather): HourlyReferenceETSteps {
  const { temperature, solar, elevation } = weather
  const pressure = pressureOfHour(weather)
  const psychrometricConstant = psychrometricConstantFao56(pressure)
  const slope = slopeOfSaturationVapourPressureFao56(temperature)
  const saturation = saturationVapourPressureFao56(temperature)
  const actual = vapourOfHour(weather)
  const deficit = (saturation - actual) as VapourPressureDeficit
  const extraterrestrial = extraterrestrialRadiationHourFao56(weather)
  const { sunHeight } = solarHourFao56(weather)
  const clearSky = clearSkyRadiationHourFao56({ extraterrestrial, elevation })
  const netShortwave = netShortwaveRadiationHourFao56({ solar })
  const clouds = relativeShortwaveOfHour(solar, clearSky, sunHeight, weather.relativeShortwaveBeforeSunset)
  const netLongwave = netLongwaveRadiationHourFao56({
    temperature,
    actualVapourPressure: actual,
    relativeShortwave: clouds.ratio,
  })
  const netRadiation = (netShortwave - netLongwave) as HourlyNetRadiation
  const soilHeat = soilHeatHourFao56({ netRadiation, daylight: extraterrestrial > 0 })
  const windSpeed = windOfHour(weather)
  const et = (dryness: number) =>
    penmanMonteith(
      slope,
      psychrometricConstant,
      netRadiation - soilHeat,
      temperature,
      windSpeed,
      dryness,
      37,
      0.34,
    ) as HourlyReferenceET
  const referenceET = et(deficit)
  const radiationPart = et(0)
  return {
    referenceET,
    radiationPart,
    aerodynamicPart: (referenceET - radiationPart) as HourlyReferenceET,
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
    soilHeat,
    windSpeed,
    assumed: clouds.assumed ? [assumedCloudiness(sunHeight)] : [],
  }
}
