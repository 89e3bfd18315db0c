import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Depth of water over an area; 1 mm is 1 L/m². Unit: mm. */
export type WaterDepth = number & Kind<'depth of water in millimetres, from millimetresOfDepth() or inchesOfDepth()'>

const WATER_DEPTH: Domain = {
  quantity: 'water depth',
  unit: 'mm',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite depth of water',
}

/**
 * Depth of water over an area, from a number in mm.
 *
 * ```math
 * d = v
 * ```
 *
 * @param value - Number in mm. Unit: mm. Range: (-∞, ∞).
 * @returns Depth of water over an area. Unit: mm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimetresOfDepth(2) // => 2
 * ```
 */
export function millimetresOfDepth(value: number): WaterDepth {
  return numberIn(value, WATER_DEPTH) as WaterDepth
}

/**
 * The number of mm in a quantity that millimetresOfDepth() makes.
 *
 * ```math
 * v = d
 * ```
 *
 * @param quantity - Depth of water over an area. Unit: mm. Range: any.
 * @returns Plain number. Unit: mm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimetresOfDepth(millimetresOfDepth(2)) // => 2
 * ```
 */
export function inMillimetresOfDepth(quantity: WaterDepth): number {
  return quantity
}

/**
 * Depth of water over an area, from a number in in.
 *
 * ```math
 * d = v \times 25.4
 * ```
 *
 * @param value - Number in in. Unit: in. Range: (-∞, ∞).
 * @returns Depth of water over an area. Unit: mm.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inchesOfDepth(2) // => 50.8
 * ```
 */
export function inchesOfDepth(value: number): WaterDepth {
  return convertedIn(value, value * 25.4, 'in', WATER_DEPTH) as WaterDepth
}

/**
 * The number of in in a quantity that inchesOfDepth() makes.
 *
 * ```math
 * v = d / 25.4
 * ```
 *
 * @param quantity - Depth of water over an area. Unit: mm. Range: any.
 * @returns Plain number. Unit: in.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inInchesOfDepth(inchesOfDepth(2)) // => 2
 * ```
 */
export function inInchesOfDepth(quantity: WaterDepth): number {
  return quantity / 25.4
}

/**
 * Depth of water over an area, from a number in L/m².
 *
 * ```math
 * d = v
 * ```
 *
 * @param value - Number in L/m². Unit: L/m². Range: (-∞, ∞).
 * @returns Depth of water over an area. Unit: mm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * litresPerSquareMetre(2) // => 2
 * ```
 */
export function litresPerSquareMetre(value: number): WaterDepth {
  return numberIn(value, WATER_DEPTH) as WaterDepth
}

/**
 * The number of L/m² in a quantity that litresPerSquareMetre() makes.
 *
 * ```math
 * v = d
 * ```
 *
 * @param quantity - Depth of water over an area. Unit: mm. Range: any.
 * @returns Plain number. Unit: L/m².
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inLitresPerSquareMetre(litresPerSquareMetre(2)) // => 2
 * ```
 */
export function inLitresPerSquareMetre(quantity: WaterDepth): number {
  return quantity
}
