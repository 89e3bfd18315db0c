import { answerOf } from '../../quantity/answer.js'
import type { GroundFraction, LeafAreaIndex } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { EXTINCTION, GROUND_COVER, LEAF_AREA } from '../domains.js'
import type { Extinction, LeafArea } from '../terms.js'

/** A cover seen from above. */
export interface LeafAreaFromCoverInput extends Extinction {
  /** Share of the ground under leaves. Unit: 1. Range: [0, 0.999]. */
  readonly cover: GroundFraction
}

/**
 * Leaf area index that hides a share of the ground.
 *
 * @equation `LAI = \frac{-\ln(1 - f_c)}{k}`
 * @returns Leaf area index. Unit: 1.
 * @validity Leaves spread evenly; from 90 % of cover on the answer is loose.
 * @source monsi-1953; the default of 0.7 as in allen-1998, Eq. 97; measured by cover: cauliflower 0.60 to 0.70, tomato 0.75 to 0.85 (campillo-2010)
 * @example
 * leafAreaFromCover({ cover: percent(75) }) // => 1.98
 */
export function leafAreaFromCover(input: LeafAreaFromCoverInput): LeafAreaIndex {
  const { cover, extinction = 0.7 } = optionsOf(input)
  return answerOf(
    -Math.log1p(-numberIn(cover, GROUND_COVER, 'cover')) / numberIn(extinction, EXTINCTION, 'extinction'),
    'extinction',
  ) as LeafAreaIndex
}

/** Leaves and how they catch light. */
export interface InterceptedFractionInput extends Extinction, LeafArea {}

/**
 * Share of the radiation that leaves catch before it reaches the ground.
 *
 * @equation `f = 1 - e^{-k\,LAI}`
 * @returns Share. Unit: 1.
 * @source monsi-1953; the default as in `leafAreaFromCover()`
 * @example
 * interceptedFraction({ leafArea: leafAreaIndex(3) }) // => 0.878
 */
export function interceptedFraction(input: InterceptedFractionInput): GroundFraction {
  const { leafArea, extinction = 0.7 } = optionsOf(input)
  return -Math.expm1(
    -numberIn(extinction, EXTINCTION, 'extinction') * numberIn(leafArea, LEAF_AREA, 'leafArea'),
  ) as GroundFraction
}
