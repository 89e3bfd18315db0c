import type { Limits } from '../settings/checked-settings.js'
import type { WateringClock, WateringTally } from '../state/state.js'
import { EVEN, isKnownPace, isSlower, isSooner, usualPace, WELL_KNOWN } from './tally-pace.js'

/** Hours that are kept: a day, what the clock may gain on it at most, and the hour that has begun. */
export const TALLY_HOURS = 26
const HOUR = 3600
/** Most by which the clock may gain on the decisions in a day: `TALLY_HOURS` has room for it. Own judgement. Unit: s. */
export const PURSE = 1800

/** Plants are asked where decisions come so many times less often. */
const RARER = 3.5
/** What a hot day takes beyond the usual use, and 26 hours beyond 24: own judgement. */
const SPARE = 1.25
/** They are heard after so much of the usual use of a day: three hours or so, in which probes tell it well. Own judgement. */
const ENOUGH = 0.2
/** No plants drink so many times their usual use of these hours for so long, at noon of a hot day: own judgement. */
const PEAK = 3

/** What plants drank since the decision before, and what they usually do. Unit: L. */
export interface Drunk {
  readonly fell: number
  readonly usual: number
}

/** Where nothing has been counted yet, and the pace is what somebody said, if so. */
export function freshTally(decideEvery: number | null): WateringTally {
  return {
    at: 0,
    ...paceSaid(decideEvery),
    sooner: 0,
    purse: PURSE,
    drank: 0,
    due: 0,
    litres: new Array<number>(TALLY_HOURS).fill(0),
  }
}

function paceSaid(decideEvery: number | null): Pick<WateringTally, 'pace' | 'decisions'> {
  return { pace: decideEvery ?? 0, decisions: decideEvery === null ? 0 : WELL_KNOWN }
}

/**
 * Counts a decision. Where decisions come at an even pace they are a second clock: a clock that runs several times too fast brings no more of
 * them. Time by this count goes on with the trusted time `passed`, but only as fast as decisions have long come, and half an hour a day
 * faster.
 */
export function passTally(
  before: WateringTally,
  passed: number,
  clock: WateringClock,
  seen: Drunk | null,
  limits: Limits,
): WateringTally {
  const tally = heardRarer(before, clock, seen, limits)
  const isKnown = isKnownPace(tally)
  const due = isKnown ? Math.min(passed, tally.pace + tally.purse) : passed
  // Decisions that come faster for a while tell of no clock that is slower: what they seem to leave over is not saved.
  const earned = isSooner(tally, clock) ? due : tally.pace
  const refilled = tally.purse + earned * (1 + PURSE / 86400) - due
  const purse = isKnown ? Math.max(0, Math.min(PURSE, refilled)) : PURSE
  const at = tally.at + due
  return {
    ...tally,
    at,
    ...(limits.decideEvery === null && usualPace(tally, passed, clock)),
    purse,
    litres: passHours(tally, at),
  }
}

/**
 * Lets the plants say whether decisions come less often, or the clock runs so many times too fast: they cannot drink faster. Between decisions
 * without a shot, by probes that are believed, they have to drink at the pace of the clock.
 */
function heardRarer(tally: WateringTally, clock: WateringClock, seen: Drunk | null, limits: Limits): WateringTally {
  if (!isSlower(tally, clock, RARER)) return tally.due === 0 ? tally : { ...tally, drank: 0, due: 0 }
  if (seen === null) return tally
  const [drank, due] = [tally.drank + seen.fell, tally.due + seen.usual]
  if (due < ENOUGH * limits.usual) return { ...tally, drank, due }
  const next = { ...tally, drank: 0, due: 0 }
  const isHeard = drank > due * Math.max(0.4, (PEAK * tally.pace) / clock.pace)
  return isHeard ? { ...next, pace: clock.pace, decisions: WELL_KNOWN } : next
}

/** Whether the clock gains on the decisions by more than a day allows. */
export function isOutrun(tally: WateringTally, clock: WateringClock): boolean {
  return tally.purse < 60 && isSlower(tally, clock, 1.4)
}

/**
 * Whether water keeps to this count too where a level rises with shots: the clock may run too fast, and if decisions come less often instead, plants
 * still get what they usually use.
 */
export function bindsShown(tally: WateringTally, clock: WateringClock, { perDay, usual }: Limits): boolean {
  return isSlower(tally, clock, EVEN) && perDay * tally.pace > SPARE * usual * clock.pace
}

/** What is left once somebody has set the clock: the water, but no pace that was learned. */
export function forgottenPace(tally: WateringTally, decideEvery: number | null): WateringTally {
  return { ...tally, ...paceSaid(decideEvery), sooner: 0, purse: PURSE }
}

function passHours({ at: before, litres }: WateringTally, at: number): readonly number[] {
  const [from, to] = [Math.floor(before / HOUR), Math.floor(at / HOUR)]
  if (from === to) return litres
  const next = litres.slice()
  for (let hour = Math.max(from + 1, to - TALLY_HOURS + 1); hour <= to; hour++) next[hour % TALLY_HOURS] = 0
  return next
}

/** Counts water, or takes some back that was counted too much. */
export function addToTally(tally: WateringTally, volume: number): WateringTally {
  if (volume === 0) return tally
  const litres = tally.litres.slice()
  const at = Math.floor(tally.at / HOUR) % TALLY_HOURS
  litres[at] = Math.max(0, Math.ceil((litres[at]! + volume) * 1e6 - 1e-3) / 1e6)
  return { ...tally, litres }
}

/** Water of the last 24 hours by decisions alone. */
export function givenByTally({ litres }: WateringTally): number {
  return litres.reduce((sum, volume) => sum + volume, 0)
}
