import type { WateringClock } from '../state/state.js'
import { knowsPace } from './known-pace.js'
import { SLOWEST } from './trembling-clock.js'

/** A clock that stands longer than this between two steps, or for more decisions, teaches no more: programs cut times to minutes, quarters or hours. Unit: s. */
const MAX = 3600
/** A clock that stood still is right again where it differs from the count by no more: as `MENDED` in `clock.ts`. Unit: s. */
const CLOSE = 1200

/**
 * Decisions in a row with the same moment that are no fault. A message may come twice, and many programs take the time of the newest message, or
 * cut it to minutes or quarters of an hour: three times as many as such a clock showed before.
 */
export function maxSame({ usual }: WateringClock): number {
  return Math.max(2, 3 * usual)
}

/** Whether a step of the clock makes good what decisions with the same moment were counted for. */
export function isCaughtUp({ same, pace, paces }: WateringClock, step: number): boolean {
  if (same === 0 || !knowsPace({ paces })) return false
  const due = (same + 1) * pace
  return Math.abs(step - due) <= Math.min(CLOSE, due / 4)
}

/** What is known of decisions with the same moment once the clock has moved on. */
export function passRun(clock: WateringClock, step: number): Pick<WateringClock, 'lent' | 'same' | 'usual'> {
  const max = Math.min(MAX, Math.ceil(MAX / Math.max(1e-6, clock.pace)))
  return {
    lent: clock.lent - paidWith(clock, step),
    same: 0,
    usual: Math.min(max, Math.max(clock.same, clock.usual - 1)),
  }
}

/**
 * What a step pays back of the time that was lent: all it can where it stands for several decisions, and else little, for time must not stand still while
 * the valve is open.
 */
export function paidWith({ lent, same }: Pick<WateringClock, 'lent' | 'same'>, step: number): number {
  return Math.min(lent, same > 0 ? step : (1 - SLOWEST) * step)
}
