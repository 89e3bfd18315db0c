import { answerOf } from '../../quantity/answer.js'
import { SUBSTRATE, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { RUN_TIME, USE_RATE } from '../domains.js'
import type { PlantsAtWork } from '../terms.js'

/** A container without irrigation. */
export interface TimeToLevelInput extends PlantsAtWork {
  /** Water content that matters: a refill point, a stop point. Unit: m³/m³. Range: [0, 1]. */
  readonly level: WaterContent
}

/**
 * Time until a container that is not watered falls to a level, at constant use; zero when it is there already. Plants that begin to
 * wilt take less, so that the end comes rather later than this.
 *
 * @equation `t = \frac{\max(0, \theta - \theta_l) \, V_s}{U}`
 * @returns Time until the level. Unit: s.
 * @source definition: water balance of the container
 * @example
 * const slab = { waterContent: waterContent(0.55), substrateVolume: litres(3.75), use: litresPerHour(0.18) }
 * inHours(timeToLevel({ ...slab, level: waterContent(0.45) })) // => 2.08333
 */
export function timeToLevel(input: TimeToLevelInput): Duration {
  requireObject(input, 'input')
  const above = Math.max(
    0,
    numberIn(input.waterContent, WATER_CONTENT, 'waterContent') - numberIn(input.level, WATER_CONTENT, 'level'),
  )
  return answerOf(
    ((above * numberIn(input.substrateVolume, SUBSTRATE, 'substrateVolume')) / numberIn(input.use, USE_RATE, 'use')) *
      3600,
    'use',
  ) as Duration
}

/** A container that was not watered for a time. */
export interface WaterContentAfterUseInput extends PlantsAtWork {
  /** How long they took it. Unit: s. Range: [0, ∞). */
  readonly time: Duration
}

/**
 * Water content of a container that was not watered for a time, at constant use.
 *
 * @equation `\theta' = \theta - \frac{U t}{V_s}`
 * @returns Water content afterwards. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, `InputError` when more would be taken than there is.
 * @source definition: water balance of the container
 * @example
 * const slab = { waterContent: waterContent(0.55), substrateVolume: litres(3.75), use: litresPerHour(0.18) }
 * waterContentAfterUse({ ...slab, time: hours(4.5) }) // => 0.334
 */
export function waterContentAfterUse(input: WaterContentAfterUseInput): WaterContent {
  requireObject(input, 'input')
  const taken = (numberIn(input.use, USE_RATE, 'use') * numberIn(input.time, RUN_TIME, 'time')) / 3600
  const left =
    numberIn(input.waterContent, WATER_CONTENT, 'waterContent') -
    taken / numberIn(input.substrateVolume, SUBSTRATE, 'substrateVolume')
  if (left < 0)
    throw new InputError('time', `plants would take ${taken} L of less water`, 'use falls as a container dries')
  return left as WaterContent
}
