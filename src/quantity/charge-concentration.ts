import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Charge of dissolved ions of one sign per volume of solution. Unit: mmol(+)/L. */
export type ChargeConcentration = number &
  Kind<'charge concentration in mmol of charge per litre, from millimolesOfChargePerLitre()'>

const CHARGE_CONCENTRATION: Domain = {
  quantity: 'charge concentration',
  unit: 'mmol(+)/L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'add up concentration times charge over the cations, or over the anions',
}

/**
 * Charge of dissolved ions of one sign per volume of solution, from a number in mmol(+)/L.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in mmol(+)/L. Unit: mmol(+)/L. Range: [0, ∞).
 * @returns Charge of dissolved ions of one sign per volume of solution. Unit: mmol(+)/L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimolesOfChargePerLitre(2) // => 2
 * ```
 */
export function millimolesOfChargePerLitre(value: number): ChargeConcentration {
  return numberIn(value, CHARGE_CONCENTRATION) as ChargeConcentration
}

/**
 * The number of mmol(+)/L in a quantity that millimolesOfChargePerLitre() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Charge of dissolved ions of one sign per volume of solution. Unit: mmol(+)/L. Range: any.
 * @returns Plain number. Unit: mmol(+)/L.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimolesOfChargePerLitre(millimolesOfChargePerLitre(2)) // => 2
 * ```
 */
export function inMillimolesOfChargePerLitre(quantity: ChargeConcentration): number {
  return quantity
}
