import type { WateringClock } from '../state/state.js'
import { knowsPace, maxStep, STEPS_ALIKE } from './known-pace.js'

/**
 * So many steps in a row that are alike are no leaps, but decisions that became rarer: a clock that leaps does not leap four times by the same. Own
 * judgement; where it runs too fast instead, the count of decisions still bounds the water of a day.
 */
export const LONGS = 4
/** A step of so many paces hides a decision. Half of one is early or late. */
export const HIDES = 1.5
/** No more decisions come in one burst: a clock that leaps among more is no burst. Own judgement. */
const BURST = 8
const NOT_LONGER = { longer: 0, longs: 0 } as const
/** Steps are alike within this share of them: own judgement. */
const ALIKE = 0.25
/** No zone is decided on less often. Own judgement. Unit: s. */
const RAREST = 3600

/** Counts steps that are too long for the pace, and alike. */
export function passLonger(clock: WateringClock, step: number): Pick<WateringClock, 'longer' | 'longs'> {
  const { longer, longs, paces } = clock
  if (!knowsPace({ paces }) || step <= 0 || step > RAREST) return NOT_LONGER
  if (longs === 0 || Math.abs(step - longer) > ALIKE * longer) return { longer: step, longs: 1 }
  return { longer, longs: longs + 1 }
}

/**
 * The same at a step that is believed. Decisions that fail as they open the valve are followed by one that opens nothing: steps that hide one are not alike
 * in a row. Steps that are too long to be believed may have short ones in between: decisions come in bursts, as where each message asks for one.
 */
export function passStep(clock: WateringClock, step: number): Pick<WateringClock, 'longer' | 'longs'> {
  if (step > HIDES * (clock.same + 1) * clock.pace) return passLonger(clock, step)
  const isBurst = clock.steady < BURST && clock.longer > maxStep(clock.pace)
  return isBurst ? { longer: clock.longer, longs: clock.longs } : NOT_LONGER
}

/** The clock once decisions are known to come at another pace: it was right, and the count was not. What it went on by meanwhile counts for nothing. */
export function atNewPace(clock: WateringClock, now: number): WateringClock {
  const { elapsed, longer } = clock
  const right = { base: now - elapsed, agreed: elapsed, doubt: 0, vouched: 0, refused: null, byCount: 0, byClock: 0 }
  return { ...clock, ...right, ...learntFrom(longer) }
}

/** A pace that long steps which are alike have taught. */
export function learntFrom(longer: number): Pick<WateringClock, 'pace' | 'paces' | 'longer' | 'longs'> {
  return { pace: longer, paces: STEPS_ALIKE, ...NOT_LONGER }
}
