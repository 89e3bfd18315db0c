import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Photons per energy: of a light, or of the power that a lamp takes. Unit: µmol/J. */
export type PhotonYield = number & Kind<'photons per energy in µmol/J, from micromolesPerJoule()'>

const PHOTON_YIELD: Domain = {
  quantity: 'photon yield',
  unit: 'µmol/J',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give photons per energy above zero; light of 400 to 700 nm has 3.3 to 5.9 µmol/J',
}

/**
 * Photons per energy, from a number in µmol/J.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in µmol/J. Unit: µmol/J. Range: (0, ∞).
 * @returns Photons per energy. Unit: µmol/J.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * micromolesPerJoule(2) // => 2
 * ```
 */
export function micromolesPerJoule(value: number): PhotonYield {
  return numberIn(value, PHOTON_YIELD) as PhotonYield
}

/**
 * The number of µmol/J in a quantity that micromolesPerJoule() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Photons per energy. Unit: µmol/J. Range: any.
 * @returns Plain number. Unit: µmol/J.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMicromolesPerJoule(micromolesPerJoule(2)) // => 2
 * ```
 */
export function inMicromolesPerJoule(quantity: PhotonYield): number {
  return quantity
}
