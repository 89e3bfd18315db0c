import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_JACOBSEN_SCHJONNING, CONTENT_JACOBSEN_SCHJONNING } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [-0.0701, 0.0347, -1.16e-3, 1.8e-5]

/** Where the relation of Jacobsen and Schjønning (1993) was measured. */
export const validityJacobsenSchjonning1993: Validity = {
  of: 'waterContentJacobsenSchjonning1993',
  note: 'mineral soils, permittivity up to about 40; organic media and stone wool need their own calibration',
  inputs: { apparent: { min: 3, max: 40, unit: '1' } },
}

/**
 * Volumetric water content of a mineral soil from its apparent permittivity.
 *
 * The cubic gives more water than volume soon above a permittivity of 49, so it ends there.
 *
 * @equation `\theta = -0.0701 + 0.0347\varepsilon - 1.16\times10^{-3}\varepsilon^2 + 1.8\times10^{-5}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [2.172654, 49].
 * @returns Water content. Unit: m³/m³.
 * @validity Mineral soils, permittivity from 3 to about 40; organic media and stone wool need their own calibration.
 * @source jacobsen-1993, Eq. 2
 * @example
 * waterContentJacobsenSchjonning1993(permittivity(20)) // => 0.3039
 */
export function waterContentJacobsenSchjonning1993(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_JACOBSEN_SCHJONNING)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Jacobsen and Schjønning (1993) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0, 0.9627221].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Mineral soils, permittivity up to about 40; organic media and stone wool need their own calibration.
 * @source jacobsen-1993, Eq. 2, solved for the permittivity
 * @example
 * permittivityJacobsenSchjonning1993(waterContentJacobsenSchjonning1993(permittivity(20))) // => 20
 */
export function permittivityJacobsenSchjonning1993(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_JACOBSEN_SCHJONNING, COEFFICIENTS, numberIn(waterContent, CONTENT_JACOBSEN_SCHJONNING))
}
