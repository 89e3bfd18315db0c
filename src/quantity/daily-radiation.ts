import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Energy of radiation on an area in one day. Unit: MJ/m²/d. */
export type DailyRadiation = number &
  Kind<'daily radiation in MJ/m²/d, from megajoulesPerSquareMetreDay() or joulesPerSquareCentimetreDay()'>

/** Net radiation (in less out) in one day. Unit: MJ/m²/d. */
export type DailyNetRadiation = number &
  Kind<'daily net radiation in MJ/m²/d, from megajoulesPerSquareMetreDay() or joulesPerSquareCentimetreDay()'>

/** Heat that goes into the ground in one day. Unit: MJ/m²/d. */
export type DailySoilHeat = number &
  Kind<'daily soil heat flux in MJ/m²/d, from megajoulesPerSquareMetreDay() or joulesPerSquareCentimetreDay()'>

/** Any kind that is given in MJ/m²/d. The place where a value is used says which one it is. */
export type AnyDailyRadiation = DailyRadiation | DailyNetRadiation | DailySoilHeat

const DAILY_RADIATION: Domain = {
  quantity: 'daily radiation',
  unit: 'MJ/m²/d',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite energy per area and day',
}

/**
 * Daily radiation from a number in MJ/m²/d; its kind is that of the place where it is used.
 *
 * ```math
 * R = v
 * ```
 *
 * @param value - Number in MJ/m²/d. Unit: MJ/m²/d. Range: (-∞, ∞).
 * @returns Daily radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * megajoulesPerSquareMetreDay(2) // => 2
 * ```
 */
export function megajoulesPerSquareMetreDay<Q extends AnyDailyRadiation = DailyRadiation>(value: number): Q {
  return numberIn(value, DAILY_RADIATION) as Q
}

/**
 * The number of MJ/m²/d in a quantity that megajoulesPerSquareMetreDay() makes.
 *
 * ```math
 * v = R
 * ```
 *
 * @param quantity - Daily radiation. Unit: MJ/m²/d. Range: any.
 * @returns Plain number. Unit: MJ/m²/d.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMegajoulesPerSquareMetreDay(megajoulesPerSquareMetreDay(2)) // => 2
 * ```
 */
export function inMegajoulesPerSquareMetreDay(quantity: AnyDailyRadiation): number {
  return quantity
}

/**
 * Daily radiation from a number in J/cm²/d; its kind is that of the place where it is used.
 *
 * ```math
 * R = v / 100
 * ```
 *
 * @param value - Number in J/cm²/d. Unit: J/cm²/d. Range: (-∞, ∞).
 * @returns Daily radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * joulesPerSquareCentimetreDay(2) // => 0.02
 * ```
 */
export function joulesPerSquareCentimetreDay<Q extends AnyDailyRadiation = DailyRadiation>(value: number): Q {
  return convertedIn(value, value / 100, 'J/cm²/d', DAILY_RADIATION) as Q
}

/**
 * The number of J/cm²/d in a quantity that joulesPerSquareCentimetreDay() makes.
 *
 * ```math
 * v = R \times 100
 * ```
 *
 * @param quantity - Daily radiation. Unit: MJ/m²/d. Range: any.
 * @returns Plain number. Unit: J/cm²/d.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inJoulesPerSquareCentimetreDay(joulesPerSquareCentimetreDay(2)) // => 2
 * ```
 */
export function inJoulesPerSquareCentimetreDay(quantity: AnyDailyRadiation): number {
  return quantity * 100
}

/**
 * Daily radiation from a number in W/m² (mean of the day); its kind is that of the place where it is used.
 *
 * ```math
 * R = v \times 0.0864
 * ```
 *
 * @param value - Number in W/m² (mean of the day). Unit: W/m² (mean of the day). Range: (-∞, ∞).
 * @returns Daily radiation. Unit: MJ/m²/d.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * wattsPerSquareMetreDayMean(2) // => 0.1728
 * ```
 */
export function wattsPerSquareMetreDayMean<Q extends AnyDailyRadiation = DailyRadiation>(value: number): Q {
  return convertedIn(value, value * 0.0864, 'W/m² (mean of the day)', DAILY_RADIATION) as Q
}

/**
 * The number of W/m² (mean of the day) in a quantity that wattsPerSquareMetreDayMean() makes.
 *
 * ```math
 * v = R / 0.0864
 * ```
 *
 * @param quantity - Daily radiation. Unit: MJ/m²/d. Range: any.
 * @returns Plain number. Unit: W/m² (mean of the day).
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inWattsPerSquareMetreDayMean(wattsPerSquareMetreDayMean(2)) // => 2
 * ```
 */
export function inWattsPerSquareMetreDayMean(quantity: AnyDailyRadiation): number {
  return quantity / 0.0864
}
