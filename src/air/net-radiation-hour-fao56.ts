import { SITE_ELEVATION } from '../quantity/domains.js'
import type { HourlyNetRadiation, HourlyRadiation, HourlySoilHeat, Temperature } from '../quantity/generated/kinds.js'
import { booleanOf, numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import {
  ACTUAL_VAPOUR,
  AIR_TEMPERATURE,
  ALBEDO,
  HOURLY_NET_RADIATION,
  HOURLY_OUTSIDE_RADIATION,
  HOURLY_SOLAR,
  RELATIVE_SHORTWAVE,
} from './domains.js'
import type { ActualVapour, Albedo, SiteElevation } from './terms.js'

/** Stefan-Boltzmann constant, MJ K⁻⁴ m⁻² h⁻¹. */
const STEFAN_BOLTZMANN_HOUR = 2.043e-10

/** Extraterrestrial radiation of an hour and the height of the site. */
export interface ClearSkyHourInput extends SiteElevation {
  /** Extraterrestrial radiation. Unit: MJ/m²/h. Range: [0, 6]. */
  readonly extraterrestrial: HourlyRadiation
}

/** Solar radiation of an hour and the share of it that the surface reflects. */
export interface NetShortwaveHourInput extends Albedo {
  /** Solar radiation. Unit: MJ/m²/h. Range: [0, 6]. */
  readonly solar: HourlyRadiation
}

/** What the net longwave radiation of an hour is found from. */
export interface NetLongwaveHourInput extends ActualVapour {
  /** Mean air temperature of the hour. Unit: °C. Range: [-60, 100]. */
  readonly temperature: Temperature
  /** Solar over clear-sky radiation, at night that of the last hours before sunset; more than 1 counts as 1. Unit: 1. Range: [0, ∞). */
  readonly relativeShortwave: number
}

/** Net radiation of an hour, and whether the sun is up. */
export interface SoilHeatHourInput {
  /** Net radiation. Unit: MJ/m²/h. Range: [-6, 6]. */
  readonly netRadiation: HourlyNetRadiation
  /** Whether it is day. */
  readonly daylight: boolean
}

/**
 * Solar radiation of an hour under a clear sky.
 *
 * @equation `R_{so} = (0.75 + 2 \times 10^{-5} z) R_a`
 * @returns Clear-sky radiation. Unit: MJ/m²/h.
 * @source allen-1998, Eq. 37
 * @example
 * clearSkyRadiationHourFao56({
 *   extraterrestrial: megajoulesPerSquareMetreHour(3.543), elevation: metresAboveSeaLevel(8),
 * }) // => 2.658
 */
export function clearSkyRadiationHourFao56(input: ClearSkyHourInput): HourlyRadiation {
  const { extraterrestrial, elevation } = optionsOf(input)
  return ((0.75 + 2e-5 * numberIn(elevation, SITE_ELEVATION, 'elevation')) *
    numberIn(extraterrestrial, HOURLY_OUTSIDE_RADIATION, 'extraterrestrial')) as HourlyRadiation
}

/**
 * Net shortwave radiation of an hour: what a surface does not reflect.
 *
 * @equation `R_{ns} = (1 - \alpha) R_s`
 * @returns Net shortwave radiation. Unit: MJ/m²/h.
 * @source allen-1998, Eq. 38
 * @example
 * netShortwaveRadiationHourFao56({ solar: megajoulesPerSquareMetreHour(2.45) }) // => 1.887
 */
export function netShortwaveRadiationHourFao56(input: NetShortwaveHourInput): HourlyNetRadiation {
  const { solar, albedo } = optionsOf(input)
  return ((1 - numberIn(optionOr(albedo, 0.23), ALBEDO, 'albedo')) *
    numberIn(solar, HOURLY_SOLAR, 'solar')) as HourlyNetRadiation
}

/**
 * Net longwave radiation that the surface loses in an hour.
 *
 * @equation `R_{nl} = \sigma T_K^4 \left( 0.34 - 0.14 \sqrt{e_a} \right) \left( 1.35 \frac{R_s}{R_{so}} - 0.35 \right)`
 * @returns Net outgoing longwave radiation. Unit: MJ/m²/h.
 * @source allen-1998, Eq. 39 with the constant of an hour
 * @example
 * netLongwaveRadiationHourFao56({
 *   temperature: celsius(38), actualVapourPressure: kilopascals(3.445), relativeShortwave: 0.922,
 * }) // => 0.137
 */
export function netLongwaveRadiationHourFao56(input: NetLongwaveHourInput): HourlyNetRadiation {
  const kelvin = numberIn(optionsOf(input).temperature, AIR_TEMPERATURE, 'temperature') + 273.16
  const humidity = 0.34 - 0.14 * Math.sqrt(numberIn(input.actualVapourPressure, ACTUAL_VAPOUR, 'actualVapourPressure'))
  const cloud = 1.35 * Math.min(1, numberIn(input.relativeShortwave, RELATIVE_SHORTWAVE, 'relativeShortwave')) - 0.35
  return (STEFAN_BOLTZMANN_HOUR * kelvin ** 4 * humidity * cloud) as HourlyNetRadiation
}

/**
 * Heat that goes into the ground under grass in an hour: a tenth of the net radiation by day, half of it by night.
 *
 * @equation `G_{day} = 0.1 R_n, \quad G_{night} = 0.5 R_n`
 * @returns Soil heat flux; negative at night, when the ground gives heat. Unit: MJ/m²/h.
 * @source allen-1998, Eq. 45 and 46
 * @example
 * soilHeatHourFao56({ netRadiation: megajoulesPerSquareMetreHour(1.749), daylight: true }) // => 0.175
 */
export function soilHeatHourFao56(input: SoilHeatHourInput): HourlySoilHeat {
  const { netRadiation, daylight } = optionsOf(input)
  return ((booleanOf(daylight, 'daylight') ? 0.1 : 0.5) *
    numberIn(netRadiation, HOURLY_NET_RADIATION, 'netRadiation')) as HourlySoilHeat
}
