import { cubicAt } from '../numerics/cubic.js'
import type { Permittivity, Temperature } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

/** Where the equation was fitted. */
export const validityWeast1986: Validity = {
  of: 'waterPermittivityWeast1986',
  note: 'pure water at atmospheric pressure',
  inputs: { temperature: { min: 0, max: 100, unit: '°C' } },
}

/**
 * Static permittivity of water by the cubic of the CRC Handbook that the mixing model of Roth and others (1990) uses.
 *
 * 0.13 to 0.25 above the IAPWS values; 80.36 at 20 °C is its best-known value.
 *
 * @equation `\varepsilon_w = 78.54\left[1 - 4.579\times10^{-3}x + 1.19\times10^{-5}x^2 - 2.8\times10^{-8}x^3\right], \quad x = t - 25`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Relative permittivity. Unit: 1.
 * @validity Pure water at atmospheric pressure, 0 to 100 °C.
 * @source weast-1986
 * @example
 * waterPermittivityWeast1986(celsius(20)) // => 80.36181
 */
export function waterPermittivityWeast1986(temperature: Temperature): Permittivity {
  return (78.54 * cubicAt([1, -4.579e-3, 1.19e-5, -2.8e-8], numberIn(temperature, LIQUID_WATER) - 25)) as Permittivity
}
