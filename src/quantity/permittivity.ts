import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Relative permittivity (apparent, of the bulk, the solids or the water). Unit: 1. */
export type Permittivity = number & Kind<'relative permittivity, from permittivity()'>

const PERMITTIVITY: Domain = {
  quantity: 'relative permittivity',
  unit: '1',
  min: 1,
  max: Infinity,
  ends: '[)',
  hint: 'nothing has less than the 1 of a vacuum; raw counts must be converted first',
}

/**
 * Relative permittivity, from a plain number.
 *
 * ```math
 * \varepsilon = v
 * ```
 *
 * @param value - Relative permittivity. Unit: 1. Range: [1, ∞).
 * @returns Relative permittivity. Unit: 1.
 * @throws `DomainError` outside the range.
 * @source IEC 60050, entry 121-12-13 (relative permittivity) (memory)
 * @example
 * ```ts
 * permittivity(20) // => 20
 * ```
 */
export function permittivity(value: number): Permittivity {
  return numberIn(value, PERMITTIVITY) as Permittivity
}
