import { answerOf } from '../../quantity/answer.js'
import { DRAIN_FRACTION, WATER_USE } from '../../quantity/domains.js'
import type { Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import type { DrainWish } from '../terms.js'

/** What the plants took since the last shot, and how much of the next should drain. */
export interface ShotFromUseInput extends DrainWish {
  /** Water that the plants of the container took since the last shot. Unit: L. Range: [0, ∞). */
  readonly use: Volume
}

/**
 * Volume of a shot that replaces what the plants took since the last one and lets a wanted share of itself drain.
 *
 * @equation `V = \frac{U}{1 - f}`
 * @returns Volume of the shot. Unit: L.
 * @source definition: water balance of the container: what is applied is used or drains
 * @example
 * inMillilitres(shotFromUse({ use: millilitres(90), drainFraction: percent(25) })) // => 120
 */
export function shotFromUse(input: ShotFromUseInput): Volume {
  requireObject(input, 'input')
  const { use, drainFraction } = input
  return answerOf(
    numberIn(use, WATER_USE, 'use') / (1 - numberIn(drainFraction, DRAIN_FRACTION, 'drainFraction')),
    'use',
  ) as Volume
}
