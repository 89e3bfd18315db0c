import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Latent heat of vaporisation. Unit: MJ/kg. */
export type LatentHeat = number & Kind<'latent heat in MJ/kg, from megajoulesPerKilogram()'>

const LATENT_HEAT: Domain = {
  quantity: 'latent heat',
  unit: 'MJ/kg',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the heat that evaporates a kilogram of water, about 2.45 MJ/kg',
}

/**
 * Latent heat of vaporisation, from a number in MJ/kg.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in MJ/kg. Unit: MJ/kg. Range: (0, ∞).
 * @returns Latent heat of vaporisation. Unit: MJ/kg.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * megajoulesPerKilogram(2) // => 2
 * ```
 */
export function megajoulesPerKilogram(value: number): LatentHeat {
  return numberIn(value, LATENT_HEAT) as LatentHeat
}

/**
 * The number of MJ/kg in a quantity that megajoulesPerKilogram() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Latent heat of vaporisation. Unit: MJ/kg. Range: any.
 * @returns Plain number. Unit: MJ/kg.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMegajoulesPerKilogram(megajoulesPerKilogram(2)) // => 2
 * ```
 */
export function inMegajoulesPerKilogram(quantity: LatentHeat): number {
  return quantity
}
