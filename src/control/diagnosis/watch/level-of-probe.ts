import { middle } from '../../middle.js'
import { MIN_STEP, type ProbeWatch } from './watch-probe.js'

/** The level now: the middle of the last five readings. */
export function levelOf({ levels }: ProbeWatch): number | null {
  return levels.length === 0 ? null : middle(levels.slice(-5))
}

/** Mean of the readings from a time on, with the mean time; readings that leap away from the middle one are left out. */
export function meanSince(probe: ProbeWatch, from: number): { level: number; time: number } | null {
  const { times, levels } = probe
  let first = times.length
  while (first > 0 && times[first - 1]! >= from) first--
  const centre = first === times.length ? 0 : middle(levels.slice(first))
  const far = Math.max(MIN_STEP, 6 * probe.noise)
  let [n, level, time] = [0, 0, 0]
  for (let i = first; i < times.length; i++) {
    if (Math.abs(levels[i]! - centre) > far) continue
    n++
    level += levels[i]!
    time += times[i]!
  }
  return n === 0 ? null : { level: level / n, time: time / n }
}
