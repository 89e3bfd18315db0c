import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Dissolved solids as a meter shows them. Unit: mg/L. */
export type DissolvedSolids = number &
  Kind<'dissolved solids in mg/L, from milligramsPerLitreOfSolids() or gramsPerLitreOfSolids()'>

const DISSOLVED_SOLIDS: Domain = {
  quantity: 'dissolved solids',
  unit: 'mg/L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a concentration of zero or more, and know the scale it was shown on',
}

/**
 * Dissolved solids as a meter shows them, from a number in mg/L.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in mg/L. Unit: mg/L. Range: [0, ∞).
 * @returns Dissolved solids as a meter shows them. Unit: mg/L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * milligramsPerLitreOfSolids(2) // => 2
 * ```
 */
export function milligramsPerLitreOfSolids(value: number): DissolvedSolids {
  return numberIn(value, DISSOLVED_SOLIDS) as DissolvedSolids
}

/**
 * The number of mg/L in a quantity that milligramsPerLitreOfSolids() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Dissolved solids as a meter shows them. Unit: mg/L. Range: any.
 * @returns Plain number. Unit: mg/L.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMilligramsPerLitreOfSolids(milligramsPerLitreOfSolids(2)) // => 2
 * ```
 */
export function inMilligramsPerLitreOfSolids(quantity: DissolvedSolids): number {
  return quantity
}

/**
 * Dissolved solids as a meter shows them, from a number in g/L.
 *
 * ```math
 * q = v \times 1000
 * ```
 *
 * @param value - Number in g/L. Unit: g/L. Range: [0, ∞).
 * @returns Dissolved solids as a meter shows them. Unit: mg/L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * gramsPerLitreOfSolids(2) // => 2000
 * ```
 */
export function gramsPerLitreOfSolids(value: number): DissolvedSolids {
  return convertedIn(value, value * 1000, 'g/L', DISSOLVED_SOLIDS) as DissolvedSolids
}

/**
 * The number of g/L in a quantity that gramsPerLitreOfSolids() makes.
 *
 * ```math
 * v = q / 1000
 * ```
 *
 * @param quantity - Dissolved solids as a meter shows them. Unit: mg/L. Range: any.
 * @returns Plain number. Unit: g/L.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inGramsPerLitreOfSolids(gramsPerLitreOfSolids(2)) // => 2
 * ```
 */
export function inGramsPerLitreOfSolids(quantity: DissolvedSolids): number {
  return quantity / 1000
}
