import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import { latch } from '../state/latch.js'
import type { WateringState } from '../state/state.js'
import { sinceLeap } from './set-by-full-zone.js'
import { isInVain } from './spell.js'
import { spentRefill } from './spent-refill.js'

/** So long after it told of a full zone a drain gauge is known to work: four days. Own judgement. Unit: s. */
const PROVEN = 345600

/**
 * The state once it was looked whether the gauge of drain can be believed. One that counts a day's use more than came counts in another unit, or rain;
 * it is not read any more. One that counts none of a refill, though believed probes stand above the upper limit and shots have ceased to raise them,
 * counts nothing: the zone is full whatever it says, and the refill ends.
 */
export function doubtGauge(state: WateringState, level: ZoneLevel, limits: Limits): WateringState {
  const { clock, counters, fill, zone } = state
  if (counters.drained === null) return state
  if (fill.net < -limits.usual) {
    const unread = { ...latch(counters, 'drain-too-large'), drained: null, drainedSince: 0 }
    return { ...state, counters: unread, fill: { ...sinceLeap(fill, clock.elapsed), cut: false } }
  }
  const isFull = level.level !== null && level.level >= limits.upper && isInVain(zone.spell, limits)
  if (fill.under === null || !isFull || counters.drainedSince > 0) return state
  // A balance without drain tells less from day to day; where refills go on without a gauge it would ask for ever more.
  const ended = limits.drain > 0 ? { ...sinceLeap(fill, clock.elapsed), cut: false } : spentRefill(fill, clock.elapsed)
  return { ...state, counters: latch(counters, 'no-drain'), fill: ended }
}

/** Whether the drain gauge told of a full zone not long ago, and no refill was in vain since. */
export function isProven({ fill, clock, counters }: WateringState): boolean {
  return counters.drained !== null && fill.full !== null && fill.fails === 0 && clock.elapsed - fill.full < PROVEN
}
