import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Energy of radiation on an area over any time (light sum). Unit: J/cm². */
export type RadiationSum = number &
  Kind<'radiation sum in J/cm², from joulesPerSquareCentimetre() or megajoulesPerSquareMetre()'>

const RADIATION_SUM: Domain = {
  quantity: 'radiation sum',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give an energy per area of zero or more',
}

/**
 * Energy of radiation on an area over any time (light sum), from a number in J/cm².
 *
 * ```math
 * S = v
 * ```
 *
 * @param value - Number in J/cm². Unit: J/cm². Range: [0, ∞).
 * @returns Energy of radiation on an area over any time. Unit: J/cm².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * joulesPerSquareCentimetre(2) // => 2
 * ```
 */
export function joulesPerSquareCentimetre(value: number): RadiationSum {
  return numberIn(value, RADIATION_SUM) as RadiationSum
}

/**
 * The number of J/cm² in a quantity that joulesPerSquareCentimetre() makes.
 *
 * ```math
 * v = S
 * ```
 *
 * @param quantity - Energy of radiation on an area over any time. Unit: J/cm². Range: any.
 * @returns Plain number. Unit: J/cm².
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inJoulesPerSquareCentimetre(joulesPerSquareCentimetre(2)) // => 2
 * ```
 */
export function inJoulesPerSquareCentimetre(quantity: RadiationSum): number {
  return quantity
}

/**
 * Energy of radiation on an area over any time (light sum), from a number in MJ/m².
 *
 * ```math
 * S = v \times 100
 * ```
 *
 * @param value - Number in MJ/m². Unit: MJ/m². Range: [0, ∞).
 * @returns Energy of radiation on an area over any time. Unit: J/cm².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * megajoulesPerSquareMetre(2) // => 200
 * ```
 */
export function megajoulesPerSquareMetre(value: number): RadiationSum {
  return convertedIn(value, value * 100, 'MJ/m²', RADIATION_SUM) as RadiationSum
}

/**
 * The number of MJ/m² in a quantity that megajoulesPerSquareMetre() makes.
 *
 * ```math
 * v = S / 100
 * ```
 *
 * @param quantity - Energy of radiation on an area over any time. Unit: J/cm². Range: any.
 * @returns Plain number. Unit: MJ/m².
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMegajoulesPerSquareMetre(megajoulesPerSquareMetre(2)) // => 2
 * ```
 */
export function inMegajoulesPerSquareMetre(quantity: RadiationSum): number {
  return quantity / 100
}

/**
 * Energy of radiation on an area over any time (light sum), from a number in Wh/m².
 *
 * ```math
 * S = v \times 0.36
 * ```
 *
 * @param value - Number in Wh/m². Unit: Wh/m². Range: [0, ∞).
 * @returns Energy of radiation on an area over any time. Unit: J/cm².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * wattHoursPerSquareMetre(2) // => 0.72
 * ```
 */
export function wattHoursPerSquareMetre(value: number): RadiationSum {
  return convertedIn(value, value * 0.36, 'Wh/m²', RADIATION_SUM) as RadiationSum
}

/**
 * The number of Wh/m² in a quantity that wattHoursPerSquareMetre() makes.
 *
 * ```math
 * v = S / 0.36
 * ```
 *
 * @param quantity - Energy of radiation on an area over any time. Unit: J/cm². Range: any.
 * @returns Plain number. Unit: Wh/m².
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inWattHoursPerSquareMetre(wattHoursPerSquareMetre(2)) // => 2
 * ```
 */
export function inWattHoursPerSquareMetre(quantity: RadiationSum): number {
  return quantity / 0.36
}
