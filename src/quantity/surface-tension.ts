import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Surface tension. Unit: N/m. */
export type SurfaceTension = number & Kind<'surface tension in N/m, from newtonsPerMetre() or millinewtonsPerMetre()'>

const SURFACE_TENSION: Domain = {
  quantity: 'surface tension',
  unit: 'N/m',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a surface tension of zero or more; water has about 0.073 N/m',
}

/**
 * Surface tension, from a number in N/m.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in N/m. Unit: N/m. Range: [0, ∞).
 * @returns Surface tension. Unit: N/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * newtonsPerMetre(2) // => 2
 * ```
 */
export function newtonsPerMetre(value: number): SurfaceTension {
  return numberIn(value, SURFACE_TENSION) as SurfaceTension
}

/**
 * The number of N/m in a quantity that newtonsPerMetre() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Surface tension. Unit: N/m. Range: any.
 * @returns Plain number. Unit: N/m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inNewtonsPerMetre(newtonsPerMetre(2)) // => 2
 * ```
 */
export function inNewtonsPerMetre(quantity: SurfaceTension): number {
  return quantity
}

/**
 * Surface tension, from a number in mN/m.
 *
 * ```math
 * q = v / 1000
 * ```
 *
 * @param value - Number in mN/m. Unit: mN/m. Range: [0, ∞).
 * @returns Surface tension. Unit: N/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millinewtonsPerMetre(2) // => 0.002
 * ```
 */
export function millinewtonsPerMetre(value: number): SurfaceTension {
  return convertedIn(value, value / 1000, 'mN/m', SURFACE_TENSION) as SurfaceTension
}

/**
 * The number of mN/m in a quantity that millinewtonsPerMetre() makes.
 *
 * ```math
 * v = q \times 1000
 * ```
 *
 * @param quantity - Surface tension. Unit: N/m. Range: any.
 * @returns Plain number. Unit: mN/m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillinewtonsPerMetre(millinewtonsPerMetre(2)) // => 2
 * ```
 */
export function inMillinewtonsPerMetre(quantity: SurfaceTension): number {
  return quantity * 1000
}
