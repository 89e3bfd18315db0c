import { rootBetween } from '../../numerics/root.js'
import type { SuctionHead, WaterCapacity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { SOME_SUCTION } from '../domains.js'
import { checkExponent, checkLimits, finiteSuction, heldWaterContents } from './curve-limits.js'
import { fredlundXingUncorrected } from './fredlund-xing-uncorrected.js'
import type { RetentionModel } from './retention-model.js'
import type { SaturatedLimit, SuctionExponent } from './terms.js'
import { softplus } from './van-genuchten-form.js'

/** The numbers of a Fredlund–Xing curve. */
export interface FredlundXingParameters extends SaturatedLimit, SuctionExponent {
  /** Scale of the suction, near the air entry. Unit: cm. Range: (0, ∞). */
  readonly scaleSuction: SuctionHead
  /** Exponent of the logarithm. Unit: 1. Range: (0, ∞). */
  readonly m: number
  /** Suction of the residual water, often 1500 kPa; leave it out for the curve without its correction factor. Unit: cm. Range: (0, ∞). */
  readonly residualSuction?: SuctionHead
}

const KIND = 'fredlund-xing-1994'

/** 10⁶ kPa: the suction at which any medium is dry. */
const DRY = 10197162.129779283

/** Logarithm of the smallest positive double, a little rounded up. */
const MIN = -744

/**
 * Retention curve of Fredlund and Xing (1994) from saturation to oven-dry, which is reached at 10⁶ kPa and kept beyond.
 *
 * Without a residual suction the factor in brackets is left out: the curve then falls for ever and never dries out. It has no closed
 * conductivity.
 *
 * @equation `\theta = \left[1 - \frac{\ln(1 + s/s_r)}{\ln(1 + 10^6\,\text{kPa}/s_r)}\right] \frac{\theta_s}{\left[\ln\left(e + (s/a)^n\right)\right]^m}`
 * @returns The curve.
 * @source fredlund-1994
 * @example
 * const medium = fredlundXing1994({
 *   saturated: waterContent(0.9),
 *   scaleSuction: kilopascalsOfSuction(1.2),
 *   n: 1.8,
 *   m: 0.7,
 *   residualSuction: kilopascalsOfSuction(1500),
 * })
 * medium.waterContent(kilopascalsOfSuction(5)) // => 0.44218322
 */
export function fredlundXing1994(parameters: FredlundXingParameters): RetentionModel {
  requireObject(parameters, 'parameters')
  const { saturated, scaleSuction, residualSuction } = parameters
  if (residualSuction === undefined) return fredlundXingUncorrected(parameters, KIND)
  checkLimits(0, saturated)
  const logScale = Math.log(namedIn(scaleSuction, SOME_SUCTION, 'scaleSuction'))
  const n = checkExponent('n', parameters.n)
  const m = checkExponent('m', parameters.m)
  const sr = namedIn(residualSuction, SOME_SUCTION, 'residualSuction')
  const full = Math.log1p(DRY / sr)
  const held = heldWaterContents(0, saturated)
  return {
    kind: KIND,
    parameters: { saturated, scaleSuction, n, m, residualSuction },
    saturated,
    residual: 0 as WaterContent,
    breakpoints: [DRY as SuctionHead],
    waterContent: (suction) => waterContentAt(finiteSuction(suction)) as WaterContent,
    capacity: (suction) => slopeAt(finiteSuction(suction)) as WaterCapacity,
    suction: (waterContent) => suctionAt(numberIn(waterContent, held)) as SuctionHead,
  }

  /** The factor in brackets, written so that it ends in zero without rounding. */
  function correction(s: number): number {
    return Math.log1p((DRY - s) / (sr + s)) / full
  }

  function waterContentAt(s: number): number {
    if (s <= 0) return saturated
    return s < DRY ? saturated * Math.min(1, correction(s)) * logTerm(s) ** -m : 0
  }

  /** ln(e + (s/a)ⁿ). */
  function logTerm(s: number): number {
    return 1 + softplus(n * (Math.log(s) - logScale) - 1)
  }

  function slopeAt(s: number): number {
    if (s <= 0 || s >= DRY) return 0
    const logX = n * (Math.log(s) - logScale)
    const term = logTerm(s)
    const uncorrected = m * n * Math.exp(-softplus(1 - logX) - Math.log(s)) * (correction(s) / term)
    return saturated * term ** -m * (uncorrected + 1 / ((sr + s) * full))
  }

  function suctionAt(waterContent: number): number {
    if (waterContent >= waterContentAt(Math.exp(MIN))) return 0
    const logSuction = rootBetween(
      (t) => {
        const s = Math.exp(t)
        return [waterContentAt(s) - waterContent, -slopeAt(s) * s]
      },
      MIN,
      // A little beyond, so that rounding does not leave the dry end outside the bracket.
      Math.log(DRY) + 1e-9,
    )
    return Math.exp(logSuction)
  }
}
