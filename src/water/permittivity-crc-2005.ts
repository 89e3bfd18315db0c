import type { Permittivity, Temperature } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

/** Where the equation was fitted. */
export const validityCrc2005: Validity = {
  of: 'waterPermittivityCrc2005',
  note: 'pure water at atmospheric pressure',
  inputs: { temperature: { min: 0, max: 99, unit: '°C' } },
}

/**
 * Static permittivity of water by the quadratic of the CRC Handbook.
 *
 * 0.2 below the IAPWS values at 0 °C.
 *
 * @equation `\varepsilon_w = 249.21 - 0.79069\,T + 7.2997\times10^{-4}\,T^2, \quad T = t + 273.15`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Relative permittivity. Unit: 1.
 * @validity Pure water at atmospheric pressure, 0 to 99 °C.
 * @source lide-2005
 * @example
 * waterPermittivityCrc2005(celsius(0)) // => 87.69676
 */
export function waterPermittivityCrc2005(temperature: Temperature): Permittivity {
  const kelvins = numberIn(temperature, LIQUID_WATER) + 273.15
  return (249.21 + (-0.79069 + 7.2997e-4 * kelvins) * kelvins) as Permittivity
}
