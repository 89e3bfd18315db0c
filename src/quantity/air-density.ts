import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Mass of air in its volume. Unit: kg/m³. */
export type AirDensity = number & Kind<'air density in kg/m³, from kilogramsOfAirPerCubicMetre()'>

const AIR_DENSITY: Domain = {
  quantity: 'air density',
  unit: 'kg/m³',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the mass of a cubic metre of air, zero or more',
}

/**
 * Mass of air in its volume, from a number in kg/m³.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in kg/m³. Unit: kg/m³. Range: [0, ∞).
 * @returns Mass of air in its volume. Unit: kg/m³.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * kilogramsOfAirPerCubicMetre(2) // => 2
 * ```
 */
export function kilogramsOfAirPerCubicMetre(value: number): AirDensity {
  return numberIn(value, AIR_DENSITY) as AirDensity
}

/**
 * The number of kg/m³ in a quantity that kilogramsOfAirPerCubicMetre() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Mass of air in its volume. Unit: kg/m³. Range: any.
 * @returns Plain number. Unit: kg/m³.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inKilogramsOfAirPerCubicMetre(kilogramsOfAirPerCubicMetre(2)) // => 2
 * ```
 */
export function inKilogramsOfAirPerCubicMetre(quantity: AirDensity): number {
  return quantity
}
