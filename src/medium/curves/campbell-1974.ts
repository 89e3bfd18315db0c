import type { SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { checkExponent } from './curve-limits.js'
import { powerLaw } from './power-law.js'
import type { ConductiveModel } from './retention-model.js'
import type { SaturatedLimit } from './terms.js'

/** The numbers of a Campbell curve. */
export interface CampbellParameters extends SaturatedLimit {
  /** Suction at which air enters. Unit: cm. Range: (0, ∞). */
  readonly airEntry: SuctionHead
  /** Exponent of the water content. Unit: 1. Range: (0, ∞). */
  readonly b: number
}

/**
 * Retention curve and conductivity of Campbell (1974), with an air entry and no residual water.
 *
 * @equation `\theta = \theta_s \left(s_e / s\right)^{1/b} \text{ above } s_e, \text{ else } \theta_s, \quad K / K_s = (\theta / \theta_s)^{2b + 3}`
 * @returns The curve.
 * @source campbell-1974
 * @example
 * const medium = campbell1974({ saturated: waterContent(0.395), airEntry: centimetresOfSuction(12.1), b: 4.05 })
 * medium.waterContent(centimetresOfSuction(330)) // => 0.1746209
 */
export function campbell1974(parameters: CampbellParameters): ConductiveModel {
  requireObject(parameters, 'parameters')
  const { saturated, airEntry } = parameters
  const b = checkExponent('b', parameters.b)
  return {
    kind: 'campbell-1974',
    parameters: { saturated, airEntry, b },
    ...powerLaw({ residual: 0 as WaterContent, saturated, airEntry, exponent: 1 / b, conduction: (2 * b + 3) / b }),
  }
}
