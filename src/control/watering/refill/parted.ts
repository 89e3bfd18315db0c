import type { ProbeView } from '../probes/probes.js'
import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringState } from '../state/state.js'
import { liftedBy } from './lifted-by.js'
import { PARTS } from './set-by-full-zone.js'
import { isSpent } from './spent-refill.js'

/** A container has room where its probe shows this share of a shot: plants drink meanwhile, and a full one shows none. Own judgement. */
const HALF = 0.5

/** What probes differ by where a day more may well bring them into dispute, as two containers part. Unit: m³/m³. */
export function nearDispute({ disagreement, usual, substrate }: Limits): number {
  return Math.max(disagreement / 2, disagreement - (1.5 * PARTS * usual) / substrate)
}

/**
 * Whether a zone that drains is not full yet: its probes are far apart, and the last shot has raised one of them as where its
 * container has room; or, in a refill, less has drained than should. It goes on as far as it may.
 */
export function hasRoomYet(
  { fill, counters }: WateringState,
  views: readonly ProbeView[],
  { spread }: ZoneLevel,
  limits: Limits,
): boolean {
  if (fill.under !== null) {
    if (isSpent(fill, limits)) return false
    if (fill.owed > 0) return true
  }
  const half = HALF * counters.ordered * (1 - fill.passing)
  return spread > nearDispute(limits) && liftedBy(half, fill, views, limits.substrate).includes(true)
}
