import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringState } from '../state/state.js'
import { GAUGES } from './can-end.js'
import { isHour } from './is-hour.js'
import { owed } from './owed.js'
import { isInVain, SHOTS } from './spell.js'
import { endedRefill, isSpent } from './spent-refill.js'

/** What is owed grows no more from half a day's use on: somewhat less has to do. */
const NEARLY_HALF = 0.45

/** Whether a share should drain and nothing counts it: there is no gauge, or one that counts nothing, or another unit. */
export function isUncounted({ counters }: WateringState, { drain }: Limits): boolean {
  return drain > 0 && (counters.drained === null || counters.latched.some((code) => GAUGES.includes(code)))
}

/**
 * Whether so much is owed that a refill without a gauge tells when it has drained: no fewer shots that raise nothing tell a full zone. Only probes end such
 * a refill, so that it needs one.
 */
export function owesShots({ fill }: WateringState, { level }: ZoneLevel, { shot, usual }: Limits): boolean {
  return level !== null && fill.owed >= Math.min(SHOTS * shot, NEARLY_HALF * usual)
}

/**
 * The state once it was looked whether such a refill ends: when as much came as is owed since shots ceased to raise any probe, as it drained; and where it
 * has given all it may, the day is late, or no probe can be believed any more. What drained by then is owed no more.
 */
export function passUncounted(state: WateringState, level: ZoneLevel, limits: Limits): WateringState {
  const { fill, zone, valve, clock } = state
  if (fill.under === null || valve.opened !== null || clock.elapsed < valve.closed + limits.lag) return state
  const drained = isInVain(zone.spell, limits) ? zone.spell : 0
  const isOver = (drained > 0 && drained >= fill.owed) || isSpent(fill, limits) || level.level === null
  if (!isOver && isHour(state, [0, 0.9], limits)) return state
  const left = owed(fill, 0, drained, limits)
  return { ...state, fill: { ...endedRefill(fill, clock.elapsed, false), owed: left } }
}
