import type { Share } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { checkAlpha, checkConnection, checkExponent, finiteSuction } from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import { retentionOf } from './retention-of.js'
import type { SuctionScale, WaterLimits } from './terms.js'
import { type Curve, conductingPart, logSaturationAt } from './van-genuchten-form.js'

/** The numbers of a van Genuchten curve with m = 1 - 2/n. */
export interface VanGenuchtenBurdineParameters extends WaterLimits, SuctionScale {
  /** Exponent. Unit: 1. Range: (2, ∞). */
  readonly n: number
  /** Exponent of pore connection and tortuosity in the conductivity, 2 unless it was fitted. Unit: 1. Range: (-∞, ∞). */
  readonly poreConnection?: number
}

/**
 * Retention curve of van Genuchten (1980) with Burdine's conductivity, for tables that were fitted with m = 1 - 2/n.
 *
 * @equation `S = \left(1 + (\alpha s)^n\right)^{-m}, \quad m = 1 - 2/n, \quad \theta = \theta_r + (\theta_s - \theta_r) S,
 * \quad K / K_s = S^2 \left(1 - (1 - S^{1/m})^m\right)`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source van-genuchten-1980, section on Burdine's theory
 * @example
 * const medium = vanGenuchtenBurdine1980({
 *   residual: waterContent(0),
 *   saturated: waterContent(0.9),
 *   alpha: perCentimetre(0.08),
 *   n: 3.5,
 * })
 * medium.relativeConductivity(centimetresOfSuction(5)) // => 0.7261613
 */
export function vanGenuchtenBurdine1980(parameters: VanGenuchtenBurdineParameters): ConductiveModel {
  requireObject(parameters, 'parameters')
  const { residual, saturated, alpha, poreConnection = 2 } = parameters
  const n = checkExponent('n', parameters.n, 2)
  const curve: Curve = { logAlpha: Math.log(checkAlpha(alpha)), n, m: 1 - 2 / n }
  const l = checkConnection(poreConnection, -1 / curve.m)
  return {
    kind: 'van-genuchten-burdine-1980',
    parameters: { residual, saturated, alpha, n, poreConnection },
    ...retentionOf(curve, residual, saturated),
    relativeConductivity: (suction) =>
      (finiteSuction(suction) > 0
        ? Math.exp(l * logSaturationAt(curve, suction) + Math.log(conductingPart(curve, suction)))
        : 1) as Share,
  }
}
