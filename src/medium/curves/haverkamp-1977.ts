import { domainWith } from '../../quantity/domain.js'
import type { Share } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { HAVERKAMP_COEFFICIENT } from '../domains.js'
import { checkExponent, finiteSuction } from './curve-limits.js'
import type { ConductiveModel } from './retention-model.js'
import { retentionOf } from './retention-of.js'
import type { WaterLimits } from './terms.js'
import { logPower, softplus } from './van-genuchten-form.js'

/** The numbers of a Haverkamp curve, for suctions in centimetres. */
export interface HaverkampParameters extends WaterLimits {
  /** Coefficient of the water content. Unit: cm^β. Range: (0, ∞). */
  readonly alpha: number
  /** Exponent of the suction in the water content. Unit: 1. Range: (0, ∞). */
  readonly beta: number
  /** Coefficient of the conductivity, the A of the paper. Unit: cm^γ. Range: (0, ∞). */
  readonly conductivityA: number
  /** Exponent of the suction in the conductivity, the γ of the paper. Unit: 1. Range: (0, ∞). */
  readonly conductivityGamma: number
}

/**
 * Retention curve and conductivity of Haverkamp and co-workers (1977), with coefficients for suctions in centimetres.
 *
 * The sand of the paper is the usual test of a simulation of flow. The two exponents are independent, so the conductivity was
 * measured and not predicted from the water content.
 *
 * @equation `\theta = \theta_r + \frac{\alpha (\theta_s - \theta_r)}{\alpha + s^{\beta}}, \quad K / K_s = \frac{A}{A + s^{\gamma}}`
 * @returns The curve.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated.
 * @source haverkamp-1977
 * @example
 * const sand = haverkamp1977({
 *   residual: waterContent(0.075),
 *   saturated: waterContent(0.287),
 *   alpha: 1.611e6,
 *   beta: 3.96,
 *   conductivityA: 1.175e6,
 *   conductivityGamma: 4.74,
 * })
 * sand.waterContent(centimetresOfSuction(61.5)) // => 0.0998507
 * sand.relativeConductivity(centimetresOfSuction(20.7)) // => 0.404667
 */
export function haverkamp1977(parameters: HaverkampParameters): ConductiveModel {
  const { residual, saturated, alpha, beta, conductivityA, conductivityGamma } = optionsOf(parameters)
  const retention = powerOver('alpha', alpha, 'beta', beta)
  const conduction = powerOver('conductivityA', conductivityA, 'conductivityGamma', conductivityGamma)
  return {
    kind: 'haverkamp-1977',
    parameters: { residual, saturated, alpha, beta, conductivityA, conductivityGamma },
    ...retentionOf(retention, residual, saturated),
    relativeConductivity: (suction) =>
      (finiteSuction(suction) > 0 ? Math.exp(-softplus(logPower(conduction, suction))) : 1) as Share,
  }
}

/** a / (a + sᵇ) as the curve (1 + (s / a^(1/b))ᵇ)⁻¹. */
function powerOver(nameOfCoefficient: string, coefficient: number, nameOfExponent: string, exponent: number) {
  const n = checkExponent(nameOfExponent, exponent)
  const unit = nameOfExponent === 'beta' ? 'cm^β' : 'cm^γ'
  const a = numberIn(
    coefficient,
    domainWith(HAVERKAMP_COEFFICIENT, { quantity: nameOfCoefficient, unit }),
    nameOfCoefficient,
  )
  return { logAlpha: -Math.log(a) / n, n, m: 1 }
}
