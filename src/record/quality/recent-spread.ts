import type { StateReader } from '../restore-state.js'

/** Readings of a part of the time: its beginning, their number, mean and sum of squares about it. */
export type SpreadPart = readonly [begin: number, count: number, mean: number, squares: number]

/** Number, mean and sum of squares about it of some readings. */
export type SpreadSum = readonly [count: number, mean: number, squares: number]

/** The spread of the newest readings, in parts that leave one by one. */
export interface RecentSpread {
  /** Parts that are over, oldest first. */
  readonly parts: readonly SpreadPart[]
  /** All of them together, summed anew from the first on whenever one comes or leaves, so that rounding cannot add up. */
  readonly sum: SpreadSum
  /** The part that is under way. */
  readonly open: SpreadPart | null
}

/** The time is kept in so many parts, and the part that is under way. */
const PARTS = 25
/** Fewer readings tell no spread. */
const FEWEST = 10

export const NO_SPREAD: RecentSpread = { parts: [], sum: [0, 0, 0], open: null }

/** The spread with one more reading. A clock that was set back begins anew. */
export function withSpread(spread: RecentSpread, time: number, value: number, over: number): RecentSpread {
  if (Number.isNaN(value) || Number.isNaN(time)) return spread
  const long = over / PARTS
  const begin = Math.floor(time / long) * long
  const { parts, sum, open } = spread
  if (open === null || begin < open[0]) return { ...NO_SPREAD, open: [begin, 1, value, 0] }
  if (begin > open[0]) {
    const kept = [...parts, open].filter(([from]) => from >= begin - over)
    return { parts: kept, sum: sumOf(kept), open: [begin, 1, value, 0] }
  }
  const count = open[1] + 1
  const off = value - open[2]
  const mean = open[2] + off / count
  return { parts, sum, open: [begin, count, mean, open[3] + off * (value - mean)] }
}

/** The standard deviation of the readings, or undefined where they are too few or all the same. */
export function spreadOf({ sum, open }: RecentSpread): number | undefined {
  if (open === null) return undefined
  const count = sum[0] + open[1]
  if (count < FEWEST) return undefined
  const variance = joinedSquares(sum, open) / (count - 1)
  return variance > 0 ? Math.sqrt(variance) : undefined
}

function sumOf(parts: readonly SpreadPart[]): SpreadSum {
  return parts.reduce(joined, [0, 0, 0])
}

function joined(sum: SpreadSum, part: SpreadPart): SpreadSum {
  const count = sum[0] + part[1]
  return [count, sum[1] + ((part[2] - sum[1]) * part[1]) / count, joinedSquares(sum, part)]
}

/** Sum of squares of both about their common mean. */
function joinedSquares(sum: SpreadSum, part: SpreadPart): number {
  const off = part[2] - sum[1]
  return sum[2] + (part[3] + (off * off * sum[0] * part[1]) / (sum[0] + part[1]))
}

/** A spread that was kept as JSON, checked; what its parts sum up to is worked out again. */
export function restoredSpread(reader: StateReader): RecentSpread {
  const part = (one: StateReader): SpreadPart => [one.number('0'), one.count('1'), one.number('2'), one.number('3', 0)]
  // Two borders of parts can fall into the same time by rounding.
  const parts = reader.list('parts', PARTS + 2, part)
  const open = reader.insideOrNull('open', part)
  const all = open === null ? parts : [...parts, open]
  for (let i = 1; i < all.length; i++)
    if (!(all[i]![0] > all[i - 1]![0])) reader.refuse('parts', 'are not in the order of time')
  if (open === null && parts.length > 0) reader.refuse('open', 'is null behind parts that are over')
  return { parts, sum: sumOf(parts), open }
}
