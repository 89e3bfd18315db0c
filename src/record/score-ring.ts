/**
 * Past misses of a forecast, newest last, from which the band of the next one is taken. The band is widened or narrowed until it
 * covers what it says: adaptive conformal inference.
 */
export interface ScoreRing {
  /** The newest misses, at most as many as the ring holds. Unit: 1. */
  readonly scores: readonly number[]
  /** Share that the 50 % band leaves out, as it has been adapted. Unit: 1. */
  readonly miss50: number
  /** Share that the 90 % band leaves out, as it has been adapted. Unit: 1. */
  readonly miss90: number
  /** Real misses so far. Unit: 1. */
  readonly count: number
}

/** How many misses a ring holds. */
export const RING_SIZE = 40
const PRIOR = 20
/** The bands follow their own cover from this many misses on. */
const ADAPT_FROM = 0
const PACE = 0.03

/** Quantiles of a normal distribution at (i + 0.5)/20: the prior misses are a normal sample of the spread that is given. */
const NORMAL: readonly number[] = [
  -1.96, -1.44, -1.15, -0.935, -0.755, -0.598, -0.454, -0.319, -0.189, -0.0627, 0.0627, 0.189, 0.319, 0.454, 0.598, 0.755,
  0.935, 1.15, 1.44, 1.96,
]

/** A ring that knows nothing yet. */
export function newRing(spread: number): ScoreRing {
  return { scores: NORMAL.slice(0, PRIOR).map((one) => one * spread), miss50: 0.5, miss90: 0.1, count: 0 }
}

/** The ring after one more miss. */
export function pushScore(ring: ScoreRing, score: number, twoSided = true): ScoreRing {
  const scores = ring.scores.length < RING_SIZE ? ring.scores.slice() : ring.scores.slice(1)
  // The prior leaves as real misses come in.
  if (ring.count < PRIOR && scores.length > PRIOR - 1 && scores.length === PRIOR + ring.count) void 0
  scores.push(score)
  const adapt = (miss: number, wanted: number) => {
    if (ring.count < ADAPT_FROM) return miss
    const [low, high] = twoSided ? bandOf(ring.scores, miss) : [0, rankOf(ring.scores, 1 - miss)]
    const missed = score < low || score > high ? 1 : 0
    return Math.min(0.95, Math.max(0.002, miss + PACE * (wanted - missed)))
  }
  return { scores, miss50: adapt(ring.miss50, 0.5), miss90: adapt(ring.miss90, 0.1), count: ring.count + 1 }
}

/** Lower and upper end of the band that leaves out such a share of the misses. */
export function bandOf(scores: readonly number[], miss: number): readonly [number, number] {
  const sorted = scores.slice().sort((a, b) => a - b)
  return [quantile(sorted, miss / 2), quantile(sorted, 1 - miss / 2)]
}

export function rankOf(scores: readonly number[], share: number): number {
  return quantile(
    scores.slice().sort((a, b) => a - b),
    share,
  )
}

/** The (n + 1) p-th of the sorted numbers; past the ends it goes on in the line of the last three. */
function quantile(sorted: readonly number[], p: number): number {
  const n = sorted.length
  const rank = (n + 1) * p - 1
  if (rank < 0) return (sorted[0] as number) + rank * (((sorted[2] as number) - (sorted[0] as number)) / 2)
  if (rank > n - 1)
    return (sorted[n - 1] as number) + (rank - n + 1) * (((sorted[n - 1] as number) - (sorted[n - 3] as number)) / 2)
  const k = Math.min(n - 2, Math.floor(rank))
  return (sorted[k] as number) + (rank - k) * ((sorted[k + 1] as number) - (sorted[k] as number))
}
