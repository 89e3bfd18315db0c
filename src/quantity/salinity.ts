import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Practical salinity, about grams of sea salt per kilogram of water. Unit: 1. */
export type Salinity = number & Kind<'practical salinity, from salinity()'>

const SALINITY: Domain = {
  quantity: 'salinity',
  unit: '1',
  min: 0,
  max: 42,
  ends: '[]',
  hint: 'the practical scale ends at 42',
}

/**
 * Practical salinity, about grams of sea salt per kilogram of water, from a plain number.
 *
 * ```math
 * S = v
 * ```
 *
 * @param value - Practical salinity, about grams of sea salt per kilogram of water. Unit: 1. Range: [0, 42].
 * @returns Practical salinity, about grams of sea salt per kilogram of water. Unit: 1.
 * @throws `DomainError` outside the range.
 * @source UNESCO (1981), Practical Salinity Scale 1978 (memory)
 * @example
 * ```ts
 * salinity(0.5) // => 0.5
 * ```
 */
export function salinity(value: number): Salinity {
  return numberIn(value, SALINITY) as Salinity
}
