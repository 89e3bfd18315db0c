import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Amount of a dissolved substance per volume of solution. Unit: mmol/L. */
export type AmountConcentration = number &
  Kind<'amount concentration in mmol/L, from millimolesPerLitre() or molesPerLitre()'>

const AMOUNT_CONCENTRATION: Domain = {
  quantity: 'amount concentration',
  unit: 'mmol/L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a concentration of zero or more',
}

/**
 * Amount of a dissolved substance per volume of solution, from a number in mmol/L.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in mmol/L. Unit: mmol/L. Range: [0, ∞).
 * @returns Amount of a dissolved substance per volume of solution. Unit: mmol/L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimolesPerLitre(2) // => 2
 * ```
 */
export function millimolesPerLitre(value: number): AmountConcentration {
  return numberIn(value, AMOUNT_CONCENTRATION) as AmountConcentration
}

/**
 * The number of mmol/L in a quantity that millimolesPerLitre() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Amount of a dissolved substance per volume of solution. Unit: mmol/L. Range: any.
 * @returns Plain number. Unit: mmol/L.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimolesPerLitre(millimolesPerLitre(2)) // => 2
 * ```
 */
export function inMillimolesPerLitre(quantity: AmountConcentration): number {
  return quantity
}

/**
 * Amount of a dissolved substance per volume of solution, from a number in mol/L.
 *
 * ```math
 * q = v \times 1000
 * ```
 *
 * @param value - Number in mol/L. Unit: mol/L. Range: [0, ∞).
 * @returns Amount of a dissolved substance per volume of solution. Unit: mmol/L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * molesPerLitre(2) // => 2000
 * ```
 */
export function molesPerLitre(value: number): AmountConcentration {
  return convertedIn(value, value * 1000, 'mol/L', AMOUNT_CONCENTRATION) as AmountConcentration
}

/**
 * The number of mol/L in a quantity that molesPerLitre() makes.
 *
 * ```math
 * v = q / 1000
 * ```
 *
 * @param quantity - Amount of a dissolved substance per volume of solution. Unit: mmol/L. Range: any.
 * @returns Plain number. Unit: mol/L.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMolesPerLitre(molesPerLitre(2)) // => 2
 * ```
 */
export function inMolesPerLitre(quantity: AmountConcentration): number {
  return quantity / 1000
}
