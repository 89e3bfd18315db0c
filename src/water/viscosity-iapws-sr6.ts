import type { Temperature, Viscosity } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { LIQUID_WATER } from './domains.js'

/**
 * Dynamic viscosity of liquid water at 0.1 MPa after IAPWS SR6-08.
 *
 * In µPa·s. It falls by about 2 % a kelvin: water drains and flows through emitters faster when it is warm.
 *
 * @equation `\mu = 280.68\,x^{-1.9} + 511.45\,x^{-7.7} + 61.131\,x^{-19.6} + 0.45903\,x^{-40}, \quad x = \frac{T}{300\,\mathrm K}`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Dynamic viscosity. Unit: Pa·s.
 * @validity Pure water at 0.1 MPa, -20 to 110 °C.
 * @source iapws-sr6-2011
 * @example
 * inMillipascalSeconds(waterViscosityIapwsSr6(celsius(20))) // => 1.0016
 */
export function waterViscosityIapwsSr6(temperature: Temperature): Viscosity {
  const x = (numberIn(temperature, LIQUID_WATER) + 273.15) / 300
  return (1e-6 * (280.68 * x ** -1.9 + 511.45 * x ** -7.7 + 61.131 * x ** -19.6 + 0.45903 * x ** -40)) as Viscosity
}
