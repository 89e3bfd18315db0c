import type { Evidence, Suspicion } from './cause.js'
import { evidence, suspicion } from './suspect-water.js'
import type { Climb } from './watch-probe.js'
import type { ZoneWatchState } from './zone-state.js'

/** Hours chosen on rehearsals. A climb without a shot, of this probe alone, where something else speaks against it too. */
export function maySwap({ probes }: ZoneWatchState, i: number, now: number, speaks: boolean): Climb | null {
  const { climb, times } = probes[i]!
  // Two readings later it shows whether it climbed or leapt.
  if (climb === null || (times[times.length - 3] ?? -Infinity) < climb.time || now - climb.time >= 21600) return null
  const alone = probes.every((other, j) => j === i || other.climb === null || now - other.climb.time > 7200)
  return alone && speaks ? climb : null
}

/** A probe that may carry the name of another. */
export function swappedBy({ size, time }: Climb, name: string, shares: readonly Evidence[]): Suspicion {
  const because = [evidence('climb-without-shot', size, 'm³/m³', { about: name, time }), ...shares]
  return suspicion('probes-swapped', 'caution', 0.9, because, 'read-the-labels', [name])
}
