import type { Permittivity, Temperature } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

/** Where the equation was fitted. */
export const validityIapwsSr6: Validity = {
  of: 'waterPermittivityIapwsSr6',
  note: 'pure water at 0.1 MPa, supercooled below 0 °C',
  inputs: { temperature: { min: -20, max: 110, unit: '°C' } },
}

/**
 * Static permittivity of liquid water at 0.1 MPa after IAPWS SR6-08.
 *
 * The one to take when nothing else is prescribed; within 0.05 of IAPWS R8-97.
 *
 * @equation `\varepsilon_w = -43.7527\,x^{-0.05} + 299.504\,x^{-1.47} - 399.364\,x^{-2.11} + 221.327\,x^{-2.31}, \quad x = \frac{T}{300\,\mathrm K}`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Relative permittivity. Unit: 1.
 * @validity Pure water at 0.1 MPa, supercooled below 0 °C, -20 to 110 °C.
 * @source iapws-sr6-2011
 * @example
 * waterPermittivityIapwsSr6(celsius(0)) // => 87.927393
 */
export function waterPermittivityIapwsSr6(temperature: Temperature): Permittivity {
  const x = (numberIn(temperature, LIQUID_WATER) + 273.15) / 300
  return (-43.7527 * x ** -0.05 + 299.504 * x ** -1.47 - 399.364 * x ** -2.11 + 221.327 * x ** -2.31) as Permittivity
}
