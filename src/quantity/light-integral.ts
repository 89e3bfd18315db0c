import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Photons of 400 to 700 nm on an area in one day (DLI). Unit: mol/m²/d. */
export type DailyLightIntegral = number & Kind<'daily light integral in mol/m²/d, from molesPerSquareMetreDay()'>

const LIGHT_INTEGRAL: Domain = {
  quantity: 'light integral',
  unit: 'mol/m²/d',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a light integral of zero or more',
}

/**
 * Photons of 400 to 700 nm on an area in one day (DLI), from a number in mol/m²/d.
 *
 * ```math
 * L = v
 * ```
 *
 * @param value - Number in mol/m²/d. Unit: mol/m²/d. Range: [0, ∞).
 * @returns Photons of 400 to 700 nm on an area in one day. Unit: mol/m²/d.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * molesPerSquareMetreDay(2) // => 2
 * ```
 */
export function molesPerSquareMetreDay(value: number): DailyLightIntegral {
  return numberIn(value, LIGHT_INTEGRAL) as DailyLightIntegral
}

/**
 * The number of mol/m²/d in a quantity that molesPerSquareMetreDay() makes.
 *
 * ```math
 * v = L
 * ```
 *
 * @param quantity - Photons of 400 to 700 nm on an area in one day. Unit: mol/m²/d. Range: any.
 * @returns Plain number. Unit: mol/m²/d.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMolesPerSquareMetreDay(molesPerSquareMetreDay(2)) // => 2
 * ```
 */
export function inMolesPerSquareMetreDay(quantity: DailyLightIntegral): number {
  return quantity
}
