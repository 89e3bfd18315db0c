import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill } from '../state/state.js'
import { MAX_UP } from './known-error.js'
import { knownAtFull } from './said-at-full.js'

/** A zone is foreseen to be drier than its probes say by no more than this: two containers part by as much in two days. Own judgement. Unit: m³/m³. */
const MAX_DOWN = 0.04

/** Use of the usual that water given since the zone was full does not account for. Unit: L. */
export function missing(fill: WateringFill, { level }: ZoneLevel, limits: Limits): number {
  const { full, due, net, passing, usual } = fill
  const told = knownAtFull(fill)
  if (full === null || told === null) return 0
  const fell = told - (level ?? limits.lower)
  return due * usual * (1 - Math.min(0.2, passing)) - net - fell * limits.substrate
}

/**
 * Water that the zone lacks beyond what its probes show, by what was learned of their containers; at most what a few days bring. What those
 * containers could not hold was no loss to the others, unless the balance lacks it as well. Unit: L.
 */
export function slipped(fill: WateringFill, level: ZoneLevel, limits: Limits): number {
  const { slip, due, full, overflow } = fill
  if (full === null) return 0
  const lacks = Math.max(slip * due - overflow, Math.min(slip * due, missing(fill, level, limits)))
  return Math.max(-MAX_UP * limits.substrate, Math.min(MAX_DOWN * limits.substrate, lacks))
}
