import { answersOf } from '../../quantity/answer.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { EXTINCTION, LOSS, REFRACTIVE_INDEX, SOME_REAL_PART } from '../domains.js'
import type { ComplexPermittivity } from './complex-permittivity.js'

/** Real part and loss of a relative permittivity. */
export interface RealAndLoss {
  /** Real part. Unit: 1. Range: (0, ∞). */
  readonly real: number
  /** Imaginary part, as a positive number. Unit: 1. Range: [0, ∞). */
  readonly loss: number
}

/** Complex refractive index, n less i times kappa, as an input. */
export interface IndexAndExtinction {
  /** Real part, how much slower than in a vacuum the wave is. Unit: 1. Range: (0, ∞). */
  readonly index: number
  /** Imaginary part, how fast it dies. Unit: 1. Range: [0, ∞). */
  readonly extinction: number
}

/** Complex refractive index, n less i times kappa. */
export interface RefractiveIndex {
  /** Real part, how much slower than in a vacuum the wave is. Unit: 1. */
  readonly index: number
  /** Imaginary part, how fast it dies. Unit: 1. */
  readonly extinction: number
}

/**
 * Complex refractive index of a complex permittivity.
 *
 * @equation `n - i\kappa = \sqrt{\varepsilon' - i\varepsilon''}`
 * @returns Refractive index and extinction coefficient.
 * @source definition
 * @example
 * refractiveIndex({ real: 80, loss: 4 }) // => { index: 8.947065, extinction: 0.223537 }
 */
export function refractiveIndex(permittivity: RealAndLoss): RefractiveIndex {
  const real = numberIn(optionsOf(permittivity).real, SOME_REAL_PART, 'real')
  const loss = numberIn(permittivity.loss, LOSS, 'loss')
  const index = Math.sqrt((Math.hypot(real, loss) + real) / 2)
  // Not the difference of two squares, which loses the digits of a small loss.
  return answersOf({ index, extinction: loss / (2 * index) }, 'real')
}

/**
 * Complex permittivity of a complex refractive index.
 *
 * @equation `\varepsilon' = n^2 - \kappa^2, \quad \varepsilon'' = 2n\kappa`
 * @param refraction - Refractive index and extinction coefficient.
 * @returns Real part and loss.
 * @source definition
 * @example
 * permittivityOfRefractiveIndex({ index: 9, extinction: 0.5 }) // => { real: 80.75, loss: 9 }
 */
export function permittivityOfRefractiveIndex(refraction: IndexAndExtinction): ComplexPermittivity {
  const index = numberIn(optionsOf(refraction).index, REFRACTIVE_INDEX, 'index')
  const extinction = numberIn(refraction.extinction, EXTINCTION, 'extinction')
  return answersOf({ real: (index - extinction) * (index + extinction), loss: 2 * index * extinction }, 'extinction')
}
