import { answerOf } from '../../quantity/answer.js'
import { DRAIN_FRACTION, WATER_USE } from '../../quantity/domains.js'
import type { Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { SHOT } from '../domains.js'
import type { DrainWish } from '../terms.js'

/** What a number of shots is found from. All volumes are for the same container. */
export interface ShotsPerDayInput extends DrainWish {
  /** Water that the plants take in the day. Unit: L. Range: [0, ∞). */
  readonly dailyUse: Volume
  /** Volume of one shot. Unit: L. Range: (0, ∞). */
  readonly shot: Volume
}

/**
 * Number of equal shots that replace a day's use and let a wanted share drain.
 *
 * @equation `n = \left\lceil \frac{U}{(1 - f)\,V} \right\rceil`
 * @returns Whole number of shots. Unit: 1.
 * @source definition: water balance of the container over a day
 * @example
 * shotsPerDay({ dailyUse: litres(3.4), shot: millilitres(400), drainFraction: percent(15) }) // => 10
 */
export function shotsPerDay(input: ShotsPerDayInput): number {
  requireObject(input, 'input')
  const needed =
    numberIn(input.dailyUse, WATER_USE, 'dailyUse') /
    (1 - numberIn(input.drainFraction, DRAIN_FRACTION, 'drainFraction'))
  // A quotient that is whole but for rounding must not cost a shot more.
  return answerOf(Math.max(0, Math.ceil(needed / numberIn(input.shot, SHOT, 'shot') - 1e-9)), 'shot')
}
