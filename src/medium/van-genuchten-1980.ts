import { InputError } from '../quantity/errors.js'
import { within } from '../quantity/guard.js'
import type { InverseSuction, WaterCapacity } from '../quantity/inverse-suction.js'
import type { Share } from '../quantity/share.js'
import type { Span } from '../quantity/span.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { WaterContent } from '../quantity/water-content.js'
import {
  type ConductiveModel,
  checkAlpha,
  checkLimits,
  finiteSuction,
  heldContents,
  reachable,
} from './retention-model.js'
import { conductingPart, fallOf, logSaturation, saturationOf, suctionOf } from './van-genuchten-form.js'

/** The numbers of a van Genuchten curve with m = 1 - 1/n. */
export interface VanGenuchtenParameters {
  /** Residual water content. Unit: m³/m³. Range: [0, 1). */
  readonly residual: WaterContent
  /** Saturated water content. Unit: m³/m³. Range: (0, 1]. */
  readonly saturated: WaterContent
  /** Scale of the suction. Unit: 1/cm. Range: (0, ∞). */
  readonly alpha: InverseSuction
  /** Exponent; the larger, the more uniform the pores. Unit: 1. Range: (1, ∞). */
  readonly n: number
  /** Exponent of pore connection and tortuosity in the conductivity, 0.5 unless it was fitted. Unit: 1. Range: (-∞, ∞). */
  readonly poreConnection?: number
}

const N: Span = {
  quantity: 'n',
  unit: '1',
  min: 1,
  max: Infinity,
  open: 'both',
  hint: 'n is above 1, for most media 1.1 to 4',
}
const CONNECTION: Span = {
  quantity: 'pore connection',
  unit: '1',
  min: -Infinity,
  max: Infinity,
  hint: 'leave it out for the usual 0.5',
}

/**
 * Retention curve of van Genuchten (1980) with Mualem's conductivity.
 *
 * ```math
 * S = \left(1 + (\alpha s)^n\right)^{-m}, \quad m = 1 - 1/n, \quad \theta = \theta_r + (\theta_s - \theta_r) S,
 * \quad K / K_s = S^l \left(1 - (1 - S^{1/m})^m\right)^2
 * ```
 *
 * The conductivity keeps its digits in the dry end, where the printed form cancels.
 *
 * @param parameters - The numbers of the curve.
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source van Genuchten, M. Th. (1980), Soil Science Society of America Journal 44:892-898, Eqs. 3, 8 and 21-23
 * @example
 * ```ts
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.045),
 *   saturated: waterContent(0.43),
 *   alpha: perCentimetre(0.145),
 *   n: 2.68,
 * })
 * medium.waterContent(centimetresOfSuction(10)) // => 0.214344
 * medium.relativeConductivity(centimetresOfSuction(10)) // => 0.0212212
 * ```
 */
export function vanGenuchten1980(parameters: VanGenuchtenParameters): ConductiveModel {
  const { residual, saturated, poreConnection: l = 0.5 } = parameters
  checkLimits(residual, saturated)
  const curve = { alpha: checkAlpha(parameters.alpha), n: within(parameters.n, N), m: 1 - 1 / parameters.n }
  within(l, CONNECTION)
  if (l * curve.m <= -2)
    throw new InputError(
      'poreConnection',
      `with ${l} the conductivity would rise as the medium dries`,
      `give more than ${-2 / curve.m} for this n`,
    )
  const held = heldContents(residual, saturated)
  const range = saturated - residual
  return {
    kind: 'van Genuchten 1980',
    parameters: { residual, saturated, alpha: curve.alpha, n: curve.n, poreConnection: l },
    saturated,
    residual,
    breakpoints: [],
    waterContent: (suction) =>
      (finiteSuction(suction) > 0 ? residual + range * saturationOf(curve, suction) : saturated) as WaterContent,
    capacity: (suction) => (finiteSuction(suction) > 0 ? range * fallOf(curve, suction) : 0) as WaterCapacity,
    suction: (content) =>
      reachable(suctionOf(curve, logSaturation(within(content, held), residual, saturated)), content, held),
    relativeConductivity: (suction) => (finiteSuction(suction) > 0 ? mualem(suction) : 1) as Share,
  }
  function mualem(suction: SuctionHead): number {
    return saturationOf(curve, suction) ** l * conductingPart(curve, suction) ** 2
  }
}
