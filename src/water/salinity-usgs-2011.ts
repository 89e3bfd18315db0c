import type { Salinity, SolutionEC } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { CONDUCTIVITY } from './domains.js'

/**
 * Practical salinity estimated from the electrical conductivity at 25 °C, for the salinity term of dissolved oxygen.
 *
 * The conductivity is in µS/cm in the equation. It holds for sea salt; for a nutrient solution it is an estimate.
 *
 * @equation `S = 5.572\times10^{-4}\,\kappa + 2.02\times10^{-9}\,\kappa^2`
 * @param conductivity - Conductivity of the solution at 25 °C. Unit: dS/m. Range: [0, 60].
 * @returns Practical salinity. Unit: 1.
 * @validity Sea salt, estimate only.
 * @source usgs-2011
 * @example
 * salinityUsgs2011(decisiemensPerMetre(1)) // => 0.55922
 */
export function salinityUsgs2011(conductivity: SolutionEC): Salinity {
  const microsiemens = numberIn(conductivity, CONDUCTIVITY) * 1000
  return ((5.572e-4 + 2.02e-9 * microsiemens) * microsiemens) as Salinity
}
