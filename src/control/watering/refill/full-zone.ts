import { clockMode } from '../clock/clock.js'
import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import { givenInDay } from '../state/given-water.js'
import type { WateringFill, WateringState } from '../state/state.js'
import { knownError } from './known-error.js'

/**
 * Share of a shot that drains beyond the usual where the zone is full: plants drink meanwhile, and a part is still on its way out. A shot is a
 * fifteenth of a usual day or so, and at noon plants drink most of that in half an hour: a tenth is what is sure to be left. Own judgement, no source.
 */
const DRAINS = 0.1
/**
 * A refill goes on until this share of the containers drains: those of the probes alone may be a sixth, and are full first where they get most. More would
 * keep a zone over-wet on days of bright sun, when full containers drain less. Own judgement, no source.
 */
const FULL_FROM = 0.33
/** Light of a day, of which the brightest has half of pi times the mean. Own judgement, no source. Unit: s. */
const DAYLIGHT = 43200
/** Media with channels aside, no more of a shot runs past: common practice, no source. */
const USUAL = 0.2
/**
 * By how much the level of a zone by two probes may be wrong a day after it was full: containers that drip and drink a few percent differently
 * part by about a twentieth of a day's use. Own judgement. Unit: m³/m³.
 */
const UNSURE = 0.01
/** A share that drains only where the zone is full, whatever its probes say. Own judgement, no source. */
const NEARLY_ALL = 0.75
/** No more of an opening can drain: all of it, a gauge that is a tenth wrong, and a fifth that is late from openings before. Own judgement, no source. */
const MAX_BACK = 1.3
/** In this time the share that runs past is learned: the first day and the morning after, some twenty shots. Own judgement. Unit: s. */
const LEARNT = 129600
/** What ran off is given again, up to this change of the level: a quarter of a usual day in a common container. Own judgement, no source. Unit: m³/m³. */
const MAX_AGAIN = 0.08
/** The word of a drain gauge alone takes no more of the usual water of a day than leaves this share: what a dull day takes. Own judgement, no source. */
const MIN_SHARE = 0.6

/** Share of the last opening that has drained, once it can have; null where nothing tells. */
function drainedShare({ counters, valve, clock }: WateringState, limits: Limits): number | null {
  const { ordered, drained, drainedSince, leaked } = counters
  if (drained === null || valve.opened !== null || leaked > 0 || ordered < 0.6 * limits.shot) return null
  // More than came has other sources: earlier shots, or a day that an old stored state knows nothing of.
  if (clock.elapsed < valve.closed + limits.lag || drainedSince > MAX_BACK * ordered) return null
  return Math.min(1, drainedSince / ordered)
}

/**
 * Whether the last opening drained as it does where the zone is full: all of it, or clearly more than runs past as usual, where that was
 * expected: in a refill, where nothing is known, and where the zone was known to have hardly room for the shot.
 */
export function isFull(state: WateringState, level: ZoneLevel, limits: Limits): 'wholly' | 'just' | null {
  const share = toldShare(state, limits)
  if (share === null) return null
  if (share >= NEARLY_ALL) return 'wholly'
  const past = runsPast(state.fill)
  const min = minShare(past)
  if (state.valve.reason === 'refill') return share >= Math.max(min, shareOfFull(state, past, limits)) ? 'wholly' : null
  if (level.level === null && level.dry === null) return share >= min ? 'wholly' : null
  return share >= min + DRAINS && past < USUAL && foreseen(state, limits) >= share - past ? 'just' : null
}

/** Whether the last opening drained as where some containers are full: all that is known where a refill has come to its end. */
export function isPartlyFull(state: WateringState, limits: Limits): boolean {
  const share = toldShare(state, limits)
  return share !== null && share >= minShare(runsPast(state.fill))
}

/** The share that drained, while the clock or the count of decisions tells the time that it took. */
function toldShare(state: WateringState, limits: Limits): number | null {
  return clockMode(state.clock) === 'settles' ? null : drainedShare(state, limits)
}

