import { timeApart } from './time-apart.js'
import type { LevelStep, ProbeWatch } from './watch-probe.js'
import type { Watched } from './watched.js'

/** Probes of one round speak within this time, or within the time between two of their readings. Unit: s. */
const AT_ONCE = 600

/**
 * Where all probes that are heard leap up at once, water came, and nobody put them in again: between readings that lie far apart a valve that stays open lifts
 * a zone at a leap. What leapt climbed then.
 */
export function risenTogether(probes: readonly ProbeWatch[], now: number, { maxAge }: Watched): ProbeWatch[] {
  const rises = probes.map((probe) => (isHeard(probe, now, maxAge) ? riseOf(probe) : 'unheard'))
  const told = rises.filter((rise) => rise !== 'unheard')
  const first = told[0]
  if (told.length < 2 || first == null) return [...probes]
  const apart = (other: LevelStep | null) => (other === null ? Infinity : Math.abs(other.time - first.time))
  if (told.some((rise) => apart(rise) > Math.max(AT_ONCE, intervalOf(probes)))) return [...probes]
  return probes.map((probe, i) => {
    const rise = rises[i]
    if (rise === 'unheard' || rise == null) return probe
    const climb = { time: rise.time, size: rise.after - rise.before, lasted: intervalOf([probe]) }
    return { ...probe, step: null, climb }
  })
}

function isHeard({ times }: ProbeWatch, now: number, maxAge: number): boolean {
  return times.length > 0 && now - times[times.length - 1]! <= maxAge
}

/** A leap up that was just seen: five readings of after it are kept. */
function riseOf({ step, times }: ProbeWatch): LevelStep | null {
  return step !== null && step.after > step.before && step.time >= times[0]! ? step : null
}

/** The longest time between two readings of a probe. Unit: s. */
function intervalOf(probes: readonly ProbeWatch[]): number {
  return probes.reduce((max, probe) => Math.max(max, timeApart(probe)), 0)
}
