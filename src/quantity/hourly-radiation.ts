import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Energy of radiation on an area in one hour. Unit: MJ/m²/h. */
export type HourlyRadiation = number &
  Kind<'hourly radiation in MJ/m²/h, from megajoulesPerSquareMetreHour() or wattsPerSquareMetreHourMean()'>

/** Net radiation (in less out) in one hour. Unit: MJ/m²/h. */
export type HourlyNetRadiation = number &
  Kind<'hourly net radiation in MJ/m²/h, from megajoulesPerSquareMetreHour() or wattsPerSquareMetreHourMean()'>

/** Heat that goes into the ground in one hour. Unit: MJ/m²/h. */
export type HourlySoilHeat = number &
  Kind<'hourly soil heat flux in MJ/m²/h, from megajoulesPerSquareMetreHour() or wattsPerSquareMetreHourMean()'>

/** Any kind that is given in MJ/m²/h. The place where a value is used says which one it is. */
export type AnyHourlyRadiation = HourlyRadiation | HourlyNetRadiation | HourlySoilHeat

const HOURLY_RADIATION: Domain = {
  quantity: 'hourly radiation',
  unit: 'MJ/m²/h',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite energy per area and hour',
}

/**
 * Hourly radiation from a number in MJ/m²/h; its kind is that of the place where it is used.
 *
 * ```math
 * R = v
 * ```
 *
 * @param value - Number in MJ/m²/h. Unit: MJ/m²/h. Range: (-∞, ∞).
 * @returns Hourly radiation. Unit: MJ/m²/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * megajoulesPerSquareMetreHour(2) // => 2
 * ```
 */
export function megajoulesPerSquareMetreHour<Q extends AnyHourlyRadiation = HourlyRadiation>(value: number): Q {
  return numberIn(value, HOURLY_RADIATION) as Q
}

/**
 * The number of MJ/m²/h in a quantity that megajoulesPerSquareMetreHour() makes.
 *
 * ```math
 * v = R
 * ```
 *
 * @param quantity - Hourly radiation. Unit: MJ/m²/h. Range: any.
 * @returns Plain number. Unit: MJ/m²/h.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMegajoulesPerSquareMetreHour(megajoulesPerSquareMetreHour(2)) // => 2
 * ```
 */
export function inMegajoulesPerSquareMetreHour(quantity: AnyHourlyRadiation): number {
  return quantity
}

/**
 * Hourly radiation from a number in W/m² (mean of the hour); its kind is that of the place where it is used.
 *
 * ```math
 * R = v \times 0.0036
 * ```
 *
 * @param value - Number in W/m² (mean of the hour). Unit: W/m² (mean of the hour). Range: (-∞, ∞).
 * @returns Hourly radiation. Unit: MJ/m²/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * wattsPerSquareMetreHourMean(2) // => 0.0072
 * ```
 */
export function wattsPerSquareMetreHourMean<Q extends AnyHourlyRadiation = HourlyRadiation>(value: number): Q {
  return convertedIn(value, value * 0.0036, 'W/m² (mean of the hour)', HOURLY_RADIATION) as Q
}

/**
 * The number of W/m² (mean of the hour) in a quantity that wattsPerSquareMetreHourMean() makes.
 *
 * ```math
 * v = R / 0.0036
 * ```
 *
 * @param quantity - Hourly radiation. Unit: MJ/m²/h. Range: any.
 * @returns Plain number. Unit: W/m² (mean of the hour).
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inWattsPerSquareMetreHourMean(wattsPerSquareMetreHourMean(2)) // => 2
 * ```
 */
export function inWattsPerSquareMetreHourMean(quantity: AnyHourlyRadiation): number {
  return quantity / 0.0036
}
