import type { SuctionHead, WaterCapacity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { SOME_SUCTION } from '../domains.js'
import { checkExponent, checkLimits, finiteSuction, heldWaterContents, reachable } from './curve-limits.js'
import type { RetentionModel } from './retention-model.js'
import { softplus } from './van-genuchten-form.js'

/** The numbers of the curve that both of its forms have; `FredlundXingParameters` explains them. */
interface ScaleAndExponents {
  readonly saturated: WaterContent
  readonly scaleSuction: SuctionHead
  readonly n: number
  readonly m: number
}

/** The curve of Fredlund and Xing (1994) without the factor that dries it out: all its parts in closed form. */
export function fredlundXingUncorrected(parameters: ScaleAndExponents, kind: string): RetentionModel {
  const { saturated, scaleSuction } = parameters
  checkLimits(0, saturated)
  const logScale = Math.log(namedIn(scaleSuction, SOME_SUCTION, 'scaleSuction'))
  const n = checkExponent('n', parameters.n)
  const m = checkExponent('m', parameters.m)
  const held = heldWaterContents(0, saturated)
  /** ln(e + (s/a)ⁿ), from the logarithm of (s/a)ⁿ. */
  const logTerm = (logX: number) => 1 + softplus(logX - 1)
  return {
    kind,
    parameters: { saturated, scaleSuction, n, m },
    saturated,
    residual: 0 as WaterContent,
    breakpoints: [],
    waterContent(suction) {
      const s = finiteSuction(suction)
      return (s <= 0 ? saturated : saturated * logTerm(n * (Math.log(s) - logScale)) ** -m) as WaterContent
    },
    capacity(suction) {
      const s = finiteSuction(suction)
      if (s <= 0) return 0 as WaterCapacity
      const logX = n * (Math.log(s) - logScale)
      const term = logTerm(logX)
      return ((saturated * m * n * term ** (-m - 1) * Math.exp(-softplus(1 - logX))) / s) as WaterCapacity
    },
    suction(waterContent) {
      const theta = numberIn(waterContent, held, 'waterContent')
      if (theta === saturated) return 0 as SuctionHead
      // ln(e + x) = L, so that x = e^L - e, written so that neither end loses its digits.
      const above = Math.expm1(-Math.log1p((theta - saturated) / saturated) / m)
      const logX = 1 + (above > 30 ? above : Math.log(Math.expm1(above)))
      return reachable(Math.exp(logScale + logX / n), theta, held)
    },
  }
}
