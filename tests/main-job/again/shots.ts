import { between, median, type Point, quantile, sorted, valuesOf } from './raw.js'

export interface Shot {
  readonly start: Point
  readonly peak: Point
  /** Last reading before the rise was large enough to show. */
  readonly unseen: Point
  /** First reading after the search for its peak had ended. */
  readonly over: Point | undefined
}

/** No longer pause between two readings is bridged: 2.2 steps of five minutes. */
export const LONGEST_STEP = 660
/** Water drains for so long after a shot, s. */
export const SETTLE = 2400

/**
 * Rises of at least this within half an hour, from the last reading that was as low to the highest. A rise that one reading alone shows is
 * none, and stands among the false ones.
 */
export function risesOf(points: readonly Point[], minRise: number): { readonly shots: Shot[]; readonly not: Shot[] } {
  const [shots, not]: [Shot[], Shot[]] = [[], []]
  let begin = 0
  for (let i = 1; i < points.length; i++) {
    const here = points[i]!
    if (here.t - points[i - 1]!.t > LONGEST_STEP) begin = i
    let from = i
    while (from > begin && here.t - points[from - 1]!.t <= 1800) from--
    const feet = points.slice(from, i)
    const low = Math.min(...valuesOf(feet))
    if (!(here.x - low > minRise - 1e-9)) continue
    const start = feet.filter(({ x }) => x - low <= minRise / 4 + 1e-9).at(-1) as Point
    let peak = here
    let above = 1
    let k = i + 1
    for (; k < points.length; k++) {
      const next = points[k]!
      if (next.t - points[k - 1]!.t > LONGEST_STEP) break
      if (next.x - start.x > minRise / 2) above++
      if (next.x > peak.x && next.t - start.t <= 1800) peak = next
      else if (next.t - peak.t > 600 || peak.x - next.x > minRise / 2 + 1e-9) break
    }
    ;(above > 1 ? shots : not).push({ start, peak, unseen: points[i - 1]!, over: points[k] })
    begin = k
    i = k
  }
  return { shots, not }
}

export const shotsOf = (points: readonly Point[], minRise: number) => risesOf(points, minRise).shots

/** The levels twenty minutes after each peak, if the next shot has not come before; of the upper half the middle, and half its middle half. */
export function drained(points: readonly Point[], shots: readonly Shot[]) {
  const levels = shots.flatMap(({ peak }, k) => {
    const end = shots[k + 1]?.start.t ?? Infinity
    const settled = points.find(({ t }) => t >= peak.t + 1200)
    return settled && settled.t <= end && settled.x < peak.x ? [settled.x] : []
  })
  const upper = sorted(levels).slice(levels.length >> 1)
  return {
    level: quantile(upper, 0.5),
    spread: (quantile(upper, 0.75) - quantile(upper, 0.25)) / 2,
    shots: upper.length,
  }
}

/** The longest stretch that a shot of the day ended, between what any probe saw and any opening of the valve. */
export function longestPause(shots: readonly Shot[], openings: readonly number[], day: number): [number, number] {
  const all = [
    ...shots.map(({ start, peak }) => [start.t, peak.t] as const),
    ...openings.map((t) => [t, t] as const),
  ].sort((a, b) => a[0] - b[0])
  let best: [number, number] = [0, 0]
  let end = all[0]?.[1] ?? 0
  for (const [from, to] of all) {
    if (from >= day && from - end > best[1] - best[0]) best = [end, from]
    end = Math.max(end, to)
  }
  return best
}

/** What a probe saw of that stretch, once its own last shot before had drained: middles of the first and last three readings. */
export function nightOf(points: readonly Point[], shots: readonly Shot[], [from, to]: readonly [number, number]) {
  const own = shots.filter(({ start }) => start.t < to).map(({ peak }) => peak.t + SETTLE)
  const there = points.filter(({ t }) => t >= Math.max(from, ...own) && t <= to)
  const [first, last] = [there[0]!, there.at(-1) as Point]
  const [evening, morning] = [median(valuesOf(there.slice(0, 3))), median(valuesOf(there.slice(-3)))]
  const fall = evening - morning
  return { from: first.t, to: last.t, fall, perHour: fall / ((last.t - first.t) / 3600), morning }
}

/** By how much a day changed the level: middle of the last hour less that of the hour about midnight. */
export function changeOf(points: readonly Point[], from: number, to: number): number {
  const middle = (a: number, b: number) => median(valuesOf(between(points, a, b)))
  return middle(to - 3600, to) - middle(from - 1800, from + 1800)
}
