import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Mass of water vapour in a volume of air. Unit: g/m³. */
export type AbsoluteHumidity = number & Kind<'absolute humidity in g/m³, from gramsPerCubicMetre()'>

const ABSOLUTE_HUMIDITY: Domain = {
  quantity: 'absolute humidity',
  unit: 'g/m³',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the mass of vapour in a cubic metre of air, zero or more',
}

/**
 * Mass of water vapour in a volume of air, from a number in g/m³.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in g/m³. Unit: g/m³. Range: [0, ∞).
 * @returns Mass of water vapour in a volume of air. Unit: g/m³.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * gramsPerCubicMetre(2) // => 2
 * ```
 */
export function gramsPerCubicMetre(value: number): AbsoluteHumidity {
  return numberIn(value, ABSOLUTE_HUMIDITY) as AbsoluteHumidity
}

/**
 * The number of g/m³ in a quantity that gramsPerCubicMetre() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Mass of water vapour in a volume of air. Unit: g/m³. Range: any.
 * @returns Plain number. Unit: g/m³.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inGramsPerCubicMetre(gramsPerCubicMetre(2)) // => 2
 * ```
 */
export function inGramsPerCubicMetre(quantity: AbsoluteHumidity): number {
  return quantity
}
