import { knowsPace } from '../clock/known-pace.js'
import type { WateringClock, WateringTally } from '../state/state.js'

/** Decisions from which on their pace is known: the mean of 64 that scatter by half is good to a sixteenth. */
export const WELL_KNOWN = 64
/** Decisions of which a pace that is known well is the mean: three days of decisions each minute, so that a clock that runs fast for a night teaches little. Own judgement. */
const MEMORY = 4096
/** Where the clock gains no more than this on decisions, it is right and they come a little less often. Own judgement. */
export const EVEN = 1.1
/** Decisions that come faster for a shorter time teach no pace: a program asks each second while the valve is open, or while somebody looks. Own judgement. Unit: s. */
const SPELL = 86400
/** No longer step teaches a pace that is not known yet. Unit: s. */
const FIRST_STEP = 3600

/** Whether decisions have come for long enough. */
export function isKnownPace({ decisions }: Pick<WateringTally, 'decisions'>): boolean {
  return decisions >= WELL_KNOWN
}

/** The pace of decisions over a long time. It follows after a day in which they come faster, and hardly where the clock says that they come less often. */
export function usualPace({ pace, decisions, sooner }: WateringTally, passed: number, clock: WateringClock) {
  if (!knowsPace(clock)) return { pace, decisions, sooner }
  if (isSooner({ pace, decisions }, clock))
    return sooner + passed < SPELL
      ? { pace, decisions, sooner: sooner + passed }
      : { pace: clock.pace, decisions: WELL_KNOWN, sooner: 0 }
  if (isSlower({ pace, decisions }, clock, EVEN)) return { pace, decisions, sooner: 0 }
  const isKnown = isKnownPace({ decisions })
  const taken = Math.min(passed, isKnown ? 8 * pace : FIRST_STEP)
  // By their time: a few that come faster count for little.
  const share = isKnown ? Math.min(1, taken / pace) / MEMORY : 1 / (decisions + 1)
  return { pace: pace + (taken - pace) * share, decisions: Math.min(MEMORY, decisions + 1), sooner: 0 }
}

/** Whether decisions come much more often than they did. */
export function isSooner(tally: Pick<WateringTally, 'pace' | 'decisions'>, clock: WateringClock) {
  return isKnownPace(tally) && clock.pace < 0.7 * tally.pace
}

/** Whether decisions come so many times less often than they did, if the clock is right. */
export function isSlower(tally: Pick<WateringTally, 'pace' | 'decisions'>, clock: WateringClock, times: number) {
  return isKnownPace(tally) && clock.pace > times * tally.pace
}
