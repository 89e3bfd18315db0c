import { answerOf } from '../../quantity/answer.js'
import { DRAINED, SCALE_MASS } from '../../quantity/domains.js'
import type { Area, Mass, Volume, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { APPLIED, WETTED_AREA } from '../domains.js'

/** Two weighings and the water between them. */
export interface WaterUseFromWeighingInput {
  /** Mass at the beginning. Unit: g. Range: [0, ∞). */
  readonly before: Mass
  /** Mass at the end, with fruit that was picked. Unit: g. Range: [0, ∞). */
  readonly after: Mass
  /** Water applied between. Unit: L. Range: [0, ∞). */
  readonly applied: Volume
  /** Drain between, if it left the scale. Unit: L. Range: [0, ∞). */
  readonly drained: Volume
}

/**
 * Water that plants and surface gave to the air, from two weighings of a container.
 *
 * Growth between the weighings makes the use look smaller by its mass. A negative use is a fault of scale, meter or jug and is
 * returned as it is.
 *
 * @equation `ET = \frac{m_0 - m_1}{1\,\text{kg/L}} + I - D`
 * @returns Water used. Unit: L.
 * @source definition: water balance of the container; 1 kg of water is 1 L
 * @example
 * waterUseFromWeighing({
 *   before: kilograms(12.4),
 *   after: kilograms(12.05),
 *   applied: litres(1.2),
 *   drained: litres(0.22),
 * }) // => 1.33
 */
export function waterUseFromWeighing(input: WaterUseFromWeighingInput): Volume {
  requireObject(input, 'input')
  const { before, after, applied, drained } = input
  const lost = (numberIn(before, SCALE_MASS, 'before') - numberIn(after, SCALE_MASS, 'after')) / 1000
  return (lost + numberIn(applied, APPLIED, 'applied') - numberIn(drained, DRAINED, 'drained')) as Volume
}

/** Two weighings, the water between them, and the ground that the plant covers. */
export interface WaterUseDepthFromWeighingInput extends WaterUseFromWeighingInput {
  /** Ground that belongs to the container. Unit: m². Range: (0, ∞). */
  readonly area: Area
}

/**
 * Water used as a depth over the ground that belongs to a weighed container.
 *
 * @equation `ET = \frac{m_0 - m_1 + I - D}{A}`
 * @returns Depth of water used. Unit: mm.
 * @source definition: water balance of the container; 1 mm is 1 L/m²
 * @example
 * waterUseDepthFromWeighing({
 *   before: kilograms(12.4),
 *   after: kilograms(12.05),
 *   applied: litres(1.2),
 *   drained: litres(0.22),
 *   area: squareMetres(0.4),
 * }) // => 3.325
 */
export function waterUseDepthFromWeighing(input: WaterUseDepthFromWeighingInput): WaterDepth {
  requireObject(input, 'input')
  return answerOf(waterUseFromWeighing(input) / numberIn(input.area, WETTED_AREA, 'area'), 'area') as WaterDepth
}
