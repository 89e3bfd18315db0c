import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Photons of 400 to 700 nm on an area per time (PPFD). Unit: µmol/m²/s. */
export type PhotonFluxDensity = number &
  Kind<'photosynthetic photon flux density in µmol/m²/s, from micromolesPerSquareMetreSecond()'>

const PHOTON_FLUX: Domain = {
  quantity: 'photon flux',
  unit: 'µmol/m²/s',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a photon flux density of zero or more',
}

/**
 * Photons of 400 to 700 nm on an area per time (PPFD), from a number in µmol/m²/s.
 *
 * ```math
 * Q = v
 * ```
 *
 * @param value - Number in µmol/m²/s. Unit: µmol/m²/s. Range: [0, ∞).
 * @returns Photons of 400 to 700 nm on an area per time. Unit: µmol/m²/s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * micromolesPerSquareMetreSecond(2) // => 2
 * ```
 */
export function micromolesPerSquareMetreSecond(value: number): PhotonFluxDensity {
  return numberIn(value, PHOTON_FLUX) as PhotonFluxDensity
}

/**
 * The number of µmol/m²/s in a quantity that micromolesPerSquareMetreSecond() makes.
 *
 * ```math
 * v = Q
 * ```
 *
 * @param quantity - Photons of 400 to 700 nm on an area per time. Unit: µmol/m²/s. Range: any.
 * @returns Plain number. Unit: µmol/m²/s.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMicromolesPerSquareMetreSecond(micromolesPerSquareMetreSecond(2)) // => 2
 * ```
 */
export function inMicromolesPerSquareMetreSecond(quantity: PhotonFluxDensity): number {
  return quantity
}
