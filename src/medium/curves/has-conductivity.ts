import { optionsOf } from '../../quantity/guard.js'
import type { ConductiveModel, RetentionModel } from './retention-model.js'

/**
 * Whether a retention model also says how the medium conducts water, as flow calculations need. Those of Fredlund and Xing, and curves
 * with free exponents whose n is at most 1, do not.
 *
 * @procedure Looks whether the model has a relative conductivity.
 * @returns True when it does; the compiler then knows it as well.
 * @source definition
 * @example
 * hasConductivity(campbell1974({ saturated: waterContent(0.8), airEntry: centimetresOfSuction(6), b: 3 })) // => true
 */
export function hasConductivity(medium: RetentionModel): medium is ConductiveModel {
  return optionsOf(medium).relativeConductivity !== undefined
}
