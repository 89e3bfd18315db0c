import type { Permittivity, Temperature } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

/** Where the equation was fitted. */
export const validityKaatze1989: Validity = {
  of: 'waterPermittivityKaatze1989',
  note: 'pure water at atmospheric pressure',
  inputs: { temperature: { min: -4, max: 60, unit: '°C' } },
}

/**
 * Static permittivity of water after Kaatze (1989).
 *
 * Within 0.02 of the IAPWS values from 0 to 60 °C.
 *
 * @equation `\varepsilon_w = 10^{\,1.94404 - 1.991\times10^{-3}t}`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Relative permittivity. Unit: 1.
 * @validity Pure water at atmospheric pressure, -4 to 60 °C.
 * @source kaatze-1989
 * @example
 * waterPermittivityKaatze1989(celsius(0)) // => 87.91035
 */
export function waterPermittivityKaatze1989(temperature: Temperature): Permittivity {
  return (10 ** (1.94404 - 1.991e-3 * numberIn(temperature, LIQUID_WATER))) as Permittivity
}
