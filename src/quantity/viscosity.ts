import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Dynamic viscosity. Unit: Pa·s. */
export type Viscosity = number & Kind<'dynamic viscosity in Pa·s, from pascalSeconds() or millipascalSeconds()'>

const VISCOSITY: Domain = {
  quantity: 'viscosity',
  unit: 'Pa·s',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a viscosity above zero; water has about 0.001 Pa·s',
}

/**
 * Dynamic viscosity, from a number in Pa·s.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in Pa·s. Unit: Pa·s. Range: (0, ∞).
 * @returns Dynamic viscosity. Unit: Pa·s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * pascalSeconds(2) // => 2
 * ```
 */
export function pascalSeconds(value: number): Viscosity {
  return numberIn(value, VISCOSITY) as Viscosity
}

/**
 * The number of Pa·s in a quantity that pascalSeconds() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Dynamic viscosity. Unit: Pa·s. Range: any.
 * @returns Plain number. Unit: Pa·s.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inPascalSeconds(pascalSeconds(2)) // => 2
 * ```
 */
export function inPascalSeconds(quantity: Viscosity): number {
  return quantity
}

/**
 * Dynamic viscosity, from a number in mPa·s.
 *
 * ```math
 * q = v / 1000
 * ```
 *
 * @param value - Number in mPa·s. Unit: mPa·s. Range: (0, ∞).
 * @returns Dynamic viscosity. Unit: Pa·s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millipascalSeconds(2) // => 0.002
 * ```
 */
export function millipascalSeconds(value: number): Viscosity {
  return convertedIn(value, value / 1000, 'mPa·s', VISCOSITY) as Viscosity
}

/**
 * The number of mPa·s in a quantity that millipascalSeconds() makes.
 *
 * ```math
 * v = q \times 1000
 * ```
 *
 * @param quantity - Dynamic viscosity. Unit: Pa·s. Range: any.
 * @returns Plain number. Unit: mPa·s.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillipascalSeconds(millipascalSeconds(2)) // => 2
 * ```
 */
export function inMillipascalSeconds(quantity: Viscosity): number {
  return quantity * 1000
}
