import { SITE_ELEVATION } from '../quantity/domains.js'
import type { DailyNetRadiation, DailyRadiation } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import { notAbove } from '../quantity/not-above.js'
import type { DayTemperatures } from './actual-vapour-pressure-fao56.js'
import {
  ACTUAL_VAPOUR,
  AIR_TEMPERATURE,
  ALBEDO,
  DAILY_SOLAR,
  OUTSIDE_RADIATION,
  RELATIVE_SHORTWAVE,
} from './domains.js'
import type { ActualVapour, Albedo, Extraterrestrial, SiteElevation, SolarRadiation } from './terms.js'

/** Stefan-Boltzmann constant, MJ K⁻⁴ m⁻² d⁻¹. */
const STEFAN_BOLTZMANN = 4.903e-9

/** A day's extraterrestrial radiation and the height of the site. */
export interface ClearSkyInput extends Extraterrestrial, SiteElevation {}

/**
 * Solar radiation under a clear sky.
 *
 * @equation `R_{so} = (0.75 + 2 \times 10^{-5} z) R_a`
 * @returns Clear-sky radiation. Unit: MJ/m²/d.
 * @source allen-1998, Eq. 37
 * @example
 * clearSkyRadiationFao56({ extraterrestrial: megajoulesPerSquareMetreDay(41.09), elevation: metresAboveSeaLevel(100) }) // => 30.90
 */
export function clearSkyRadiationFao56(input: ClearSkyInput): DailyRadiation {
  const { extraterrestrial, elevation } = optionsOf(input)
  return ((0.75 + 2e-5 * numberIn(elevation, SITE_ELEVATION, 'elevation')) *
    numberIn(extraterrestrial, OUTSIDE_RADIATION, 'extraterrestrial')) as DailyRadiation
}

/** Solar radiation and the share of it that the surface reflects. */
export interface NetShortwaveInput extends Albedo, SolarRadiation {}

/**
 * Net shortwave radiation: what a surface does not reflect.
 *
 * @equation `R_{ns} = (1 - \alpha) R_s`
 * @returns Net shortwave radiation. Unit: MJ/m²/d.
 * @source allen-1998, Eq. 38
 * @example
 * netShortwaveRadiationFao56({ solar: megajoulesPerSquareMetreDay(14.5) }) // => 11.2
 */
export function netShortwaveRadiationFao56(input: NetShortwaveInput): DailyNetRadiation {
  const { solar, albedo } = optionsOf(input)
  return ((1 - numberIn(optionOr(albedo, 0.23), ALBEDO, 'albedo')) *
    numberIn(solar, DAILY_SOLAR, 'solar')) as DailyNetRadiation
}

/** What the net longwave radiation of a day is found from. */
export interface NetLongwaveInput extends ActualVapour, DayTemperatures {
  /** Solar over clear-sky radiation; more than 1 counts as 1, as the paper asks. Unit: 1. Range: [0, ∞). */
  readonly relativeShortwave: number
}

/**
 * Net longwave radiation that the surface loses in a day.
 *
 * @equation `R_{nl} = \sigma \frac{T_{max,K}^4 + T_{min,K}^4}{2} \left( 0.34 - 0.14 \sqrt{e_a} \right) \left( 1.35 \frac{R_s}{R_{so}} - 0.35 \right)`
 * @returns Net outgoing longwave radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the ranges, `InputError` when the temperatures are swapped.
 * @source allen-1998, Eq. 39
 * @example
 * netLongwaveRadiationFao56({
 *   maxTemperature: celsius(25.1), minTemperature: celsius(19.1), actualVapourPressure: kilopascals(2.1), relativeShortwave: 14.5 / 18.8,
 * }) // => 3.5
 */
export function netLongwaveRadiationFao56(input: NetLongwaveInput): DailyNetRadiation {
  const max = numberIn(optionsOf(input).maxTemperature, AIR_TEMPERATURE, 'maxTemperature') + 273.16
  const min = numberIn(input.minTemperature, AIR_TEMPERATURE, 'minTemperature') + 273.16
  const humidity = 0.34 - 0.14 * Math.sqrt(numberIn(input.actualVapourPressure, ACTUAL_VAPOUR, 'actualVapourPressure'))
  const cloud = 1.35 * Math.min(1, numberIn(input.relativeShortwave, RELATIVE_SHORTWAVE, 'relativeShortwave')) - 0.35
  notAbove('minTemperature', input.minTemperature, 'maxTemperature', input.maxTemperature)
  return (((STEFAN_BOLTZMANN * (max ** 4 + min ** 4)) / 2) * humidity * cloud) as DailyNetRadiation
}
