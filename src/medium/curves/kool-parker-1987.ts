import type { InverseSuction } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { ALPHA_RATIO } from '../domains.js'
import { checkAlpha } from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import { type VanGenuchtenParameters, vanGenuchten1980 } from './van-genuchten-1980.js'

/** A drying curve and how much easier the medium lets go of water when it is wetted. */
export interface DryingCurve extends VanGenuchtenParameters {
  /** Alpha of wetting over alpha of drying; 2, left out, where it was not measured. Unit: 1. Range: [1, ∞). */
  readonly alphaRatio?: number
}

/**
 * Main wetting curve from the main drying curve: the same curve with a larger alpha. At one suction a rewetted medium holds less
 * than one that has drained, so a dry container does not come back to the water content that its drying curve promises.
 *
 * @equation `\alpha_w = r \, \alpha_d, \quad r = 2`
 * @returns The wetting curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated.
 * @validity A rule for mineral soils; water-repellent media such as dry peat and bark can differ far more.
 * @source kool-1987; the ratio checked in an independent open restatement, which also takes 2 where none is given
 * @example
 * const wetting = wettingCurveKoolParker1987({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * wetting.waterContent(centimetresOfSuction(10)) // => 0.6002172
 */
export function wettingCurveKoolParker1987(input: DryingCurve): ConductiveModel {
  const { alphaRatio = 2, ...drying } = optionsOf(input)
  const ratio = numberIn(alphaRatio, ALPHA_RATIO, 'alphaRatio')
  return vanGenuchten1980({ ...drying, alpha: (checkAlpha(drying.alpha) * ratio) as InverseSuction })
}
