import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_NAGARE, CONTENT_NAGARE } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [-0.0189, 0.032, -4.59e-4, 2.7e-6]

/** Where the relation of Nagare and others (2011) was measured. */
export const validityNagare2011: Validity = {
  of: 'waterContentNagare2011',
  note: 'undisturbed peat of 0.05 to 0.18 g/cm³, porosity 0.73 to 0.94; a peat mix in a container needs its own calibration',
  inputs: { apparent: { min: 3, max: 75, unit: '1' } },
}

/**
 * Volumetric water content of undisturbed peat from its apparent permittivity.
 *
 * Of the peat relations here the one with the smallest reading in air, 0.01 m³/m³.
 *
 * @equation `\theta = -0.0189 + 0.0320\varepsilon - 4.59\times10^{-4}\varepsilon^2 + 2.70\times10^{-6}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1, 81.32334].
 * @returns Water content. Unit: m³/m³.
 * @validity Undisturbed peat of 0.05 to 0.18 g/cm³, porosity 0.73 to 0.94, permittivity of 3 to 75; a peat mix in a container needs its own calibration.
 * @source nagare-2011, Table 4 (combined)
 * @example
 * waterContentNagare2011(permittivity(20)) // => 0.4591
 */
export function waterContentNagare2011(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_NAGARE)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Nagare and others (2011) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0.0126436, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Undisturbed peat of 0.05 to 0.18 g/cm³, porosity 0.73 to 0.94; a peat mix in a container needs its own calibration.
 * @source nagare-2011, Table 4 (combined), solved for the permittivity
 * @example
 * permittivityNagare2011(waterContentNagare2011(permittivity(20))) // => 20
 */
export function permittivityNagare2011(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_NAGARE, COEFFICIENTS, numberIn(waterContent, CONTENT_NAGARE))
}
