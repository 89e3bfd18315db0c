import { clockMode } from '../clock/clock.js'
import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import { givenInDay } from '../state/given-water.js'
import type { WateringFill, WateringState } from '../state/state.js'
import { canEnd } from './can-end.js'
import { isProven } from './doubt-gauge.js'
import { isHour } from './is-hour.js'
import { missing } from './lacking.js'
import { nearDispute } from './parted.js'
import { foretoldFor } from './said-at-full.js'
import { PARTS } from './set-by-full-zone.js'
import { isUncounted, owesShots } from './without-gauge.js'

/** The most that a zone holds above its upper limit: twice what bands commonly leave up to the container capacity. Own judgement, no source. Unit: m³/m³. */
const ABOVE = 0.06
/** Where more of a shot runs past, the medium has become too dry to take it, or has channels. Own judgement, no source. */
const PASSES = 0.35
/** Doubts may begin a refill in these shares of the allowed hours; without one it waits until plants drink most. Own judgement, no source. */
const IN_DOUBT = [0.1, 0.7] as const
const AS_USUAL = [0.4, 0.6] as const
const EARLY = [0.35, 0.65] as const
const SOON = [0.3, 0.65] as const
/** What should drain takes hours. */
const TO_DRAIN = [0.2, 0.6] as const
/** No two refills in less than this: one a day, and the next may come somewhat earlier in the day; much earlier where one takes hours. Unit: s. */
export const SOONEST = 72000
export const SOONEST_TO_DRAIN = 50400
/** The first of those comes sooner: a program that loses its state each night would else fill nothing. Own judgement, no source. Unit: s. */
export const FIRST_TO_DRAIN = 21600
/**
 * Use that water given does not account for, as a share of the usual use of a day, of which probes are suspected: more than one and a half
 * standard deviations where days differ by 15 %. Own judgement, no source.
 */
const MISSING = 0.25
/** The same, up to which what ran off is a doubt: two of those deviations. */
const DOUBTED = 0.3
/** The same, so much that the first hours are taken that plants leave time for it. */
const MUCH = 0.29

/** The state once it was looked whether a refill begins. */
export function begun(state: WateringState, level: ZoneLevel, limits: Limits): WateringState {
  const why = refillFor(state, level, limits)
  if (why === null) return state
  // In doubt, a gauge that is known to work ends it, and the limit of the day.
  const max = why === 'doubt' && isProven(state) ? limits.perDay : maxRefill(state, level, limits)
  return {
    ...state,
    // Whether shots still raise it is looked at from here on: it may have been higher a day ago.
    zone: { ...state.zone, best: level.level ?? state.zone.best, spell: 0 },
    fill: {
      ...state.fill,
      under: 0,
      max: max - state.fill.due,
      foretold: foretoldFor(state.fill, level, limits),
    },
  }
}

/** Why a refill to drain should begin now, or null. */
function refillFor(state: WateringState, level: ZoneLevel, limits: Limits): 'doubt' | 'balance' | 'time' | null {
  const { clock, counters, water, fill, zone } = state
  if (level.level === null && !limits.timed) return null
  const uncounted = isUncounted(state, limits)
  if (counters.drained === null && !uncounted) return null
  if (limits.refillEvery === null || clockMode(clock) === 'settles') return null
  if (clock.elapsed - Math.max(fill.tried, fill.full ?? 0) < soonest(fill, limits)) return null
  if (!canEnd(state, limits)) return null
  if (givenInDay(water) + 3 * limits.shot > limits.perDay) return null
  const isLong = fill.tried === 0 || sinceTried(state, limits) >= limits.refillEvery
  if (uncounted) return isLong && owesShots(state, level, limits) && isHour(state, TO_DRAIN, limits) ? 'time' : null
  const isDoubted =
    level.level === null ||
    level.believed < limits.probes.length ||
    zone.verdict !== 'plausible' ||
    fill.passing > PASSES ||
    Math.min(fill.excess, missing(fill, level, limits) + DOUBTED * limits.usual) > 1.25 * limits.shot ||
    fill.cut
  if (isDoubted) return isHour(state, IN_DOUBT, limits) ? 'doubt' : null
  // Containers that part are made alike before their probes are in dispute.
  if (level.spread > nearDispute(limits)) return isHour(state, EARLY, limits) ? 'balance' : null
  const lacks = missing(fill, level, limits) / limits.usual
  if (lacks > MISSING) return isHour(state, lacks > MUCH ? SOON : EARLY, limits) ? 'balance' : null
  return isLong && isHour(state, limits.drain > 0 ? TO_DRAIN : AS_USUAL, limits) ? 'time' : null
}

/** Time from one refill to the next, or from the beginning to the first. Unit: s. */
function soonest({ tried, full }: WateringFill, { drain }: Limits): number {
  if (drain === 0) return SOONEST
  return tried === 0 && full === null ? FIRST_TO_DRAIN : SOONEST_TO_DRAIN
}

/** Time since the last refill, longer where plants drank more than usual in it: containers part by that. Unit: s. */
function sinceTried({ clock, fill }: WateringState, { usual }: Limits): number {
  return Math.max(clock.elapsed - fill.tried, (fill.net / usual) * 86400)
}

/** Most water of one refill: what may be missing by probes or by balance, and two shots. Unit: L. */
function maxRefill({ fill }: WateringState, level: ZoneLevel, limits: Limits): number {
  const { upper, lower, substrate, shot } = limits
  // The container capacity is not told: a little above the upper limit, so that a gauge that is dead floods nothing.
  const above = Math.min(2 * (upper - lower), ABOVE)
  const byLevel = (upper + above - (level.level ?? lower)) * substrate
  const lacks = Math.max(above * substrate, byLevel + Math.max(missing(fill, level, limits), fill.excess))
  // The driest container stands half of what they differ by below the level.
  const uneven = level.spread > nearDispute(limits) ? (level.spread / 2) * substrate : 0
  // A container without a probe may have dried more than they show: by twice the standard deviation of one.
  const apart = 2 * Math.SQRT2 * PARTS * fill.due
  const room = (lacks + uneven + apart) / (1 - Math.min(0.5, fill.passing))
  // Of what fills it a share drains as well.
  const drains = (Math.max(0, fill.owed) + limits.drain * lacks) / (1 - limits.drain)
  return Math.min(limits.perDay, room + drains + 2 * shot)
}
