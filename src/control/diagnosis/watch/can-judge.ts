import { isFrozen, isNoisy } from './probe-doubts.js'
import type { ProbeWatch } from './watch-probe.js'
import type { Watched } from './watched.js'

/** Whether the probe can be asked what a shot did. A jump counts for a day, in which all hours came by once. */
export function canJudge(probe: ProbeWatch, now: number, zone: Watched): boolean {
  const last = probe.times[probe.times.length - 1]
  return last !== undefined && now - last <= zone.maxAge && probe.bad === null && !isFrozen(probe) && !isNoisy(probe)
}
