import type { Share } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { checkAlpha, checkConnection, checkExponent, finiteSuction } from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import { retentionOf } from './retention-of.js'
import type { PoreConnection, SuctionScale, WaterLimits } from './terms.js'
import { type Curve, conductingPart, logSaturationAt } from './van-genuchten-form.js'

/** The numbers of a van Genuchten curve with m = 1 - 1/n. */
export interface VanGenuchtenParameters extends WaterLimits, PoreConnection, SuctionScale {
  /** Exponent; the larger, the more uniform the pores. Unit: 1. Range: (1, ∞). */
  readonly n: number
}

/**
 * Retention curve of van Genuchten (1980) with Mualem's conductivity.
 *
 * The conductivity keeps its digits in the dry end, where the printed form cancels.
 *
 * @equation `S = \left(1 + (\alpha s)^n\right)^{-m}, \quad m = 1 - 1/n, \quad \theta = \theta_r + (\theta_s - \theta_r) S,
 * \quad K / K_s = S^l \left(1 - (1 - S^{1/m})^m\right)^2`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source van-genuchten-1980, Eqs. 3, 8 and 21-23
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.045),
 *   saturated: waterContent(0.43),
 *   alpha: perCentimetre(0.145),
 *   n: 2.68,
 * })
 * medium.waterContent(centimetresOfSuction(10)) // => 0.214344
 * medium.relativeConductivity(centimetresOfSuction(10)) // => 0.0212212
 */
export function vanGenuchten1980(parameters: VanGenuchtenParameters): ConductiveModel {
  requireObject(parameters, 'parameters')
  const { residual, saturated, alpha, poreConnection = 0.5 } = parameters
  const n = checkExponent('n', parameters.n, 1)
  const curve: Curve = { logAlpha: Math.log(checkAlpha(alpha)), n, m: 1 - 1 / n }
  const l = checkConnection(poreConnection, -2 / curve.m)
  return {
    kind: 'van-genuchten-1980',
    parameters: { residual, saturated, alpha, n, poreConnection },
    ...retentionOf(curve, residual, saturated),
    relativeConductivity: (suction) =>
      (finiteSuction(suction) > 0
        ? Math.exp(l * logSaturationAt(curve, suction) + 2 * Math.log(conductingPart(curve, suction)))
        : 1) as Share,
  }
}
