import { answerOf } from '../../quantity/answer.js'
import { SATURATED_CONTENT, SOME_WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { BulkEC, PoreWaterEC, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { CONDUCTIVITY } from '../domains.js'
import type { BulkConductivity, PoreSolution, WetMedium } from '../terms.js'

/** What Mualem and Friedman need to know of a medium. */
export interface MediumOfMualemFriedman extends WetMedium {
  /** Water content of the saturated medium. Unit: m³/m³. Range: (0, 1]. */
  readonly saturated: WaterContent
}

/** The medium and the conductivity of its pore water. */
export interface PoreWaterOfMualemFriedman extends MediumOfMualemFriedman, PoreSolution {}

/** The medium and the conductivity of the whole. */
export interface BulkOfMualemFriedman extends MediumOfMualemFriedman, BulkConductivity {}

/**
 * Bulk electrical conductivity of a coarse medium from that of the pore water after Mualem and Friedman (1991).
 *
 * @equation `\sigma_b = \sigma_w\,\frac{\theta^{2.5}}{\theta_s}`
 * @returns Bulk conductivity. Unit: dS/m.
 * @throws `DomainError` outside the ranges; `InputError` when the water content exceeds the saturated one.
 * @validity Coarse media without conduction along surfaces.
 * @source mualem-1991
 * @example
 * bulkConductivityMualemFriedman1991({
 *   poreWater: decisiemensPerMetre(3),
 *   waterContent: waterContent(0.3),
 *   saturated: waterContent(0.45),
 * }) // => 0.328634
 */
export function bulkConductivityMualemFriedman1991(medium: PoreWaterOfMualemFriedman): BulkEC {
  return (numberIn(optionsOf(medium).poreWater, CONDUCTIVITY, 'poreWater') * openShare(medium)) as BulkEC
}

/**
 * Electrical conductivity of the pore water of a coarse medium from that of the whole after Mualem and Friedman (1991).
 *
 * @equation `\sigma_w = \sigma_b\,\frac{\theta_s}{\theta^{2.5}}`
 * @returns Conductivity of the pore water. Unit: dS/m.
 * @throws `DomainError` outside the ranges; `InputError` when the water content exceeds the saturated one.
 * @validity Coarse media without conduction along surfaces.
 * @source mualem-1991, solved for the pore water
 * @example
 * poreWaterConductivityMualemFriedman1991({
 *   bulk: decisiemensPerMetre(0.328634),
 *   waterContent: waterContent(0.3),
 *   saturated: waterContent(0.45),
 * }) // => 3.0000
 */
export function poreWaterConductivityMualemFriedman1991(medium: BulkOfMualemFriedman): PoreWaterEC {
  return answerOf(
    numberIn(optionsOf(medium).bulk, CONDUCTIVITY, 'bulk') / openShare(medium),
    'waterContent',
  ) as PoreWaterEC
}

function openShare(medium: MediumOfMualemFriedman): number {
  const waterContent = numberIn(medium.waterContent, SOME_WATER_CONTENT, 'waterContent')
  const saturated = numberIn(medium.saturated, SATURATED_CONTENT, 'saturated')
  if (waterContent > saturated)
    throw new InputError(
      'waterContent, saturated',
      `a water content of ${waterContent} is above the saturated ${saturated}`,
      'check which is which, and whether the calibration of the probe fits the medium',
    )
  return waterContent ** 2.5 / saturated
}
