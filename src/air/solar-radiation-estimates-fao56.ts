import { answerOf } from '../quantity/answer.js'
import type { DailyRadiation, Duration } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../quantity/guard.js'
import { notAbove } from '../quantity/not-above.js'
import type { DayTemperatures } from './actual-vapour-pressure-fao56.js'
import {
  ADJUSTMENT_COEFFICIENT,
  AIR_TEMPERATURE,
  DAILY_SOLAR,
  DAY_LENGTH,
  ISLAND_CONSTANT,
  OUTSIDE_RADIATION,
  SOME_OUTSIDE_RADIATION,
} from './domains.js'
import type { Extraterrestrial, SolarRadiation } from './terms.js'

/** Adjustment coefficient of the temperature formula, K^-0.5: away from large water bodies, and near the coast (FAO-56, Eq. 50). */
export const RADIATION_ADJUSTMENT = { interior: 0.16, coastal: 0.19 } as const

/** Where a site lies: land that dominates the air, or the coast of a large water body. */
export type SiteExposure = keyof typeof RADIATION_ADJUSTMENT

/** What solar radiation is estimated from where only temperatures are known. */
export interface RadiationFromTemperatureInput extends Extraterrestrial, DayTemperatures {
  /** Adjustment coefficient: about 0.16 inland and 0.19 near the coast. Unit: K^-0.5. Range: [0.05, 0.3]. */
  readonly adjustment: number
}

/** What solar radiation is estimated from on an island of low land. */
export interface RadiationOnIslandInput extends Extraterrestrial {
  /** Empirical constant; 4 by default. Unit: MJ/m²/d. Range: [0, 20]. */
  readonly base?: DailyRadiation
}

/** What hours of sunshine are found from. */
export interface SunshineFromRadiationInput extends SolarRadiation {
  /** Extraterrestrial radiation. Unit: MJ/m²/d. Range: (0, 60]. */
  readonly extraterrestrial: DailyRadiation
  /** Length of the day. Unit: s. Range: [0, 86400]. */
  readonly dayLength: Duration
}

/**
 * Solar radiation of a day from the difference of its highest and lowest temperature, for sites where nothing better is known.
 *
 * @equation `R_s = k_{Rs} \sqrt{T_{max} - T_{min}}\, R_a`
 * @returns Solar radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the ranges, `InputError` when the temperatures are swapped.
 * @validity Means of several days; not on islands of less than about 20 km, where the sea rules the temperature.
 * @source allen-1998, Eq. 50
 * @example
 * solarRadiationFromTemperatureFao56({
 *   maxTemperature: celsius(26.6), minTemperature: celsius(14.8), extraterrestrial: megajoulesPerSquareMetreDay(40.6), adjustment: 0.16,
 * }) // => 22.3
 */
export function solarRadiationFromTemperatureFao56(input: RadiationFromTemperatureInput): DailyRadiation {
  const range =
    numberIn(optionsOf(input).maxTemperature, AIR_TEMPERATURE, 'maxTemperature') -
    numberIn(input.minTemperature, AIR_TEMPERATURE, 'minTemperature')
  notAbove('minTemperature', input.minTemperature, 'maxTemperature', input.maxTemperature)
  const outside = numberIn(input.extraterrestrial, OUTSIDE_RADIATION, 'extraterrestrial')
  return (numberIn(input.adjustment, ADJUSTMENT_COEFFICIENT, 'adjustment') *
    Math.sqrt(range) *
    outside) as DailyRadiation
}

/**
 * Solar radiation of a mean month on an island whose land stays below 100 m.
 *
 * Below an extraterrestrial radiation of b / 0.7 the formula gives less than nothing; zero is returned there.
 *
 * @equation `R_s = 0.7 R_a - b`
 * @returns Solar radiation. Unit: MJ/m²/d.
 * @validity Islands of less than 20 km, means of a month.
 * @source allen-1998, Eq. 51
 * @example
 * solarRadiationOnIslandFao56({ extraterrestrial: megajoulesPerSquareMetreDay(38.1) }) // => 22.67
 */
export function solarRadiationOnIslandFao56(input: RadiationOnIslandInput): DailyRadiation {
  const { extraterrestrial, base } = optionsOf(input)
  return Math.max(
    0,
    0.7 * numberIn(extraterrestrial, OUTSIDE_RADIATION, 'extraterrestrial') -
      numberIn(optionOr(base, 4), ISLAND_CONSTANT, 'base'),
  ) as DailyRadiation
}

/**
 * Hours of sunshine that would give a solar radiation: the true inverse of the Ångström formula with the coefficients 0.25 and 0.50.
 *
 * A value below zero or above the length of the day says that the coefficients do not belong to the site; it is returned as it is.
 *
 * @equation `n = \frac{N}{0.50} \left( \frac{R_s}{R_a} - 0.25 \right)`
 * @returns Sunshine. Unit: s.
 * @validity Where the coefficients were not calibrated for the site.
 * @source allen-1998, Eq. 35 solved for the sunshine
 * @example
 * inHours(sunshineFromSolarRadiationFao56({
 *   solar: megajoulesPerSquareMetreDay(14.45), extraterrestrial: megajoulesPerSquareMetreDay(25.1), dayLength: hours(10.9),
 * })) // => 7.1
 */
export function sunshineFromSolarRadiationFao56(input: SunshineFromRadiationInput): Duration {
  const share =
    numberIn(optionsOf(input).solar, DAILY_SOLAR, 'solar') /
    numberIn(input.extraterrestrial, SOME_OUTSIDE_RADIATION, 'extraterrestrial')
  return answerOf(
    (numberIn(input.dayLength, DAY_LENGTH, 'dayLength') * (share - 0.25)) / 0.5,
    'extraterrestrial',
  ) as Duration
}
