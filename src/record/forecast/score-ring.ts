import type { StateReader } from '../restore-state.js'

/**
 * The newest misses of a forecast, oldest first, from which the band of the next one is taken. How much a band leaves out follows
 * its own cover, so that it holds whatever the misses are like: adaptive conformal inference, Gibbs and Candès (2021).
 */
export interface ScoreRing {
  /** Misses relative to what was forecast, at most 40. Unit: 1. Range: any. */
  readonly scores: readonly number[]
  /** Share that the 50 % band leaves out. Unit: 1. Range: any. */
  readonly miss50: number
  /** Share that the 90 % band leaves out. Unit: 1. Range: any. */
  readonly miss90: number
}

/** How many misses a ring holds. */
const SIZE = 40
/** How fast a band follows its own cover. */
const PACE = 0.03
/** Ends of the share that a band leaves out. */
const MIN_MISS = 0.002
const MAX_MISS = 0.95

/** Quantiles of a normal distribution at (i + 1/2)/20: a ring starts with them, and real misses push them out one by one. */
const NORMAL: readonly number[] = [
  -1.96, -1.44, -1.15, -0.935, -0.755, -0.598, -0.454, -0.319, -0.189, -0.0627, 0.0627, 0.189, 0.319, 0.454, 0.598,
  0.755, 0.935, 1.15, 1.44, 1.96,
]

/** A ring that knows no real miss: two-sided ones of such a spread, or only their sizes. */
export function newRing(spread: number, sides: 'both' | 'size'): ScoreRing {
  const scores = NORMAL.map((one) => spread * (sides === 'size' ? Math.abs(one) : one))
  return { scores, miss50: 0.5, miss90: 0.1 }
}

/** How many real misses a ring holds, up to the number that it starts with. */
export function realMisses(ring: ScoreRing): number {
  return ring.scores.length - NORMAL.length
}

/** The ring after one more miss. */
export function withScore(ring: ScoreRing, score: number, sides: 'both' | 'size'): ScoreRing {
  const sorted = ring.scores.slice().sort((a, b) => a - b)
  const adapted = (miss: number, wanted: number) => {
    const [low, high] = sides === 'size' ? [0, quantile(sorted, 1 - miss)] : band(sorted, miss)
    const missed = score < low || score > high ? 1 : 0
    return Math.min(MAX_MISS, Math.max(MIN_MISS, miss + PACE * (wanted - missed)))
  }
  const scores = ring.scores.slice(ring.scores.length < SIZE ? 0 : 1)
  scores.push(score)
  return { scores, miss50: adapted(ring.miss50, 0.5), miss90: adapted(ring.miss90, 0.1) }
}

/** The two-sided bands of 50 and 90 %, each as its lower and upper end. */
export function bandsOf(ring: ScoreRing): { readonly half: Ends; readonly ninety: Ends } {
  const sorted = ring.scores.slice().sort((a, b) => a - b)
  const half = band(sorted, ring.miss50)
  const ninety = band(sorted, ring.miss90)
  // Each follows its own cover, but the wider one must hold the narrower one.
  return { half, ninety: [Math.min(ninety[0], half[0]), Math.max(ninety[1], half[1])] }
}

/** The sizes that 50 and 90 % of the misses keep below. */
export function sizesOf(ring: ScoreRing): { readonly half: number; readonly ninety: number } {
  const sorted = ring.scores.slice().sort((a, b) => a - b)
  const half = Math.max(0, quantile(sorted, 1 - ring.miss50))
  return { half, ninety: Math.max(half, quantile(sorted, 1 - ring.miss90)) }
}

/** A ring that was kept as JSON, checked. */
export function restoredRing(reader: StateReader): ScoreRing {
  const scores = reader.numbers('scores', SIZE)
  if (scores.length < NORMAL.length) reader.refuse('scores', `has ${scores.length} entries, fewer than it starts with`)
  return {
    scores,
    miss50: reader.number('miss50', MIN_MISS, MAX_MISS),
    miss90: reader.number('miss90', MIN_MISS, MAX_MISS),
  }
}

type Ends = readonly [low: number, high: number]

function band(sorted: readonly number[], miss: number): Ends {
  return [quantile(sorted, miss / 2), quantile(sorted, 1 - miss / 2)]
}

/** The number at rank (n + 1)p; past the ends the line through the first or last three goes on. */
function quantile(sorted: readonly number[], p: number): number {
  const n = sorted.length
  const rank = (n + 1) * p - 1
  const at = (k: number) => sorted[k]!
  if (rank < 0) return at(0) + (rank * (at(2) - at(0))) / 2
  if (rank > n - 1) return at(n - 1) + ((rank - n + 1) * (at(n - 1) - at(n - 3))) / 2
  const k = Math.min(n - 2, Math.floor(rank))
  return at(k) + (rank - k) * (at(k + 1) - at(k))
}
