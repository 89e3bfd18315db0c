import type { WateringProbe } from '../state/state.js'
import { medianOf } from './probes.js'

/** A silence is not counted where the times of readings tell of so much more than was counted. Own judgement. Unit: s. */
const UNCOUNTED = 1200

/**
 * What probes fell by that speak again after a silence in which no time was counted, as after a power cut; of several the smallest fall, and nothing where one of
 * them fell faster than plants drink. Null where none was silent. Unit: m³/m³.
 */
export function fellInSilence(before: readonly WateringProbe[], now: readonly WateringProbe[]): number | null {
  let min: number | null = null
  for (let i = 0; i < now.length; i++) {
    const [old, { time, measured, values, fellFrom }] = [before[i]!, now[i]!]
    if (time === null || old.time === null || time - old.time - (measured - old.measured) <= UNCOUNTED) continue
    const level = medianOf(old, 0, 0)
    const fell = level === null || values.length === 0 || fellFrom !== null ? 0 : level - values[0]!
    min = Math.min(fell, min ?? fell)
  }
  return min
}
