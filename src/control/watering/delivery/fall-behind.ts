import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringState } from '../state/state.js'

/** So long shots may follow each other as soon as they can before it is told that the level does not rise: a dry morning takes two hours or so. Own judgement. Unit: s. */
const BEHIND = 14400
/** Decisions by which a shot may be late without waiting for anything else. */
const LATE = 2

/** How long the level has been at the lower limit or below while shots for it came as soon as they can, since it was above. Unit: s. */
export function passBehind(
  state: WateringState,
  level: ZoneLevel,
  before: number,
  lasted: number,
  limits: Limits,
): number {
  const { valve, clock } = state
  if (level.level === null || level.level > limits.lower) return 0
  const wait = Math.max(limits.rest, limits.lag) + LATE * clock.pace
  const isSoon = valve.opened !== null || (valve.openings > 0 && clock.elapsed - valve.closed <= wait)
  return isSoon && valve.reason === 'dry' ? before + lasted : before
}

/** Whether shots of this size, as far apart as they are, do not make good what plants drink. */
export function isBehind({ zone }: WateringState): boolean {
  return zone.behind >= BEHIND
}
