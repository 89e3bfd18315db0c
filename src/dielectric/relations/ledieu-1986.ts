import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_LEDIEU, CONTENT_LEDIEU } from '../domains.js'

/** Where the relation of Ledieu and others (1986) was measured. */
export const validityLedieu1986: Validity = {
  of: 'waterContentLedieu1986',
  note: 'mineral soils; it reads too low in organic media',
  inputs: { apparent: { min: 3, max: 40, unit: '1' } },
}

/**
 * Volumetric water content of a mineral soil, linear in the square root of the apparent permittivity.
 *
 * @equation `\theta = 0.1138\sqrt{\varepsilon} - 0.1758`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [2.386455, 90].
 * @returns Water content. Unit: m³/m³.
 * @validity Mineral soils, permittivity of 3 to 40; it reads too low in organic media.
 * @source ledieu-1986
 * @example
 * waterContentLedieu1986(permittivity(16)) // => 0.2794
 */
export function waterContentLedieu1986(apparent: Permittivity): WaterContent {
  return (0.1138 * Math.sqrt(numberIn(apparent, APPARENT_LEDIEU)) - 0.1758) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Ledieu and others (1986) gives a water content: its true inverse.
 *
 * @equation `\varepsilon = \left(\frac{\theta + 0.1758}{0.1138}\right)^2`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0, 0.903802].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Mineral soils; it reads too low in organic media.
 * @source ledieu-1986, solved for the permittivity
 * @example
 * permittivityLedieu1986(waterContent(0.2794)) // => 16
 */
export function permittivityLedieu1986(waterContent: WaterContent): Permittivity {
  // The rounding at the dry end is taken back, so that the relation takes what its inverse gives.
  return Math.max(
    APPARENT_LEDIEU.min,
    ((numberIn(waterContent, CONTENT_LEDIEU) + 0.1758) / 0.1138) ** 2,
  ) as Permittivity
}
