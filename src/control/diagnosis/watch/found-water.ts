import { maxOf } from '../../../quantity/extremes.js'
import { spread } from '../../middle.js'
import { KNOWN_RISES } from './step-of-probe.js'
import type { ProbeWatch } from './watch-probe.js'
import type { Watched } from './watched.js'

/** A balance with what it is made of. */
export interface BalanceMark {
  readonly time: number
  /** Unit: m³/m³. */
  readonly balance: number
  /** Level of each probe; null where it cannot be asked. Unit: m³/m³. */
  readonly levels: readonly (number | null)[]
  /** Counts of that moment. Unit: L. */
  readonly came: number
  readonly left: number
}

/** Water that came by nothing that is known. */
export interface FoundWater {
  readonly time: number
  /** Unit: m³/m³. */
  readonly size: number
  /** What of it drained. Unit: m³/m³. */
  readonly drained: number
  readonly lasted: number
}

/**
 * A smaller climb of the balance is none. The middle of five readings of two probes with a noise of 0.0015 m³/m³ errs by 0.0006 and the lowest
 * of half an hour by three times that; drain that is still to come makes the most of it. Chosen on rehearsals. Unit: m³/m³.
 */
const MIN = 0.015
/** What of a shot may be told wrongly, as places get and show more or less of it: chosen on rehearsals, in which they differ by a tenth. */
const UNEVEN = 0.15
/**
 * And than so many times the distance of the last five readings from their middle one, half a standard deviation: the middle one errs by half of
 * one, now and at the lowest of half an hour.
 */
const SCATTERS = 5
/** Drain beyond that of the shots, which no probe can feign that was moved: a third of the least climb. Unit: m³/m³. */
const SHARED = 0.005
/** So many times what came does not drain of it: the gauge counts in another unit. Chosen on rehearsals. */
const BEYOND = 5

/** Water that came since a mark by neither meter nor order. */
export function waterIn(
  base: BalanceMark,
  mark: BalanceMark,
  probes: readonly ProbeWatch[],
  { volume }: Watched,
): FoundWater | null {
  const size = mark.balance - base.balance
  const came = (mark.came - base.came) / volume
  const drained = (mark.left - base.left) / volume
  const min = Math.max(MIN, SCATTERS * scatterOf(mark.levels, probes)) + UNEVEN * came
  if (size < min) return null
  // Where the rise of a shot is not known, a wrong volume would look like water; where so much drains of one, the gauge counts wrongly.
  const isKnown = mark.levels.every((level, i) => level === null || probes[i]!.rises >= KNOWN_RISES)
  if (!isKnown && (came > 0 || drained > SHARED)) return null
  if (came > 0 && drained > BEYOND * came) return null
  // Drain beyond that of shots, or the other places beside the one that rose most.
  const isWater = drained >= came / 2 + SHARED || withoutBest(base, mark) + drained - came >= min / 2
  return isWater ? { time: mark.time, size, drained, lasted: mark.time - base.time } : null
}

/** Mean rise of all probes but the one that rose most; nothing where there is only one. */
function withoutBest(base: BalanceMark, mark: BalanceMark): number {
  const rises = mark.levels.flatMap((level, i) => (level === null ? [] : [level - base.levels[i]!]))
  if (rises.length < 2) return Number.NEGATIVE_INFINITY
  return (rises.reduce((sum, one) => sum + one, 0) - maxOf(rises)) / (rises.length - 1)
}

/** Mean scatter of the probes that are asked: a noise that has just begun is in no mean yet. */
function scatterOf(asked: readonly (number | null)[], probes: readonly ProbeWatch[]): number {
  const scatters = probes.flatMap(({ levels }, i) => (asked[i] === null ? [] : [spread(levels.slice(-5))]))
  return scatters.reduce((sum, one) => sum + one, 0) / scatters.length
}
