import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_ROTH_ORGANIC, CONTENT_ROTH_ORGANIC } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [-0.0233, 0.0285, -4.31e-4, 3.04e-6]

/** Where the relation of Roth, Malicki and Plagge (1992) was measured. */
export const validityRothOrganic1992: Validity = {
  of: 'waterContentRothOrganic1992',
  note: 'organic soils of 0.26 to 0.77 g/cm³, permittivity up to about 75; not coir, bark or stone wool',
  inputs: { apparent: { min: 3, max: 75, unit: '1' } },
}

/**
 * Volumetric water content of an organic soil from its apparent permittivity.
 *
 * In pure water it would give 1.06 m³/m³; what is above 1 is refused, and a value above the porosity says that the relation does not fit.
 *
 * @equation `\theta = -0.0233 + 0.0285\varepsilon - 4.31\times10^{-4}\varepsilon^2 + 3.04\times10^{-6}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1, 76.77311].
 * @returns Water content. Unit: m³/m³.
 * @validity Organic soils of 0.26 to 0.77 g/cm³, permittivity from 3 to about 75; not coir, bark or stone wool.
 * @source roth-1992, Table 3 (organic soils); coefficients checked in an independent open restatement, where a second one has the constant with the opposite sign
 * @example
 * waterContentRothOrganic1992(permittivity(20)) // => 0.39862
 */
export function waterContentRothOrganic1992(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_ROTH_ORGANIC)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Roth, Malicki and Plagge (1992) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0.004772, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Organic soils of 0.26 to 0.77 g/cm³, permittivity up to about 75; not coir, bark or stone wool.
 * @source roth-1992, Table 3 (organic soils), solved for the permittivity
 * @example
 * permittivityRothOrganic1992(waterContentRothOrganic1992(permittivity(20))) // => 20
 */
export function permittivityRothOrganic1992(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_ROTH_ORGANIC, COEFFICIENTS, numberIn(waterContent, CONTENT_ROTH_ORGANIC))
}
