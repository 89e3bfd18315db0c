import { clockMode } from '../clock/clock.js'
import { hoursAllow } from '../clock/hours-allow.js'
import type { WateringReason } from '../findings/finding.js'
import type { ZoneLevel } from '../probes/zone-level.js'
import { isProven } from '../refill/doubt-gauge.js'
import { isStillFull } from '../refill/full-zone.js'
import type { Limits } from '../settings/checked-settings.js'
import { givenInDay, givenInLongDay, givenSince, SLOT } from '../state/given-water.js'
import type { WateringClock, WateringOrder, WateringState } from '../state/state.js'
import { allowanceShare, arrivingShare, isAgreed } from './delivery.js'
import { roomAtPace } from './pace.js'
import { maxRunFor, PART, runFor } from './run-time.js'
import { bindsShown, givenByTally } from './tally.js'
import { wholeRun } from './whole-shot.js'

/** Whether to open, with the reason for it or against it. */
export interface Choice {
  readonly open: boolean
  readonly reason: WateringReason
  /** How long it may stay open. Unit: s. */
  readonly run: number
}

/** A state that has been kept for so long is not lost every hour. Unit: s. */
const NEW = 7200

/** What speaks against any water at all, or null. */
export function forbidden(
  state: WateringState,
  locked: unknown,
  reported: unknown,
  closes: boolean,
): WateringReason | null {
  // Only `false` is false: whoever works on the line must not depend on a word that was lost.
  if (locked !== false) return 'locked'
  if (closes || orderedNow(state.override, state.clock) === 'close') return 'override-closed'
  // A word that is not understood counts as the worse one.
  if (state.valve.opened === null && (reported ?? 'closed') !== 'closed') return 'valve-reported-open'
  return clockReason(state.clock)
}

/** Why the clock forbids water, or null. */
function clockReason(clock: WateringClock): WateringReason | null {
  if (clockMode(clock) !== 'settles') return null
  if (clock.raw === null) return 'clock-unreadable'
  if (clock.same > 2) return 'clock-stands-still'
  return clock.bad > 0 ? 'clock-leapt' : 'clock-settling'
}

/** What a person orders at a moment of trusted time. */
function orderedNow(override: WateringOrder | null, clock: WateringClock): 'close' | 'water' | null {
  return override !== null && clock.elapsed < override.ends ? override.action : null
}

/** Time for which an opening keeps the valve open: its run, or up to the next decision where nothing else closes it. */
function openFor(limits: Limits, run: number, pace: number): number {
  return limits.closesByItself ? run : Math.max(run, Math.ceil(run / pace) * pace)
}

/** Whether a closed valve that nothing forbids to open should open. */
export function mayOpen(state: WateringState, zone: ZoneLevel, limits: Limits): Choice {
  const { clock, valve, water } = state
  const wish = wishFor(state, zone, limits)
  if (!wish.open) return wish
  const run = openFor(limits, wish.run, clock.pace)
  if (!limits.closesByItself && !(clock.paces >= 3 && run <= limits.maxRun)) return no('decisions-too-seldom')
  if (!hoursAllow(limits.hours, limits.ahead, clock, run)) return no('outside-hours')
  const volume = run * limits.litresPerSecond
  const given = givenInDay(water)
  if (given + volume > limits.perDay * (1 + 1e-9)) return no('day-used-up')
  const room = roomAtPace(water, clock.elapsed, clock.base, limits)
  const isWhole = volume <= room + 1e-9
  if (!isWhole && !(isUrgent(state, zone, limits) && room >= PART * volume))
    return no(clock.elapsed < 86400 ? 'starting' : 'pace-limit')
  // The clock may gain on the true one, and nobody can tell.
  if (givenInLongDay(water) + volume > 1.04 * limits.perDay) return no('day-used-up')
  // A level that rises with shots needs no second clock where that may leave plants too little.
  const isShown = wish.reason === 'dry' && hasShown(state) && !bindsShown(state.tally, clock, limits)
  if (!isShown && givenByTally(state.tally) + volume > 1.04 * limits.perDay) return no('day-used-up')
  const isInDoubt = wish.reason === 'back-up-shot' || (wish.reason === 'refill' && zone.level === null)
  if (isInDoubt && given + volume > backUpOf(state, zone, limits) * (1 + 1e-9)) return no('back-up-used-up')
  return valve.openings === 0 && clock.elapsed - valve.closed < Math.max(limits.rest, limits.lag)
    ? no('starting')
    : { ...wish, run: isWhole ? wish.run : room / limits.litresPerSecond }
}

/**
 * Whether a part of a shot is better than to wait for room for a whole one, which may be forgotten again before it is there: for some time after a start or
 * a gap, where the zone is dry, or nothing tells what it is and this is the first.
 */
function isUrgent({ clock, valve, water }: WateringState, { level }: ZoneLevel, limits: Limits): boolean {
  const isNew = clock.elapsed - water.paced * SLOT < NEW
  return limits.closesByItself && isNew && (level === null ? valve.openings === 0 : level <= limits.lower)
}

/**
 * Whether a probe showed at least half of what the last opening should have given, or probes and meter have long said the same. The last shot of a refill
 * shows nothing, because the zone is full.
 */
