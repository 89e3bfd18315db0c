import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Diffusivity of water in a medium: its conductivity over its water capacity. Unit: cm²/h. */
export type SoilWaterDiffusivity = number &
  Kind<'diffusivity of water in a medium in cm²/h, from squareCentimetresPerHour()'>

const DIFFUSIVITY: Domain = {
  quantity: 'diffusivity',
  unit: 'cm²/h',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a diffusivity of zero or more',
}

/**
 * Diffusivity of water in a medium, from a number in cm²/h.
 *
 * ```math
 * D = v
 * ```
 *
 * @param value - Number in cm²/h. Unit: cm²/h. Range: [0, ∞).
 * @returns Diffusivity of water in a medium. Unit: cm²/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * squareCentimetresPerHour(750) // => 750
 * ```
 */
export function squareCentimetresPerHour(value: number): SoilWaterDiffusivity {
  return numberIn(value, DIFFUSIVITY) as SoilWaterDiffusivity
}

/**
 * The number of cm²/h in a quantity that squareCentimetresPerHour() makes.
 *
 * ```math
 * v = D
 * ```
 *
 * @param quantity - Diffusivity of water in a medium. Unit: cm²/h. Range: any.
 * @returns Plain number. Unit: cm²/h.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inSquareCentimetresPerHour(squareCentimetresPerHour(750)) // => 750
 * ```
 */
export function inSquareCentimetresPerHour(quantity: SoilWaterDiffusivity): number {
  return quantity
}
