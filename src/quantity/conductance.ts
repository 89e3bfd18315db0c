import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Electrical conductance of a cell. Unit: S. */
export type Conductance = number &
  Kind<'electrical conductance in siemens, from siemens(), millisiemens() or microsiemens()'>

const CONDUCTANCE: Domain = {
  quantity: 'conductance',
  unit: 'S',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a conductance of zero or more; a conductivity is something else and has a length in its unit',
}

/**
 * Electrical conductance of a cell, from a number in S.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in S. Unit: S. Range: [0, ∞).
 * @returns Electrical conductance of a cell. Unit: S.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * siemens(2) // => 2
 * ```
 */
export function siemens(value: number): Conductance {
  return numberIn(value, CONDUCTANCE) as Conductance
}

/**
 * The number of S in a quantity that siemens() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Electrical conductance of a cell. Unit: S. Range: any.
 * @returns Plain number. Unit: S.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inSiemens(siemens(2)) // => 2
 * ```
 */
export function inSiemens(quantity: Conductance): number {
  return quantity
}

/**
 * Electrical conductance of a cell, from a number in mS.
 *
 * ```math
 * q = v / 1000
 * ```
 *
 * @param value - Number in mS. Unit: mS. Range: [0, ∞).
 * @returns Electrical conductance of a cell. Unit: S.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millisiemens(2) // => 0.002
 * ```
 */
export function millisiemens(value: number): Conductance {
  return convertedIn(value, value / 1000, 'mS', CONDUCTANCE) as Conductance
}

/**
 * The number of mS in a quantity that millisiemens() makes.
 *
 * ```math
 * v = q \times 1000
 * ```
 *
 * @param quantity - Electrical conductance of a cell. Unit: S. Range: any.
 * @returns Plain number. Unit: mS.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillisiemens(millisiemens(2)) // => 2
 * ```
 */
export function inMillisiemens(quantity: Conductance): number {
  return quantity * 1000
}

/**
 * Electrical conductance of a cell, from a number in µS.
 *
 * ```math
 * q = v / 10^6
 * ```
 *
 * @param value - Number in µS. Unit: µS. Range: [0, ∞).
 * @returns Electrical conductance of a cell. Unit: S.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * microsiemens(2) // => 0.000002
 * ```
 */
export function microsiemens(value: number): Conductance {
  return convertedIn(value, value / 1e6, 'µS', CONDUCTANCE) as Conductance
}

/**
 * The number of µS in a quantity that microsiemens() makes.
 *
 * ```math
 * v = q \times 10^6
 * ```
 *
 * @param quantity - Electrical conductance of a cell. Unit: S. Range: any.
 * @returns Plain number. Unit: µS.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMicrosiemens(microsiemens(2)) // => 2
 * ```
 */
export function inMicrosiemens(quantity: Conductance): number {
  return quantity * 1e6
}
