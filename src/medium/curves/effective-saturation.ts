import type { DegreeOfSaturation, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { checkLimits } from './curve-limits.js'
import type { WaterLimits } from './terms.js'

/** A water content between the limits of a curve. */
export interface WaterContentBetweenLimits extends WaterLimits {
  /** Water content, from residual to saturated. Unit: m³/m³. Range: any. */
  readonly waterContent: WaterContent
}

/**
 * Effective saturation: how far a water content is from residual to saturated. It is not the degree of saturation, which counts
 * from zero water.
 *
 * @equation `S_e = \frac{\theta - \theta_r}{\theta_s - \theta_r}`
 * @returns Effective saturation. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when residual is not below saturated.
 * @source van-genuchten-1980, Eq. 2
 * @example
 * effectiveSaturation({
 *   waterContent: waterContent(0.15),
 *   residual: waterContent(0.078),
 *   saturated: waterContent(0.43),
 * }) // => 0.2045455
 */
export function effectiveSaturation(input: WaterContentBetweenLimits): DegreeOfSaturation {
  const { waterContent, residual, saturated } = optionsOf(input)
  checkLimits(residual, saturated)
  numberIn(
    waterContent,
    {
      quantity: 'water content',
      unit: 'm³/m³',
      min: residual,
      max: saturated,
      ends: '[]',
      hint: 'a water content outside the limits of the curve has no effective saturation',
    },
    'waterContent',
  )
  return ((waterContent - residual) / (saturated - residual)) as DegreeOfSaturation
}
