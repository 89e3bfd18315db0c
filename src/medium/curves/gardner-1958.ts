import type { InverseSuction, Share, SuctionHead, WaterCapacity } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import {
  checkAlpha,
  checkLimits,
  finiteSuction,
  heldWaterContents,
  logSaturation,
  reachable,
  waterContentOf,
} from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import type { WaterLimits } from './terms.js'

/** The numbers of an exponential medium. */
export interface GardnerParameters extends WaterLimits {
  /** How fast water and conductivity fall with suction; one over it is the height to which the medium lifts water. Unit: 1/cm. Range: (0, ∞). */
  readonly alpha: InverseSuction
}

/**
 * Exponential medium: Gardner's conductivity (1958) with the water content that makes Richards' equation linear.
 *
 * Its use is that flow has exact solutions (`infiltrationSrivastavaYeh1991`, `steadySuctionGardner1958`) against which a simulation
 * can be tested. Few real media have one exponent for both curves.
 *
 * @equation `S = e^{-\alpha s}, \quad \theta = \theta_r + (\theta_s - \theta_r) S, \quad K / K_s = e^{-\alpha s}`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated.
 * @source gardner-1958 (conductivity)
 * @source srivastava-1991 (water content)
 * @example
 * const medium = gardner1958({ residual: waterContent(0.06), saturated: waterContent(0.4), alpha: perCentimetre(0.1) })
 * medium.waterContent(centimetresOfSuction(10)) // => 0.185079
 * medium.relativeConductivity(centimetresOfSuction(10)) // => 0.367879
 */
export function gardner1958(parameters: GardnerParameters): ConductiveModel {
  const { residual, saturated } = optionsOf(parameters)
  checkLimits(residual, saturated)
  const alpha = checkAlpha(parameters.alpha)
  const held = heldWaterContents(residual, saturated)
  const range = saturated - residual
  const logShare = (suction: number) => (finiteSuction(suction) > 0 ? -alpha * suction : 0)
  return {
    kind: 'gardner-1958',
    parameters: { residual, saturated, alpha },
    saturated,
    residual,
    breakpoints: [],
    waterContent: (suction) => waterContentOf(logShare(suction), residual, saturated),
    capacity: (suction) =>
      (finiteSuction(suction) > 0 ? range * alpha * Math.exp(-alpha * suction) : 0) as WaterCapacity,
    suction: (waterContent) =>
      reachable(
        -logSaturation(numberIn(waterContent, held), residual, saturated) / alpha,
        waterContent,
        held,
      ) as SuctionHead,
    relativeConductivity: (suction) => Math.exp(logShare(suction)) as Share,
  }
}
