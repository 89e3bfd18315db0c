import { cubicAt } from '../../numerics/cubic.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import type { Permittivity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { APPARENT } from '../domains.js'

/**
 * Apparent permittivity of a mineral soil from its water content by the reverse regression of Topp, Davis and Annan (1980).
 *
 * It is a second fit to the same data and does not undo `waterContentTopp1980`: at 0.55 m³/m³ it gives 39.5 where the true
 * inverse gives 46.9. Take `permittivityTopp1980` for a round trip.
 *
 * @equation `\varepsilon = 3.03 + 9.3\theta + 146\theta^2 - 76.7\theta^3`
 * @param waterContent - Water content. Unit: m³/m³. Range: [0, 1].
 * @returns Apparent relative permittivity. Unit: 1.
 * @validity Mineral soils, water content 0 to 0.55.
 * @source topp-1980
 * @example
 * permittivityToppReverse1980(waterContent(0.2)) // => 10.1164
 */
export function permittivityToppReverse1980(waterContent: WaterContent): Permittivity {
  return cubicAt([3.03, 9.3, 146, -76.7], numberIn(waterContent, WATER_CONTENT)) as Permittivity
}

/**
 * How much the water content of Topp, Davis and Annan (1980) changes with one unit of permittivity.
 *
 * One unit is worth 0.024 m³/m³ in a dry soil and 0.006 near a permittivity of 43.
 *
 * @equation `\frac{d\theta}{d\varepsilon} = 2.92\times10^{-2} - 1.1\times10^{-3}\varepsilon + 1.29\times10^{-5}\varepsilon^2`
 * @param apparent - Apparent relative permittivity. Unit: 1. Range: [1, 90].
 * @returns Slope. Unit: m³/m³.
 * @source topp-1980, derivative of Eq. 7
 * @example
 * waterContentSlopeTopp1980(permittivity(5)) // => 0.0240225
 */
export function waterContentSlopeTopp1980(apparent: Permittivity): number {
  return cubicAt([2.92e-2, -1.1e-3, 1.29e-5, 0], numberIn(apparent, APPARENT))
}
