import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Electrical resistance or impedance. Unit: Ω. */
export type Resistance = number & Kind<'electrical resistance in ohms, from ohms()'>

const RESISTANCE: Domain = {
  quantity: 'resistance',
  unit: 'Ω',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a resistance above zero; cables have 50 or 75 Ω',
}

/**
 * Electrical resistance or impedance, from a number in Ω.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in Ω. Unit: Ω. Range: (0, ∞).
 * @returns Electrical resistance or impedance. Unit: Ω.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * ohms(2) // => 2
 * ```
 */
export function ohms(value: number): Resistance {
  return numberIn(value, RESISTANCE) as Resistance
}

/**
 * The number of Ω in a quantity that ohms() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Electrical resistance or impedance. Unit: Ω. Range: any.
 * @returns Plain number. Unit: Ω.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inOhms(ohms(2)) // => 2
 * ```
 */
export function inOhms(quantity: Resistance): number {
  return quantity
}
