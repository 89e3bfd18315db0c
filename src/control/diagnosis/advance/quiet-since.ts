import type { ValveWatch } from '../watch/watch-valve.js'

/** Since when no shot moves the probes; not yet while one is under way. Unit: s. */
export function quietSince({ shot, open, quietFrom }: ValveWatch): number {
  return shot !== null || open !== null ? Infinity : (quietFrom ?? -Infinity)
}