/** Share of a shot that runs past the medium, as it is known and as it was lately. */
function runsPast({ passing, lately }: WateringFill): number {
  return Math.max(passing, lately)
}

/** Share that drains beyond what runs past: the more runs past a medium, the less it tells. */
function minShare(past: number): number {
  return past + DRAINS + Math.max(0, past - USUAL)
}

/** Share that drains where so many of the containers are full, and their plants drink as at noon until it is looked at. */
function shareOfFull({ valve, counters }: WateringState, past: number, { usual, lag }: Limits): number {
  const drunk = ((Math.PI / 2) * usual * (valve.duration + lag)) / DAYLIGHT
  return past + FULL_FROM * (1 - past - drunk / counters.ordered)
}

/** Share of the last opening that had no room any more, by what probes said before it and where the zone is full, rather too much. */
function foreseen(state: WateringState, limits: Limits): number {
  return overflowing(state, UNSURE, limits)
}

/** The same where the level of the zone is wrong by so much. */
function overflowing({ fill, counters, clock }: WateringState, unsure: number, limits: Limits): number {
  // Where no probe stood in a full container they tell by what they said together.
  const none = fill.atFull.every((level) => level === null) ? fill.levelAtFull : null
  let [room, told] = [0, 0]
  for (let i = 0; i < fill.atFull.length; i++) {
    const [full, before] = [fill.atFull[i] ?? none, fill.before[i]!]
    if (full === null || before === null) continue
    room += full + knownError(fill, i, clock.elapsed) - before
    told++
  }
  if (told === 0 || !(counters.ordered > 0)) return 0
  const left = (room / told - unsure) * limits.substrate
  return Math.max(0, 1 - fill.passing - left / counters.ordered)
}

/**
 * Whether a level leaves room for a shot below what probes said of the zone when it was full last, or else below the upper limit: where probes
 * stand in drier containers than most, the limit may be at the brim. How far they may mislead is doubled in the second day.
 */
export function hasRoom(
  { levelAtFull, passing, due }: WateringFill,
  level: number,
  { shot, substrate, upper, usual }: Limits,
): boolean {
  return (
    level + ((1 - passing) * shot) / substrate <
    (levelAtFull === null ? upper : levelAtFull - UNSURE * Math.min(2, Math.max(1, due / usual)))
  )
}

/** Whether the zone was full lately, and plants cannot have drunk much of it since: more would only drain, whatever probes say. */
export function isStillFull({ fill, clock, water }: WateringState, level: ZoneLevel, limits: Limits): boolean {
  if (fill.full === null || fill.net > 0.05 * limits.shot || givenInDay(water) < MIN_SHARE * limits.usual) return false
  if (clock.elapsed - fill.full > 43200) return false
  return fill.due < (level.level === null ? 2.5 : 1) * limits.shot
}

/** What is known of full and drain, once an opening is over and the next begins: what runs past as usual, and what ran off beyond it. */
export function judgePassing(state: WateringState, limits: Limits): WateringFill {
  const { fill, valve, clock } = state
  const share = drainedShare(state, limits)
  if (share === null || share >= NEARLY_ALL || valve.reason === 'refill') return fill
  const beyond = share - fill.passing
  // Learned in the first days; later what changes is told from what is.
  const slow = clock.elapsed < LEARNT ? 8 : beyond > 0 ? 40 : 16
  const explained = foreseen(state, limits)
  const ranOff = beyond - explained > 0.05 ? beyond - explained : explained > 0 ? 0 : -0.05
  return {
    ...fill,
    passing: fill.passing + beyond / slow,
    lately: fill.lately + (share - fill.lately) / 3,
    overflow: Math.min(
      fill.overflow + overflowing(state, 0, limits) * state.counters.ordered,
      Math.max(0, fill.slip * fill.due),
    ),
    excess: Math.max(0, Math.min(MAX_AGAIN * limits.substrate, fill.excess + ranOff * state.counters.ordered)),
  }
}
