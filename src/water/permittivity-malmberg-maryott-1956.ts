import { type Cubic, cubicAt } from '../numerics/cubic.js'
import type { Permittivity, Temperature } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

const COEFFICIENTS: Cubic = [87.74, -0.40008, 9.398e-4, -1.41e-6]

/** Where the equation was fitted. */
export const validityMalmbergMaryott1956: Validity = {
  of: 'waterPermittivityMalmbergMaryott1956',
  note: 'pure water at atmospheric pressure',
  inputs: { temperature: { min: 0, max: 100, unit: '°C' } },
}

/**
 * Static permittivity of water after Malmberg and Maryott (1956).
 *
 * About 0.1 below the IAPWS values. A misprint of the second coefficient as 0.4008 goes round; it gives 78.285 at 25 °C where the paper
 * prints 78.30.
 *
 * @equation `\varepsilon_w = 87.740 - 0.40008\,t + 9.398\times10^{-4}t^2 - 1.410\times10^{-6}t^3`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Relative permittivity. Unit: 1.
 * @validity Pure water at atmospheric pressure, 0 to 100 °C.
 * @source malmberg-1956
 * @example
 * waterPermittivityMalmbergMaryott1956(celsius(25)) // => 78.303344
 */
export function waterPermittivityMalmbergMaryott1956(temperature: Temperature): Permittivity {
  return cubicAt(COEFFICIENTS, numberIn(temperature, LIQUID_WATER)) as Permittivity
}

/**
 * How much the static permittivity of water of Malmberg and Maryott (1956) changes with one kelvin.
 *
 * @equation `\frac{d\varepsilon_w}{dt} = -0.40008 + 2 \cdot 9.398\times10^{-4}t - 3 \cdot 1.410\times10^{-6}t^2`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Slope. Unit: 1/K.
 * @source malmberg-1956, derivative
 * @example
 * waterPermittivitySlopeMalmbergMaryott1956(celsius(0)) // => -0.40008
 */
export function waterPermittivitySlopeMalmbergMaryott1956(temperature: Temperature): number {
  const [, c1, c2, c3] = COEFFICIENTS
  return cubicAt([c1, 2 * c2, 3 * c3, 0], numberIn(temperature, LIQUID_WATER))
}
