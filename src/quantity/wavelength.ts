import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Wavelength of light. Unit: nm. */
export type Wavelength = number & Kind<'wavelength in nanometres, from nanometres()'>

const WAVELENGTH: Domain = {
  quantity: 'wavelength',
  unit: 'nm',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a wavelength above zero; plants use 400 to 700 nm',
}

/**
 * Wavelength of light, from a number in nm.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in nm. Unit: nm. Range: (0, ∞).
 * @returns Wavelength of light. Unit: nm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * nanometres(2) // => 2
 * ```
 */
export function nanometres(value: number): Wavelength {
  return numberIn(value, WAVELENGTH) as Wavelength
}

/**
 * The number of nm in a quantity that nanometres() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Wavelength of light. Unit: nm. Range: any.
 * @returns Plain number. Unit: nm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inNanometres(nanometres(2)) // => 2
 * ```
 */
export function inNanometres(quantity: Wavelength): number {
  return quantity
}
