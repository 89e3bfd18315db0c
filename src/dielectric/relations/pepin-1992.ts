import { type Cubic, cubicAt } from '../../numerics/cubic.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_PEPIN, CONTENT_PEPIN } from '../domains.js'
import { rootIn } from './root-in.js'

const COEFFICIENTS: Cubic = [0.085, 0.0192, -9.5e-5, 0]

/** Where the relation of Pepin, Plamondon and Stein (1992) was measured. */
export const validityPepin1992: Validity = {
  of: 'waterContentPepin1992',
  note: 'peat of a forest bog, six depths pooled; a peat mix in a container needs its own calibration',
  inputs: { apparent: { min: 5, max: 75, unit: '1' } },
}

/**
 * Volumetric water content of Sphagnum peat from its apparent permittivity.
 *
 * It reads 0.10 m³/m³ in air, so it does not serve for dry peat.
 *
 * @equation `\theta = 0.085 + 0.0192\varepsilon - 9.5\times10^{-5}\varepsilon^2`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1, 76.96829].
 * @returns Water content. Unit: m³/m³.
 * @validity Peat of a forest bog, six depths pooled, permittivity of 5 to 75; a peat mix in a container needs its own calibration.
 * @source pepin-1992, Table 2 (pooled data); coefficients checked in an independent open restatement, which prints the last one with a doubled minus sign
 * @example
 * waterContentPepin1992(permittivity(20)) // => 0.431
 */
export function waterContentPepin1992(apparent: Permittivity): WaterContent {
  return cubicAt(COEFFICIENTS, numberIn(apparent, APPARENT_PEPIN)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Pepin, Plamondon and Stein (1992) gives a water content: its true inverse.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0.1041049, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Peat of a forest bog, six depths pooled; a peat mix in a container needs its own calibration.
 * @source pepin-1992, Table 2 (pooled data), solved for the permittivity
 * @example
 * permittivityPepin1992(waterContentPepin1992(permittivity(20))) // => 20
 */
export function permittivityPepin1992(waterContent: WaterContent): Permittivity {
  return rootIn(APPARENT_PEPIN, COEFFICIENTS, numberIn(waterContent, CONTENT_PEPIN))
}
