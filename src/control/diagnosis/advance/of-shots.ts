import type { OfShots } from '../state/memo.js'
import { jumpedLately, recentShots } from '../state/recent-shots.js'
import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { suspectDrain } from '../suspect/suspect-drain.js'

/** What the shots say, worked out once for each list of them. */
export function ofShots(state: ZoneWatchState, zone: RememberedZone): OfShots {
  const { memo } = zone
  const jumped = jumpedLately(state)
  const { meter, gauge } = state.valve
  const steps = [meter.step, gauge.step]
  const old = memo.shots.get(state.shots)
  if (old !== undefined && old.usual === state.usual && isSame(jumped, old.jumped) && isSame(steps, old.steps))
    return old
  const recent = recentShots(state, jumped, zone)
  const found = {
    usual: state.usual,
    jumped,
    steps,
    recent,
    water: new Map(),
    drain: suspectDrain(recent, state.usual, state.standing),
  }
  memo.shots.set(state.shots, found)
  return found
}

function isSame<T>(some: readonly T[], others: readonly T[]): boolean {
  return some.every((one, i) => one === others[i])
}
