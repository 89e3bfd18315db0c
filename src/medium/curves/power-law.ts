import type { Share, SuctionHead, WaterCapacity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { SOME_SUCTION } from '../domains.js'
import {
  checkLimits,
  finiteSuction,
  heldWaterContents,
  logSaturation,
  reachable,
  waterContentOf,
} from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'

/** Everything but the name of a model whose saturation and conductivity are powers of air entry over suction. */
export function powerLaw(curve: {
  residual: WaterContent
  saturated: WaterContent
  airEntry: SuctionHead
  exponent: number
  conduction: number
}): Omit<ConductiveModel, 'kind' | 'parameters'> {
  const { residual, saturated, exponent, conduction } = curve
  checkLimits(residual, saturated)
  const entry = namedIn(curve.airEntry, SOME_SUCTION, 'airEntry')
  const held = heldWaterContents(residual, saturated)
  const range = saturated - residual
  const power = (suction: number, p: number) => (finiteSuction(suction) > entry ? (entry / suction) ** p : 1)
  return {
    saturated,
    residual,
    breakpoints: [curve.airEntry],
    waterContent: (suction) =>
      finiteSuction(suction) > entry
        ? waterContentOf(exponent * Math.log(entry / suction), residual, saturated)
        : saturated,
    capacity: (suction) =>
      (finiteSuction(suction) > entry ? (range * exponent * power(suction, exponent)) / suction : 0) as WaterCapacity,
    suction: (waterContent) =>
      reachable(
        entry * Math.exp(-logSaturation(numberIn(waterContent, held), residual, saturated) / exponent),
        waterContent,
        held,
      ),
    relativeConductivity: (suction) => power(suction, conduction) as Share,
  }
}
