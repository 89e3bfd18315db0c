import { logNormalTail, normalTailInverse } from '../../numerics/normal-tail.js'
import type { Share, SuctionHead, WaterCapacity } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { SOME_SUCTION } from '../domains.js'
import {
  checkConnection,
  checkExponent,
  checkLimits,
  finiteSuction,
  heldWaterContents,
  reachable,
  waterContentOf,
} from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import type { PoreConnection, WaterLimits } from './terms.js'

/** The numbers of a Kosugi curve. */
export interface KosugiParameters extends WaterLimits, PoreConnection {
  /** Suction at which half of the water between the two has gone. Unit: cm. Range: (0, ∞). */
  readonly medianSuction: SuctionHead
  /** Standard deviation of the logarithm of the suction. Unit: 1. Range: (0, ∞). */
  readonly sigma: number
}

/**
 * Retention curve of Kosugi (1996) for pores whose sizes are lognormal, with Mualem's conductivity.
 *
 * @equation `S = \tfrac12 \operatorname{erfc}\frac{y}{\sqrt2}, \quad y = \frac{\ln(s/s_m)}{\sigma}, \quad \theta = \theta_r + (\theta_s - \theta_r) S,
 * \quad K / K_s = S^l \left[\tfrac12 \operatorname{erfc}\frac{y + \sigma}{\sqrt2}\right]^2`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source kosugi-1996
 * @example
 * const medium = kosugi1996({
 *   residual: waterContent(0.1),
 *   saturated: waterContent(0.92),
 *   medianSuction: centimetresOfSuction(25),
 *   sigma: 1.2,
 * })
 * medium.waterContent(centimetresOfSuction(25)) // => 0.51
 */
export function kosugi1996(parameters: KosugiParameters): ConductiveModel {
  const { residual, saturated, medianSuction, poreConnection = 0.5 } = optionsOf(parameters)
  checkLimits(residual, saturated)
  const logMedian = Math.log(namedIn(medianSuction, SOME_SUCTION, 'medianSuction'))
  const sigma = checkExponent('sigma', parameters.sigma)
  const l = checkConnection(poreConnection, -2)
  const held = heldWaterContents(residual, saturated)
  const range = saturated - residual
  const deviation = (suction: number) => (Math.log(suction) - logMedian) / sigma
  return {
    kind: 'kosugi-1996',
    parameters: { residual, saturated, medianSuction, sigma, poreConnection },
    saturated,
    residual,
    breakpoints: [],
    waterContent: (suction) =>
      finiteSuction(suction) > 0 ? waterContentOf(logNormalTail(deviation(suction)), residual, saturated) : saturated,
    capacity: (suction) =>
      (finiteSuction(suction) > 0
        ? ((range / sigma) * Math.exp(-(deviation(suction) ** 2) / 2 - Math.log(suction))) / Math.sqrt(2 * Math.PI)
        : 0) as WaterCapacity,
    suction: (waterContent) => {
      const lack = (saturated - numberIn(waterContent, held)) / range
      const y =
        lack < 0.5 ? -normalTailInverse(Math.log(lack)) : normalTailInverse(Math.log((waterContent - residual) / range))
      return reachable(Math.exp(logMedian + sigma * y), waterContent, held)
    },
    relativeConductivity: (suction) =>
      (finiteSuction(suction) > 0
        ? Math.exp(l * logNormalTail(deviation(suction)) + 2 * logNormalTail(deviation(suction) + sigma))
        : 1) as Share,
  }
}
