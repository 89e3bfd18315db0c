import type { SuctionHead } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { checkConnection, checkExponent } from './curve-limits.js'
import { powerLaw } from './power-law.js'
import type { ConductiveModel } from './retention-model.js'
import type { WaterLimits } from './terms.js'

/** The numbers of a Brooks–Corey curve. */
export interface BrooksCoreyParameters extends WaterLimits {
  /** Suction at which air enters (bubbling pressure). Unit: cm. Range: (0, ∞). */
  readonly airEntry: SuctionHead
  /** Index of the pore sizes; the larger, the more uniform. Unit: 1. Range: (0, ∞). */
  readonly lambda: number
  /** Exponent of pore connection: 1, left out, gives the paper's conductivity; 0.5 that of Mualem. Unit: 1. Range: (-∞, ∞). */
  readonly poreConnection?: number
}

/**
 * Retention curve and conductivity of Brooks and Corey (1964), with an air entry.
 *
 * With l = 1 this is the exponent 2 + 3λ of the paper (Burdine).
 *
 * @equation `S = \left(s_b / s\right)^{\lambda} \text{ above } s_b, \text{ else } 1, \quad \theta = \theta_r + (\theta_s - \theta_r) S,
 * \quad K / K_s = \left(s_b / s\right)^{2 + (2 + l) \lambda}`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source brooks-1964
 * @example
 * const medium = brooksCorey1964({
 *   residual: waterContent(0.02),
 *   saturated: waterContent(0.437),
 *   airEntry: centimetresOfSuction(7.26),
 *   lambda: 0.592,
 * })
 * medium.waterContent(centimetresOfSuction(100)) // => 0.10826947
 */
export function brooksCorey1964(parameters: BrooksCoreyParameters): ConductiveModel {
  requireObject(parameters, 'parameters')
  const { residual, saturated, airEntry, poreConnection = 1 } = parameters
  const lambda = checkExponent('lambda', parameters.lambda)
  checkConnection(poreConnection, -2 - 2 / lambda)
  return {
    kind: 'brooks-corey-1964',
    parameters: { residual, saturated, airEntry, lambda, poreConnection },
    ...powerLaw({ residual, saturated, airEntry, exponent: lambda, conduction: 2 + (2 + poreConnection) * lambda }),
  }
}
