import type { SuctionHead, WaterCapacity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import {
  checkLimits,
  finiteSuction,
  heldWaterContents,
  logSaturation,
  reachable,
  waterContentOf,
} from './curve-limits.js'
import type { RetentionModel } from './retention-model.js'
import { type Curve, fallAt, logSaturationAt, logSuctionOf } from './van-genuchten-form.js'

/** The retention part of every model whose effective saturation is (1 + (αs)ⁿ)⁻ᵐ. */
export function retentionOf(
  curve: Curve,
  residual: WaterContent,
  saturated: WaterContent,
): Omit<RetentionModel, 'kind' | 'parameters' | 'relativeConductivity'> {
  checkLimits(residual, saturated)
  const held = heldWaterContents(residual, saturated)
  const range = saturated - residual
  return {
    saturated,
    residual,
    breakpoints: [],
    waterContent: (suction: SuctionHead) =>
      finiteSuction(suction) > 0 ? waterContentOf(logSaturationAt(curve, suction), residual, saturated) : saturated,
    capacity: (suction: SuctionHead) =>
      (finiteSuction(suction) > 0 ? range * fallAt(curve, suction) : 0) as WaterCapacity,
    suction: (waterContent: WaterContent) =>
      reachable(
        Math.exp(logSuctionOf(curve, logSaturation(numberIn(waterContent, held), residual, saturated))),
        waterContent,
        held,
      ),
  }
}
