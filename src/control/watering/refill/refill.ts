import type { ProbeView } from '../probes/probes.js'
import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill, WateringState } from '../state/state.js'
import { begun, SOONEST } from './begin-refill.js'
import { doubtGauge } from './doubt-gauge.js'
import { isFull, isPartlyFull } from './full-zone.js'
import { isHour } from './is-hour.js'
import { missing } from './lacking.js'
import { hasRoomYet } from './parted.js'
import { setFull } from './set-by-full-zone.js'
import { endedRefill, isSpent, spentRefill } from './spent-refill.js'
import { isUncounted, passUncounted } from './without-gauge.js'

/** By this share of a day's use plants may use less than usual: one standard deviation where days differ by 15 %. Own judgement, no source. */
const TOLERATED = 0.15
/** By no more is a zone kept wetter because its balance lacks water: it fits between usual bands and full. Own judgement, no source. Unit: m³/m³. */
const MAX_HEDGE = 0.02

/** The state once it was looked whether the zone is full, and whether a refill begins or ends. */
export function passRefill(
  before: WateringState,
  views: readonly ProbeView[],
  level: ZoneLevel,
  limits: Limits,
): WateringState {
  const state = doubtGauge(before, level, limits)
  const { fill, valve, clock } = state
  if (fill.full !== null && fill.full >= valve.closed) return begun(state, level, limits)
  const how = isFull(state, level, limits)
  if (how !== null && !hasRoomYet(state, views, level, limits)) return setFull(state, views, how, limits)
  if (fill.under === null) return begun(state, level, limits)
  if (isUncounted(state, limits)) return passUncounted(state, level, limits)
  const isOver = valve.opened === null && isSpent(fill, limits)
  const isLate = valve.opened === null && !isHour(state, [0, 0.9], limits)
  if (!(isOver || isLate) || clock.elapsed < valve.closed + 2 * limits.lag) return state
  if (isOver && isPartlyFull(state, limits)) return setFull(state, views, 'wholly', limits)
  if (isOver) return { ...state, fill: spentRefill(fill, clock.elapsed) }
  // Where the limits of the day ended it, the next morning may go on.
  const tried = Math.max(0, clock.elapsed - SOONEST / 2)
  return { ...state, fill: endedRefill(fill, tried, true) }
}

/**
 * What ran off beyond the usual and is missing: for containers that have no probe. Where as much water stayed as plants use, what ran off came
 * from containers that are full. Unit: L.
 */
export function toGiveAgain(fill: WateringFill, level: ZoneLevel, limits: Limits): number {
  if (level.level === null) return 0
  return Math.max(0, Math.min(fill.excess, missing(fill, level, limits) + TOLERATED * limits.usual))
}

/** Water that the zone is kept wetter by while its balance lacks some: it may be as dry as that tells, and there is room for it. Unit: L. */
export function hedged(fill: WateringFill, level: ZoneLevel, limits: Limits): number {
  return Math.max(0, Math.min(MAX_HEDGE * limits.substrate, missing(fill, level, limits) / 2))
}
