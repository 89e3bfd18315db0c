import { maxOf } from '../../../quantity/extremes.js'
import { timeApart } from './time-apart.js'
import type { ProbeWatch } from './watch-probe.js'

/** Half-hour means of the probes, to see two of them change places. */
export interface PairWatch {
  readonly start: number | null
  readonly sums: readonly number[]
  readonly counts: readonly number[]
  readonly seen: readonly (number | null)[]
  /** Means of the last half hours, the newest last. Unit: m³/m³. */
  readonly means: readonly (readonly (number | null)[])[]
  readonly swap: Swap | null
}

/** Two probes that changed places. */
export interface Swap {
  readonly time: number
  readonly first: number
  readonly second: number
  /** How far apart they stood before and after. Unit: m³/m³. */
  readonly before: number
  readonly after: number
}

/** Unit: s. */
export const BIN = 1800
const BINS = 8

export function newPairs(probes: number): PairWatch {
  const zeros = new Array<number>(probes).fill(0)
  return { start: null, sums: zeros, counts: zeros, seen: zeros.map(() => null), means: [], swap: null }
}

/** `moved` is what shots of the last hours can have moved the difference of two places by. */
export function withLevels(pairs: PairWatch, probes: readonly ProbeWatch[], now: number, moved: number): PairWatch {
  const due = pairs.start !== null && now - pairs.start >= BIN
  const open = due ? shut(pairs, probes, now, moved) : pairs
  const sums = [...open.sums]
  const counts = [...open.counts]
  const seen = probes.map((probe, i) => {
    const time = probe.times[probe.times.length - 1]
    if (time === undefined || time <= (open.seen[i] ?? -Infinity)) return open.seen[i] ?? null
    sums[i] = sums[i]! + probe.levels[probe.levels.length - 1]!
    counts[i] = counts[i]! + 1
    return time
  })
  return { ...open, start: open.start ?? now, sums, counts, seen }
}

/** Fall of a probe between the last two half hours and the two before, and its standard error by the noise. Unit: m³/m³/s. */
export function fallOfHour(
  { means }: PairWatch,
  i: number,
  probe: ProbeWatch,
): { readonly fall: number; readonly error: number } | null {
  const [a, b, c, d] = means.slice(-4).map((mean) => mean[i])
  if (a == null || b == null || c == null || d == null) return null
  const readings = Math.max(1, BIN / timeApart(probe))
  return { fall: (a + b - c - d) / (4 * BIN), error: probe.noise / Math.sqrt(readings) / (2 * BIN) }
}

function shut(pairs: PairWatch, probes: readonly ProbeWatch[], now: number, moved: number): PairWatch {
  const jumped = probes.map(({ step }) => step !== null && now - step.time < BINS * BIN)
  const mean = pairs.sums.map((sum, i) => (pairs.counts[i]! > 0 ? sum / pairs.counts[i]! : null))
  const means = [...pairs.means, mean].slice(-BINS)
  const zeros = pairs.sums.map(() => 0)
  return {
    ...pairs,
    start: now,
    sums: zeros,
    counts: zeros,
    means,
    swap: swapIn(means, jumped, now, moved) ?? pairs.swap,
  }
}

/** Smallest difference between two probes of which a change of sign can be seen. It and the shares below are chosen on rehearsals. Unit: m³/m³. */
const MIN_APART = 0.0025

/**
 * Two probes changed places where their difference, steady for two hours, turns its sign from one hour to the next and keeps its size, while
 * their mean goes on. Places differ in what they get of a shot: with shots between, only a larger difference can tell. Where a shot has just moved
 * the difference, the half hour before must be the mirror of those after, and nothing else have moved nearly as much.
 */
function swapIn(means: PairWatch['means'], jumped: readonly boolean[], now: number, moved: number): Swap | null {
  if (means.length < BINS) return null
  const last = means[means.length - 1]!
  for (let a = 0; a < last.length; a++)
    for (let b = a + 1; b < last.length; b++) {
      // One that jumped alone was moved.
      if (jumped[a] !== jumped[b]) continue
      const apart = means.map((mean) => {
        const [x, y] = [mean[a], mean[b]]
        return x == null || y == null ? null : x - y
      })
      if (apart.some((one) => one === null)) continue
      const [old, young] = [(apart as number[]).slice(0, 5), (apart as number[]).slice(6)]
      const before = old.reduce((sum, one) => sum + one / 5, 0)
      const after = young.reduce((sum, one) => sum + one / 2, 0)
      const size = Math.abs(before)
      const near = Math.max(0.0015, 0.3 * size)
      const isClose = (one: number, mean: number) => Math.abs(one - mean) < near
      if (size < MIN_APART + moved || !young.every((one) => isClose(one, after))) continue
      const steady = old.every((one) => isClose(one, before)) && isClose(after, -before)
      if (steady || isMirror(old, after)) return { time: now - 2.5 * BIN, first: a, second: b, before, after }
    }
  return null
}

function isMirror(old: readonly number[], after: number): boolean {
  const last = old[old.length - 1]!
  const moved = old.slice(1).map((one, i) => Math.abs(one - old[i]!))
  const isTurned = Math.sign(last) === -Math.sign(after) && Math.abs(last + after) < 0.3 * Math.abs(after)
  return isTurned && Math.abs(after) >= 2 * MIN_APART && Math.abs(after - last) > 3 * maxOf(moved)
}
