import { logIncompleteBeta } from '../../numerics/incomplete-beta.js'
import type { Share } from '../../quantity/generated/kinds.js'
import { checkConnection, finiteSuction } from './curve-limits.js'
import type { RetentionModel } from './retention-model.js'
import { type Curve, logPower, softplus } from './van-genuchten-form.js'

/**
 * Mualem's conductivity of a curve whose exponents are free of each other: his integral over the filled pores is the regularised
 * incomplete beta function of S^(1/m). For n up to 1 it diverges at saturation and there is no conductivity.
 */
export function mualemOfFreeExponents(
  curve: Curve,
  poreConnection: number,
): Pick<RetentionModel, 'relativeConductivity'> {
  const l = checkConnection(poreConnection, -2 - 2 / (curve.m * curve.n))
  if (curve.n <= 1) return {}
  const logFilled = logIncompleteBeta(curve.m + 1 / curve.n, 1 - 1 / curve.n)
  const logRelative = (suction: number) => {
    const x = logPower(curve, suction)
    return 2 * logFilled(-softplus(x), -softplus(-x)) - l * curve.m * softplus(x)
  }
  return {
    relativeConductivity: (suction) => (finiteSuction(suction) > 0 ? Math.exp(logRelative(suction)) : 1) as Share,
  }
}
