import { clockMode } from '../clock/clock.js'
import { knowsPace, maxStep } from '../clock/known-pace.js'
import { HIDES } from '../clock/rarer-decisions.js'
import type { Limits } from '../settings/checked-settings.js'
import { inHours } from '../settings/hours.js'
import { passTime } from '../state/given-water.js'
import type { WateringClock, WateringState, WateringTally, WateringValve } from '../state/state.js'
import { roomAtPace } from './pace.js'
import { PART, runFor } from './run-time.js'
import { isKnownPace } from './tally-pace.js'

/** So much of its excess over one keeps a step that was longest: half of it goes in a day of decisions each minute. Own judgement. */
const KEEPS = 0.9995
/** The longest step scatters by so much from one day to the next: own judgement. */
const SCATTER = 1.3
/** One long step teaches by no more of itself that decisions come unevenly, after the first day: one leap by night excuses nothing. Own judgement. */
const TEACHES = 1.5
/** So many long steps are excused since an opening was kept; a machine that fails at each opening keeps none. Own judgement. */
const TRUSTED = 4
/** After those, water that was due is held back three times more before each long step is charged. Own judgement. */
export const EXCUSED = 7
/** No pause after missing decisions is longer than this and the rest: two decisions of the rarest pace. Unit: s. */
export const MAX_PAUSE = 7200
/** No burst is further from the next: more may be an old state. Own judgement. Unit: s. */
const MAX_BURST = 1500
/** In a gap of this length there may have been allowed hours, whatever the hours before and after. Unit: s. */
const LONG = 21600

/** Time before a decision of which nothing is known, because the clock went on by far more than decisions are apart, or back. Unit: s. */
export function gapBefore({ clock: before, tally, counters }: WateringState, clock: WateringClock): number {
  if (before.raw === null || clock.raw === null) return 0
  const step = clock.raw - before.raw
  // Where the pace is not known yet, a leap begins it again: an old state may be any time old.
  if (!knowsPace(before)) return step !== 0 && clock.steady === 0 ? 86400 : 0
  if (before.steady < 3 && clockMode(clock) === 'counts') return 0
  if (step < 0) return -step
  // The same old state, taken up again and again, teaches another pace: where no meter tells what ran, that of long ago counts too.
  const pace = counters.metered === null ? usualPace(before, tally) : before.pace
  const usual = (before.same + 1) * pace
  // Decisions that come in bursts leave gaps that are usual for them.
  const burst = Math.min(maxStep((before.same + 1) * before.pace), SCATTER * before.uneven * usual, MAX_BURST)
  const known = Math.max(Math.min(4 * usual, usual + 600), burst)
  return Math.max(0, step - known)
}

/** How a step of the clock compares with the pace of decisions; zero where that is not known. */
function stepInPaces(before: WateringClock, { raw }: WateringClock, tally: WateringTally): number {
  if (before.raw === null || raw === null || before.steady < 2 || before.paces < 2) return 0
  // The pace of long ago counts too: decisions that are lost again and again teach another.
  return Math.max(0, raw - before.raw) / ((before.same + 1) * usualPace(before, tally))
}

function usualPace({ pace }: WateringClock, tally: WateringTally): number {
  return Math.max(1e-6, isKnownPace(tally) ? Math.min(pace, tally.pace) : pace)
}

/** Whether a decision between the last one that is remembered and this one could have opened the valve. */
function couldOpen({ clock: before, valve }: WateringState, clock: WateringClock, limits: Limits): boolean {
  const passed = (clock.raw ?? 0) - (before.raw ?? 0)
  const end = valve.opened === null ? valve.closed : valve.opened + valve.duration
  if (before.base === null || before.elapsed + passed < end + Math.max(limits.rest, limits.lag)) return false
  const local = before.base + before.elapsed + limits.ahead
  return passed > LONG || inHours(limits.hours, local, 0, 0) || inHours(limits.hours, local + passed, 0, 0)
}

