import type { SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { SOME_SUCTION } from '../domains.js'
import { checkExponent } from './curve-limits.js'
import { mualemOfFreeExponents } from './mualem-free-exponents.js'
import type { RetentionModel } from './retention-model.js'
import { retentionOf } from './retention-of.js'
import type { PoreConnection, SaturatedLimit } from './terms.js'

/** The numbers of a log-logistic retention curve. */
export interface LogLogisticRetention extends SaturatedLimit, PoreConnection {
  /** Water content that high suction leaves. Unit: m³/m³. Range: [0, 1). */
  readonly residual: WaterContent
  /** Suction at which half of the water between the two has gone. Unit: cm. Range: (0, ∞). */
  readonly halfSuction: SuctionHead
  /** Exponent of the suction. Unit: 1. Range: (0, ∞). */
  readonly slope: number
}

/**
 * Log-logistic retention curve of four parameters, used for bark media.
 *
 * Where the exponent of the suction is above 1 it has Mualem's conductivity, through the incomplete beta function; up to 1 it has
 * none. That conductivity is a prediction which nobody compared with measurements on such media.
 *
 * @equation `\theta = \theta_r + \frac{\theta_s - \theta_r}{1 + (s / s_{50})^b}`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source altland-2010 (the choice of the model was read in its abstract; the algebra is that of the usual log-logistic [not confirmed, source not seen])
 * @source leao-2023 (conductivity)
 * @example
 * const medium = logLogisticRetention({
 *   residual: waterContent(0.35),
 *   saturated: waterContent(0.78),
 *   halfSuction: centimetresOfSuction(6),
 *   slope: 1.9,
 * })
 * medium.waterContent(centimetresOfSuction(6)) // => 0.565
 */
export function logLogisticRetention(parameters: LogLogisticRetention): RetentionModel {
  requireObject(parameters, 'parameters')
  const { residual, saturated, halfSuction, poreConnection = 0.5 } = parameters
  const slope = checkExponent('slope', parameters.slope)
  const curve = { logAlpha: -Math.log(namedIn(halfSuction, SOME_SUCTION, 'halfSuction')), n: slope, m: 1 }
  return {
    kind: 'log-logistic',
    parameters: { residual, saturated, halfSuction, slope, poreConnection },
    ...retentionOf(curve, residual, saturated),
    ...mualemOfFreeExponents(curve, poreConnection),
  }
}
