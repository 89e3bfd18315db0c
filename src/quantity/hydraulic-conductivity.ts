import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Hydraulic conductivity. Unit: cm/h. */
export type HydraulicConductivity = number &
  Kind<'hydraulic conductivity in cm/h, from centimetresPerHour() or centimetresPerDay()'>

const HYDRAULIC_CONDUCTIVITY: Domain = {
  quantity: 'hydraulic conductivity',
  unit: 'cm/h',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a conductivity of zero or more; tables print cm/min, cm/h, cm/d and mm/h',
}

/**
 * Hydraulic conductivity, from a number in cm/h.
 *
 * ```math
 * K = v
 * ```
 *
 * @param value - Number in cm/h. Unit: cm/h. Range: [0, ∞).
 * @returns Hydraulic conductivity. Unit: cm/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * centimetresPerHour(2) // => 2
 * ```
 */
export function centimetresPerHour(value: number): HydraulicConductivity {
  return numberIn(value, HYDRAULIC_CONDUCTIVITY) as HydraulicConductivity
}

/**
 * The number of cm/h in a quantity that centimetresPerHour() makes.
 *
 * ```math
 * v = K
 * ```
 *
 * @param quantity - Hydraulic conductivity. Unit: cm/h. Range: any.
 * @returns Plain number. Unit: cm/h.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inCentimetresPerHour(centimetresPerHour(2)) // => 2
 * ```
 */
export function inCentimetresPerHour(quantity: HydraulicConductivity): number {
  return quantity
}

/**
 * Hydraulic conductivity, from a number in cm/d.
 *
 * ```math
 * K = v / 24
 * ```
 *
 * @param value - Number in cm/d. Unit: cm/d. Range: [0, ∞).
 * @returns Hydraulic conductivity. Unit: cm/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * centimetresPerDay(2) // => 0.0833333333333
 * ```
 */
export function centimetresPerDay(value: number): HydraulicConductivity {
  return convertedIn(value, value / 24, 'cm/d', HYDRAULIC_CONDUCTIVITY) as HydraulicConductivity
}

/**
 * The number of cm/d in a quantity that centimetresPerDay() makes.
 *
 * ```math
 * v = K \times 24
 * ```
 *
 * @param quantity - Hydraulic conductivity. Unit: cm/h. Range: any.
 * @returns Plain number. Unit: cm/d.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inCentimetresPerDay(centimetresPerDay(2)) // => 2
 * ```
 */
export function inCentimetresPerDay(quantity: HydraulicConductivity): number {
  return quantity * 24
}

/**
 * Hydraulic conductivity, from a number in cm/min.
 *
 * ```math
 * K = v \times 60
 * ```
 *
 * @param value - Number in cm/min. Unit: cm/min. Range: [0, ∞).
 * @returns Hydraulic conductivity. Unit: cm/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * centimetresPerMinute(2) // => 120
 * ```
 */
export function centimetresPerMinute(value: number): HydraulicConductivity {
  return convertedIn(value, value * 60, 'cm/min', HYDRAULIC_CONDUCTIVITY) as HydraulicConductivity
}

/**
 * The number of cm/min in a quantity that centimetresPerMinute() makes.
 *
 * ```math
 * v = K / 60
 * ```
 *
 * @param quantity - Hydraulic conductivity. Unit: cm/h. Range: any.
 * @returns Plain number. Unit: cm/min.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inCentimetresPerMinute(centimetresPerMinute(2)) // => 2
 * ```
 */
export function inCentimetresPerMinute(quantity: HydraulicConductivity): number {
  return quantity / 60
}

/**
 * Hydraulic conductivity, from a number in mm/h.
 *
 * ```math
 * K = v / 10
 * ```
 *
 * @param value - Number in mm/h. Unit: mm/h. Range: [0, ∞).
 * @returns Hydraulic conductivity. Unit: cm/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimetresPerHourOfConductivity(2) // => 0.2
 * ```
 */
export function millimetresPerHourOfConductivity(value: number): HydraulicConductivity {
  return convertedIn(value, value / 10, 'mm/h', HYDRAULIC_CONDUCTIVITY) as HydraulicConductivity
}

/**
 * The number of mm/h in a quantity that millimetresPerHourOfConductivity() makes.
 *
 * ```math
 * v = K \times 10
 * ```
 *
 * @param quantity - Hydraulic conductivity. Unit: cm/h. Range: any.
 * @returns Plain number. Unit: mm/h.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimetresPerHourOfConductivity(millimetresPerHourOfConductivity(2)) // => 2
 * ```
 */
export function inMillimetresPerHourOfConductivity(quantity: HydraulicConductivity): number {
  return quantity * 10
}