function hasShown({ valve, counters: { shown, ordered, delivery } }: WateringState): boolean {
  return isAgreed(delivery) || valve.reason === 'refill' || (shown !== null && ordered > 0 && shown >= ordered / 2)
}

/** Most volume of a day while no reading can be believed: more only where it is known that a part of what is ordered arrives. */
function backUpOf(state: WateringState, { blind }: ZoneLevel, limits: Limits): number {
  // What drained is no use: since the zone was full, plants may have what they usually take, where at least some number speaks.
  // Nor is a refill, which ends where the zone drains.
  const { net, due, under } = state.fill
  if (!blind && isProven(state) && (under !== null || net < 1.1 * due)) return limits.perDay
  return Math.min(limits.perDay, limits.backUp / allowanceShare(state.counters.delivery))
}

function wishFor(state: WateringState, zone: ZoneLevel, limits: Limits): Choice {
  const { clock, valve } = state
  const since = clock.elapsed - valve.closed
  const isOrdered = orderedNow(state.override, clock) === 'water'
  const isUnknown = zone.level === null
  const isRefill = state.fill.under !== null
  if (!isOrdered && !isUnknown && !isRefill && !state.zone.dry) return no('wet-enough')
  // Between two openings the valve closes, also without a rest: two that touch are one that is too long.
  if (since < limits.rest || since <= 0) return no(valve.openings === 0 ? 'starting' : 'resting')
  if (!isOrdered && !isRefill && isStillFull(state, zone, limits)) return no('wet-enough')
  const run = runFor(state.counters.delivery, clock, limits)
  if (isOrdered) return since < limits.lag ? no('resting') : { open: true, reason: 'override-water', run }
  if (isUnknown && !limits.timed) return no('no-reading')
  if (isRefill) return since < limits.lag ? no('resting') : { open: true, reason: 'refill', run }
  if (isUnknown) return backUp(state, zone, since, run, limits)
  const isShown = zone.measured >= valve.closed + limits.lag
  if (!isShown && (since < limits.lag || !staysDry(state, zone, run, limits))) return no('waiting-for-probe')
  return { open: true, reason: 'dry', run }
}

/** Whether the zone is dry with all that came since its level was told, and with one shot more: where readings come seldom, none has to be waited for. */
function staysDry({ water }: WateringState, { level, measured }: ZoneLevel, run: number, limits: Limits): boolean {
  const came = givenSince(water, measured - limits.lag) + run * limits.litresPerSecond
  return level !== null && level + came / limits.substrate <= limits.lower
}

/** A shot by time: the usual use spread over the allowed hours, from the later of the last shot and the last good wet reading. */
function backUp(
  { clock, valve, zone, counters }: WateringState,
  level: ZoneLevel,
  since: number,
  run: number,
  limits: Limits,
): Choice {
  if (since < limits.lag) return no('resting')
  // A reading that is old but newer than the last shot, and dry, need not wait: it has only become drier since.
  if (level.dry !== null && level.dry >= valve.closed + limits.lag) return { open: true, reason: 'back-up-shot', run }
  const every = (limits.allowed * run * limits.litresPerSecond * arrivingShare(counters.delivery)) / limits.backUp
  const waited = clock.elapsed - Math.max(valve.closed - run, zone.lastWet)
  // Decisions come at their own pace: half of it early is as good as half of it late.
  return waited >= every - clock.pace / 2 ? { open: true, reason: 'back-up-shot', run } : no('back-up-not-due')
}

/** Nothing is opened, for a reason. */
export function no(reason: WateringReason): Choice {
  return { open: false, reason, run: 0 }
}

/** Whether an opening that is under way must end, and why. */
export function mustClose(state: WateringState, zone: ZoneLevel, limits: Limits): WateringReason | null {
  const { clock, valve } = state
  const ran = clock.elapsed - (valve.opened as number)
  if (ran >= valve.duration) return 'shot-given'
  // An opening that was made longer because little arrived ends when all has arrived.
  const whole = wholeRun(clock, limits)
  if (valve.duration > whole && state.counters.meteredSince >= whole * limits.litresPerSecond) return 'shot-given'
  // Each decision sends its rest anew: by a count that lags it would last longer than it may.
  if (valve.duration > maxRunFor(clock, limits)) return 'clock-leapt'
  // Nothing but a decision closes such a valve, and without a clock nobody knows when the next one comes.
  if (!limits.closesByItself && clockMode(clock) !== 'runs') return 'clock-leapt'
  // A shot that was begun on a good reading is as good as one by time: cut short by each lost message, shots come to nothing.
  if (valve.reason === 'dry' && zone.level === null && !limits.timed) return 'no-reading'
  // A level that only trembles about a limit cuts no shot short: what was given would be taken for what little came.
  if (valve.reason === 'dry' && zone.level !== null && !state.zone.dry && zone.level >= limits.upper)
    return 'wet-enough'
  if (givenInDay(state.water) > limits.perDay * (1 + 1e-9)) return 'day-used-up'
  return hoursAllow(limits.hours, limits.ahead, clock, 0) ? null : 'outside-hours'
}
