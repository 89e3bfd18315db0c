import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_ROTH_MINERAL } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [-0.0728, 0.0448, -0.00195, 3.61e-5]

/** Where the relation of Roth, Malicki and Plagge (1992) was measured. */
export const validityRothMineral1992: Validity = {
  of: 'waterContentRothMineral1992',
  note: 'mineral soils, permittivity up to about 40; organic media and stone wool need their own calibration',
  inputs: { apparent: { min: 3, max: 40, unit: '1' } },
}

/**
 * Volumetric water content of a mineral soil from its apparent permittivity.
 *
 * The cubic climbs steeply when it leaves its data and gives more water than volume above a permittivity of 42, so it ends
 * there; where such readings occur use another relation or an own calibration.
 *
 * @equation `\theta = -0.0728 + 0.0448\varepsilon - 1.95\times10^{-3}\varepsilon^2 + 3.61\times10^{-5}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1.754659, 41.38142].
 * @returns Water content. Unit: m³/m³.
 * @validity Mineral soils, permittivity from 3 to about 40; organic media and stone wool need their own calibration.
 * @source roth-1992, pooled mineral soils
 * @example
 * waterContentRothMineral1992(permittivity(20)) // => 0.332
 */
export function waterContentRothMineral1992(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_ROTH_MINERAL)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Roth, Malicki and Plagge (1992) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Mineral soils, permittivity up to about 40; organic media and stone wool need their own calibration.
 * @source roth-1992, pooled mineral soils, solved for the permittivity
 * @example
 * permittivityRothMineral1992(waterContentRothMineral1992(permittivity(20))) // => 20
 */
export function permittivityRothMineral1992(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_ROTH_MINERAL, COEFFICIENTS, numberIn(waterContent, WATER_CONTENT))
}
