import type { Evidence, Suspicion } from '../cause/cause.js'
import type { RecentShots } from '../state/recent-shots.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import type { Climb, LevelStep } from '../watch/watch-probe.js'
import { evidence, suspicion } from './suspicion.js'

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

/** Two probes that leapt at once, each to where the other was. A shot meanwhile lifts both. */
export function exchanged({ probes }: ZoneWatchState, names: readonly string[], now: number): Suspicion[] {
  return probes.flatMap(({ step: one }, i) =>
    probes.slice(i + 1).flatMap(({ step: other }, j): Suspicion[] => {
      if (one === null || other === null || now - one.time > DAY || !isExchange(one, other)) return []
      const about = [names[i]!, names[i + 1 + j]!]
      const because = [
        evidence('jump', one.after - one.before, 'm³/m³', { usual: 0, about: about[0]!, time: one.time }),
        evidence('jump', other.after - other.before, 'm³/m³', { usual: 0, about: about[1]!, time: other.time }),
      ]
      return [suspicion('probes-swapped', 'caution', 0.92, because, 'read-the-labels', about)]
    }),
  )
}

/** Two probes of which each rises as the other did. */
export function risesExchanged({ swapped }: RecentShots, names: readonly string[]): Suspicion[] {
  if (swapped === null) return []
  const about = [names[swapped.first]!, names[swapped.second]!]
  const because = about.map((name, i) =>
    evidence('rise-share', swapped.rises[i]!, '1', { usual: 1, about: name, time: swapped.since }),
  )
  return [suspicion('probes-swapped', 'caution', 0.7, because, 'read-the-labels', about)]
}

const DAY = 86400
/** Chosen on rehearsals. Unit: s, 1. */
const AT_ONCE = 600
const NEAR = 0.4

function isExchange(one: LevelStep, other: LevelStep): boolean {
  const apart = Math.abs(one.before - other.before)
  const isNear = (level: number, goal: number) => Math.abs(level - goal) < NEAR * apart
  const isOpposite = one.after > one.before !== other.after > other.before
  return (
    Math.abs(one.time - other.time) <= AT_ONCE &&
    isOpposite &&
    isNear(one.after, other.before) &&
    isNear(other.after, one.before)
  )
}
