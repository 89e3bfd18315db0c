import type { Domain } from '../../quantity/domain.js'
import type { ChargeConcentration, SolutionEC } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { CATIONS } from '../domains.js'

const SLOPE = 0.095
const INTERCEPT = 0.19

const CONDUCTIVITY: Domain = {
  quantity: 'electrical conductivity',
  unit: 'dS/m',
  min: INTERCEPT,
  max: 19.19,
  ends: '[]',
  hint: 'the line starts at 0.19 dS/m',
}

/** Where the line of Sonneveld and others (1999) holds. */
export const validitySonneveld1999: Validity = {
  of: 'conductivityOfCationsSonneveld1999',
  note: 'nutrient solutions at 25 °C',
  inputs: { cations: { min: 3.3, max: 50, unit: 'mmol(+)/L' } },
}

/**
 * Electrical conductivity of a nutrient solution from the sum of its cations.
 *
 * A check on a recipe or a laboratory result; a tenth of the cations is the rough rule.
 *
 * @equation `\sigma = 0.095\,C^+ + 0.19`
 * @param cations - Sum of concentration times charge of the cations. Unit: mmol(+)/L. Range: [0, 200].
 * @returns Conductivity at 25 °C. Unit: dS/m.
 * @validity Nutrient solutions of 0.5 to 5 dS/m, 3.3 to 50 mmol/L of charge.
 * @source sonneveld-1999
 * @example
 * conductivityOfCationsSonneveld1999(millimolesOfChargePerLitre(20)) // => 2.09
 */
export function conductivityOfCationsSonneveld1999(cations: ChargeConcentration): SolutionEC {
  return (SLOPE * numberIn(cations, CATIONS) + INTERCEPT) as SolutionEC
}

/**
 * Sum of cations of a nutrient solution from its electrical conductivity.
 *
 * @equation `C^+ = \frac{\sigma - 0.19}{0.095}`
 * @param conductivity - Conductivity at 25 °C. Unit: dS/m. Range: [0.19, 19.19].
 * @returns Sum of concentration times charge of the cations. Unit: mmol(+)/L.
 * @validity Nutrient solutions of 0.5 to 5 dS/m.
 * @source sonneveld-1999, solved for the cations
 * @example
 * cationsOfConductivitySonneveld1999(decisiemensPerMetre(2.09)) // => 20
 */
export function cationsOfConductivitySonneveld1999(conductivity: SolutionEC): ChargeConcentration {
  return ((numberIn(conductivity, CONDUCTIVITY) - INTERCEPT) / SLOPE) as ChargeConcentration
}
