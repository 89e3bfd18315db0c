import { requireObject } from '../../quantity/guard.js'
import { checkAlpha, checkExponent } from './curve-limits.js'
import { mualemOfFreeExponents } from './mualem-free-exponents.js'
import type { RetentionModel } from './retention-model.js'
import { retentionOf } from './retention-of.js'
import type { PoreConnection, SuctionExponent, SuctionScale, WaterLimits } from './terms.js'

/** The numbers of a five-parameter retention curve. */
export interface FiveParameterRetention extends WaterLimits, PoreConnection, SuctionScale, SuctionExponent {
  /** Exponent of the whole, free of n. Unit: 1. Range: (0, ∞). */
  readonly m: number
}

/**
 * Five-parameter retention curve for horticultural media: the form of van Genuchten with both exponents free.
 *
 * Where the exponent of the suction is above 1 it has Mualem's conductivity, through the incomplete beta function; up to 1 it has
 * none. That conductivity is a prediction which nobody compared with measurements on such media.
 *
 * @equation `\theta = \theta_r + (\theta_s - \theta_r) \left(1 + (\alpha s)^n\right)^{-m}`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated, or when the pore connection
 * is so negative that the conductivity would rise as the medium dries.
 * @source milks-1989a; that the variable is the suction itself is an assumption [not confirmed, source not seen]
 * @source leao-2023 (conductivity)
 * @example
 * const medium = milksFontenoLarson1989({
 *   residual: waterContent(0.15),
 *   saturated: waterContent(0.9),
 *   alpha: perCentimetre(0.12),
 *   n: 1.7,
 *   m: 0.6,
 * })
 * medium.waterContent(centimetresOfSuction(50)) // => 0.26728496
 */
export function milksFontenoLarson1989(parameters: FiveParameterRetention): RetentionModel {
  requireObject(parameters, 'parameters')
  const { residual, saturated, alpha, poreConnection = 0.5 } = parameters
  const n = checkExponent('n', parameters.n)
  const m = checkExponent('m', parameters.m)
  const curve = { logAlpha: Math.log(checkAlpha(alpha)), n, m }
  return {
    kind: 'milks-fonteno-larson-1989',
    parameters: { residual, saturated, alpha, n, m, poreConnection },
    ...retentionOf(curve, residual, saturated),
    ...mualemOfFreeExponents(curve, poreConnection),
  }
}