/** The same, with room for the smallest part of a shot: without it nothing was opened. */
function couldGive(state: WateringState, clock: WateringClock, limits: Limits): boolean {
  if (!couldOpen(state, clock, limits)) return false
  const min = limits.closesByItself ? PART * limits.shot : limits.shot
  return roomAtPace(passTime(state.water, clock.elapsed), clock.elapsed, clock.base, limits) >= min
}

/**
 * Water of decisions that are missing, as where the machine fails each time it switches the valve, before the state is stored: each of them may have
 * opened it. Unit: L.
 */
export function missedWater(state: WateringState, clock: WateringClock, limits: Limits): number {
  const steps = stepInPaces(state.clock, clock, state.tally)
  if (steps <= HIDES || isExcused(state, clock, steps) || !couldGive(state, clock, limits)) return 0
  const pace = usualPace(state.clock, state.tally)
  const run = runFor(state.counters.delivery, state.clock, limits)
  const each = limits.closesByItself ? Math.min(pace, run) : pace
  // After a longer time the clock has leapt, and nothing was opened by a state that is as old as that.
  const decisions = Math.min(Math.round(steps) - 1, maxStep(pace) / pace)
  return decisions * each * limits.litresPerSecond
}

/**
 * Whether a step that may hide an opening is one of those that come anyway. They do where decisions have become rarer, and otherwise as long as
 * openings are kept.
 */
function isExcused({ clock: before }: WateringState, clock: WateringClock, steps: number): boolean {
  return steps <= SCATTER * before.uneven && (before.unproven < EXCUSED || isUsual(before, clock))
}

/** Whether a step is no longer than the pace that the clock has learned, though others were shorter long ago. */
function isUsual(before: WateringClock, { raw }: WateringClock): boolean {
  return (raw ?? 0) - (before.raw ?? 0) <= HIDES * (before.same + 1) * before.pace
}

/** Whether this decision opens nothing: had the one before it opened the valve it would be missing, and none has been kept for long. */
export function isHeld(state: WateringState, clock: WateringClock, limits: Limits): boolean {
  const steps = stepInPaces(state.clock, clock, state.tally)
  if (steps <= HIDES || clock.unproven < TRUSTED || isUsual(state.clock, clock)) return false
  return isExcused(state, clock, steps) && couldGive(state, clock, limits)
}

/** How uneven decisions come, learned where none of them can have opened the valve and be missing; and what was excused since an opening was kept. */
export function passUneven(
  state: WateringState,
  clock: WateringClock,
  limits: Limits,
): Pick<WateringClock, 'uneven' | 'unproven'> {
  const { uneven: before, unproven: since } = state.clock
  const kept = 1 + (before - 1) * KEEPS
  const unproven = state.valve.opened === null ? since : 0
  // A step that the clock itself took for a leap says nothing of decisions.
  if (clock.steady === 0) return { uneven: kept, unproven }
  const steps = stepInPaces(state.clock, clock, state.tally)
  const isLong = steps > HIDES && !isUsual(state.clock, clock)
  if (couldOpen(state, clock, limits))
    return { uneven: kept, unproven: isLong && unproven < TRUSTED ? unproven + 1 : unproven }
  const taught = clock.elapsed < 86400 || !isLong ? steps : Math.min(steps, TEACHES * before)
  // Each night leaves it one to try again.
  const isNight = clock.base !== null && !inHours(limits.hours, clock.base + clock.elapsed + limits.ahead, 0, 0)
  return { uneven: Math.max(kept, taught), unproven: isNight ? Math.min(EXCUSED - 1, unproven) : unproven }
}

/** The clock after a decision that was held though water was due. */
export function heldBack(clock: WateringClock): WateringClock {
  return { ...clock, unproven: Math.min(EXCUSED, clock.unproven + 1) }
}

/**
 * From when on the rest counts after decisions that are missing: what they may have opened is closed only now. The next decision opens nothing, so that
 * it is not missing as well: of decisions of which each second one is, nobody could tell that any are. Unit: s.
 */
export function pausedUntil({ closed }: WateringValve, { elapsed, pace }: WateringClock, { rest }: Limits): number {
  return Math.max(closed, elapsed + Math.min(MAX_PAUSE, Math.max(0, HIDES * pace - rest)))
}
