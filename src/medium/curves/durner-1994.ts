import { rootBetween } from '../../numerics/root.js'
import type { Share, WaterCapacity, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf, requireObject } from '../../quantity/guard.js'
import { COARSE_SHARE } from '../domains.js'
import {
  checkAlpha,
  checkConnection,
  checkExponent,
  checkLimits,
  finiteSuction,
  heldWaterContents,
  logSaturation,
  reachable,
} from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import type { PoreConnection, SuctionScale, WaterLimits } from './terms.js'
import {
  type Curve,
  conductingPart,
  fallAt,
  logSaturationAt,
  logSuctionOf,
  saturationAt,
} from './van-genuchten-form.js'

/** One family of pores. */
export interface PoreFamily extends SuctionScale {
  /** Exponent. Unit: 1. Range: (1, ∞). */
  readonly n: number
}

/** The numbers of a curve with two families of pores. */
export interface DurnerParameters extends WaterLimits, PoreConnection {
  /** Share of the coarse pores in the drainable pore space; the fine ones have the rest. Unit: 1. Range: [0, 1]. */
  readonly coarseShare: Share
  /** The pores between particles, which drain first. */
  readonly coarse: PoreFamily
  /** The pores inside particles. */
  readonly fine: PoreFamily
}

/** Logarithm of the largest double, a little rounded down. */
const MAX = 709.78

/**
 * Retention curve of Durner (1994) with two families of pores, as in media of porous particles, with Mualem's conductivity.
 *
 * @equation `S = \sum_i w_i S_i, \quad S_i = \left(1 + (\alpha_i s)^{n_i}\right)^{-m_i}, \quad m_i = 1 - 1/n_i,
 * \quad K / K_s = S^l \left[\frac{\sum_i w_i \alpha_i \left(1 - (1 - S_i^{1/m_i})^{m_i}\right)}{\sum_i w_i \alpha_i}\right]^2`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source durner-1994
 * @source priesack-2006 (closed form of the conductivity)
 * @example
 * const medium = durner1994({
 *   residual: waterContent(0.25),
 *   saturated: waterContent(0.82),
 *   coarseShare: fraction(0.55),
 *   coarse: { alpha: perCentimetre(0.6), n: 2.2 },
 *   fine: { alpha: perCentimetre(0.02), n: 1.5 },
 * })
 * medium.waterContent(centimetresOfSuction(50)) // => 0.45887544
 */
export function durner1994(parameters: DurnerParameters): ConductiveModel {
  const { residual, saturated, coarseShare, coarse, fine, poreConnection = 0.5 } = optionsOf(parameters)
  checkLimits(residual, saturated)
  const w = numberIn(coarseShare, COARSE_SHARE, 'coarseShare')
  requireObject(coarse, 'coarse')
  requireObject(fine, 'fine')
  const pores: Pores = {
    coarseShare: w,
    coarse: familyOf(coarse),
    fine: familyOf(fine),
    coarseConducts: w * coarse.alpha,
    fineConducts: (1 - w) * fine.alpha,
  }
  const l = checkConnection(poreConnection, -2 / Math.max(pores.coarse.m, pores.fine.m))
  const held = heldWaterContents(residual, saturated)
  const range = saturated - residual
  return {
    kind: 'durner-1994',
    parameters: {
      residual,
      saturated,
      coarseShare,
      coarseAlpha: coarse.alpha,
      coarseN: coarse.n,
      fineAlpha: fine.alpha,
      fineN: fine.n,
      poreConnection,
    },
    saturated,
    residual,
    breakpoints: [],
    waterContent: (suction) => {
      if (!(finiteSuction(suction) > 0)) return saturated
      // Counted from the nearer limit, so that it never leaves them by rounding.
      const lack = meanOf(pores, lackAt, suction)
      return (
        lack < 0.5 ? saturated - range * lack : residual + range * meanOf(pores, saturationAt, suction)
      ) as WaterContent
    },
    capacity: (suction) => (finiteSuction(suction) > 0 ? range * meanOf(pores, fallAt, suction) : 0) as WaterCapacity,
    suction: (waterContent) =>
      reachable(suctionAt(pores, logSaturation(numberIn(waterContent, held), residual, saturated)), waterContent, held),
    relativeConductivity: (suction) => (finiteSuction(suction) > 0 ? conductivityAt(pores, l, suction) : 1) as Share,
  }
}

/** Two families of pores, with what each adds to the conductivity where it is full. */
interface Pores {
  readonly coarseShare: number
  readonly coarse: Curve
  readonly fine: Curve
  readonly coarseConducts: number
  readonly fineConducts: number
}

/** A property of the pore space, from that of either family. */
function meanOf({ coarseShare: w, coarse, fine }: Pores, f: (curve: Curve, s: number) => number, s: number): number {
  return w * f(coarse, s) + (1 - w) * f(fine, s)
}

/** Suction at which the logarithm of the effective saturation is so much. */
function suctionAt(pores: Pores, logS: number): number {
  if (logS === 0) return 0
  // Between the suctions at which each family alone would be as full.
  const [a, b] = [logSuctionOf(pores.coarse, logS), logSuctionOf(pores.fine, logS)]
  // Near saturation what is lacking has more digits than what is there.
  const lacking = logS > -Math.LN2
  const target = lacking ? Math.log(-Math.expm1(logS)) : logS
  const part = lacking ? lackAt : saturationAt
  const sign = lacking ? 1 : -1
  const high = Math.min(Math.max(a, b) + 1e-6, MAX)
  // Still wetter than asked at the largest suction there is.
  if (Math.min(a, b) >= high || sign * (Math.log(meanOf(pores, part, Math.exp(high))) - target) < 0) return Infinity
  const t = rootBetween(
    (x) => {
      const s = Math.exp(x)
      const value = meanOf(pores, part, s)
      return [Math.log(value) - target, (sign * s * meanOf(pores, fallAt, s)) / value]
    },
    Math.min(a, b) - 1e-6,
    high,
  )
  return Math.exp(t)
}

function conductivityAt(pores: Pores, poreConnection: number, s: number): number {
  const { coarseShare: w, coarse, fine, coarseConducts, fineConducts } = pores
  // Through logarithms, because a negative exponent of a saturation that underflows must not become infinite.
  const a = Math.log(w) + logSaturationAt(coarse, s)
  const b = Math.log(1 - w) + logSaturationAt(fine, s)
  const logS = Math.max(a, b) + Math.log1p(Math.exp(-Math.abs(a - b)))
  const part =
    (coarseConducts * conductingPart(coarse, s) + fineConducts * conductingPart(fine, s)) /
    (coarseConducts + fineConducts)
  return Math.exp(poreConnection * logS + 2 * Math.log(part))
}

function familyOf({ alpha, n }: PoreFamily): Curve {
  return { logAlpha: Math.log(checkAlpha(alpha)), n: checkExponent('n', n, 1), m: 1 - 1 / n }
}

/** One less the effective saturation, with all digits near saturation. */
function lackAt(curve: Curve, suction: number): number {
  return -Math.expm1(logSaturationAt(curve, suction))
}
