import { levelOf } from './level-of-probe.js'
import type { ProbeWatch } from './watch-probe.js'

/** Follows the lowest level between shots, and what climbs above it. */
export function withClimb(probe: ProbeWatch, minSize: number): ProbeWatch {
  const n = probe.times.length
  if (n < 5) return probe
  const level = levelOf(probe) as number
  const time = probe.times[n - 1]!
  if (probe.low === null || level < probe.low) return { ...probe, low: level, lowTime: time }
  const size = level - probe.low
  if (size < Math.max(minSize, 6 * probe.noise)) return probe
  return { ...probe, low: level, lowTime: time, climb: { time, size, lasted: time - probe.lowTime } }
}

/** The fall between shots, once a quarter of an hour shows it. */
export function withFall(probe: ProbeWatch, quietFrom: number, light: number | null): ProbeWatch {
  const { times, levels } = probe
  let first = times.length
  while (first > 0 && times[first - 1]! >= quietFrom) first--
  const n = times.length - first
  if (n < 4 || times[times.length - 1]! - times[first]! < 900) return probe
  let [t, y] = [0, 0]
  for (let i = first; i < times.length; i++) {
    t += times[i]! / n
    y += levels[i]! / n
  }
  let [ty, tt] = [0, 0]
  for (let i = first; i < times.length; i++) {
    const dt = times[i]! - t
    ty += dt * (levels[i]! - y)
    tt += dt * dt
  }
  // A fall below zero is noise, a leak or warmth, and corrects no shot.
  return { ...probe, fall: Math.max(0, -ty / tt), fallTime: times[times.length - 1]!, fallLight: light }
}

/** In the dark plants drink about as much as at this light: common practice, no source. Unit: W/m². */
const DARK_USE = 40

/** The fall at this light, and whether it was seen lately or can be told from the light. */
export function fallNow(probe: ProbeWatch, now: number, light: number | null): { fall: number; sure: boolean } {
  const { fall, fallTime, fallLight } = probe
  if (fallTime === null) return { fall, sure: false }
  if (light === null || fallLight === null) return { fall, sure: now - fallTime < 3600 }
  return { fall: (fall * (Math.max(0, light) + DARK_USE)) / (Math.max(0, fallLight) + DARK_USE), sure: true }
}
