import { WATER_USE } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Share, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { LIGHT_OF_STEP, SHARE_WITHOUT_LIGHT } from '../domains.js'

/** What a course of demand is made from. */
export interface DemandCourseInput {
  /** Water that the plants of one container take in the whole course. Unit: L. Range: [0, ∞). */
  readonly total: Volume
  /** Light in each step, in any unit: only its shares count. Unit: any. Range: each in [0, ∞). */
  readonly light: ArrayLike<number>
  /** Share of the total that is spread evenly over all steps, day and night. Unit: 1. Range: [0, 1]. */
  readonly evenShare: Share
}

/**
 * The demand of a day in steps, spread with the light, with an even part for the dryness of the air by day and night.
 *
 * @equation `U_i = U \left( (1 - s) \frac{L_i}{\sum_j L_j} + \frac{s}{n} \right)`
 * @returns Water that the plants take in each step. Unit: L.
 * @throws `DomainError` outside the ranges, `InputError` when there is no step, or no light to spread the rest with.
 * @source common practice, no source: light drives most of the water use of a greenhouse crop
 * @example
 * demandCourse({ total: litres(1), light: [0, 1, 3, 0], evenShare: fraction(0.2) }) // => [0.05, 0.25, 0.65, 0.05]
 */
export function demandCourse(input: DemandCourseInput): Float64Array {
  requireObject(input, 'input')
  requireList(input.light, 'light')
  const { total, light, evenShare } = input
  numberIn(total, WATER_USE, 'total')
  numberIn(evenShare, SHARE_WITHOUT_LIGHT, 'evenShare')
  const n = light.length
  if (n === 0) throw new InputError('light', 'has no step', 'give the light of each step')
  let sum = 0
  for (let i = 0; i < n; i++) sum += numberIn(light[i]!, LIGHT_OF_STEP, 'light')
  if (sum === 0 && evenShare < 1)
    throw new InputError('light', 'is dark throughout', 'give an even share of 1, or the light of a day')
  return Float64Array.from(
    { length: n },
    (_, i) => total * ((sum > 0 ? ((1 - evenShare) * light[i]!) / sum : 0) + evenShare / n),
  )
}
