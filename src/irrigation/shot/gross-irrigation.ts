import { answerOf } from '../../quantity/answer.js'
import type { Share, Volume, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { EFFICIENCY, NET_WATER } from '../domains.js'

/** Water that must reach the roots, and the share that does. */
export interface GrossIrrigationInput<Q extends Volume | WaterDepth> {
  /** Water that the roots must get. Unit: L or mm. Range: [0, ∞). */
  readonly net: Q
  /** Share of the water given that reaches them. Unit: 1. Range: (0, 1]. */
  readonly efficiency: Share
}

/**
 * Water to give so that enough of it reaches the roots. With the low-quarter uniformity as efficiency, the driest quarter of the
 * plants gets its share.
 *
 * Where drain is wanted and counted as a loss already, do not divide by both the efficiency and one less the drain fraction: that
 * counts the same water twice.
 *
 * @equation `G = \frac{N}{E_a}`
 * @returns Water to give, in the unit of the net water. Unit: L or mm.
 * @source brouwer-1989
 * @example
 * grossIrrigation({ net: millimetresOfDepth(4.5), efficiency: percent(90) }) // => 5
 */
export function grossIrrigation<Q extends Volume | WaterDepth>(input: GrossIrrigationInput<Q>): Q {
  requireObject(input, 'input')
  const { net, efficiency } = input
  return answerOf(numberIn(net, NET_WATER, 'net') / numberIn(efficiency, EFFICIENCY, 'efficiency'), 'efficiency') as Q
}
