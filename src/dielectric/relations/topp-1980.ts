import { rootBetween } from '../../numerics/root.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { APPARENT_TOPP } from '../domains.js'

/** Where the relation of Topp, Davis and Annan (1980) was measured. */
export const validityTopp1980: Validity = {
  of: 'waterContentTopp1980',
  note: 'mineral soils; organic media and stone wool need their own calibration',
  inputs: { apparent: { min: 3, max: 40, unit: '1' } },
}

/**
 * Volumetric water content of a mineral soil from its apparent permittivity.
 *
 * Below a permittivity of about 1.88 it would give less than no water, above 81.4 more water than volume: both are refused, so that a dry
 * or lifted probe and a wet peat are not taken for a soil.
 *
 * @equation `\theta = -5.3\times10^{-2} + 2.92\times10^{-2}\varepsilon - 5.5\times10^{-4}\varepsilon^2 + 4.3\times10^{-6}\varepsilon^3`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1.880712, 81.44688].
 * @returns Water content. Unit: m³/m³.
 * @validity Mineral soils, permittivity 3 to 40; organic media and stone wool need their own calibration.
 * @source topp-1980, Eq. 7
 * @example
 * waterContentTopp1980(permittivity(20)) // => 0.3454
 */
export function waterContentTopp1980(apparent: Permittivity): WaterContent {
  return cubic(numberIn(apparent, APPARENT_TOPP)) as WaterContent
}

/**
 * Apparent permittivity at which the relation of Topp, Davis and Annan (1980) gives a water content: its true inverse.
 * The reverse polynomial of the same paper is another regression and does not undo the first.
 *
 * @equation `\varepsilon : \; \theta(\varepsilon) = \theta`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Mineral soils, water content 0 to 0.55.
 * @source topp-1980, Eq. 7, solved for the permittivity
 * @example
 * permittivityTopp1980(waterContent(0.3454)) // => 20
 */
export function permittivityTopp1980(waterContent: WaterContent): Permittivity {
  const theta = numberIn(waterContent, WATER_CONTENT)
  // The cubic rises everywhere (its slope has no real root), so the bracket holds exactly one root.
  const root = rootBetween(
    (e) => [cubic(e) - theta, (3 * 4.3e-6 * e - 2 * 5.5e-4) * e + 2.92e-2],
    APPARENT_TOPP.min - 1e-3,
    APPARENT_TOPP.max + 1e-3,
  )
  // The rounding at the ends is taken back, so that the relation takes what its inverse gives.
  return Math.min(APPARENT_TOPP.max, Math.max(APPARENT_TOPP.min, root)) as Permittivity
}

function cubic(e: number): number {
  return ((4.3e-6 * e - 5.5e-4) * e + 2.92e-2) * e - 5.3e-2
}
