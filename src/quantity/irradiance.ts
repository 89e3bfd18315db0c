import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Power of radiation on an area. Unit: W/m². */
export type Irradiance = number & Kind<'irradiance in W/m², from wattsPerSquareMetre()'>

const IRRADIANCE: Domain = {
  quantity: 'irradiance',
  unit: 'W/m²',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite power per area',
}

/**
 * Power of radiation on an area, from a number in W/m².
 *
 * ```math
 * G = v
 * ```
 *
 * @param value - Number in W/m². Unit: W/m². Range: (-∞, ∞).
 * @returns Power of radiation on an area. Unit: W/m².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * wattsPerSquareMetre(2) // => 2
 * ```
 */
export function wattsPerSquareMetre(value: number): Irradiance {
  return numberIn(value, IRRADIANCE) as Irradiance
}

/**
 * The number of W/m² in a quantity that wattsPerSquareMetre() makes.
 *
 * ```math
 * v = G
 * ```
 *
 * @param quantity - Power of radiation on an area. Unit: W/m². Range: any.
 * @returns Plain number. Unit: W/m².
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inWattsPerSquareMetre(wattsPerSquareMetre(2)) // => 2
 * ```
 */
export function inWattsPerSquareMetre(quantity: Irradiance): number {
  return quantity
}
