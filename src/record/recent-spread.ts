/** Readings of a part of the time: its beginning, their number, mean and sum of squares about it. */
export type SpreadPart = readonly [begin: number, count: number, mean: number, squares: number]

/** The spread of the newest readings, in parts that leave one by one. */
export type RecentSpread = readonly SpreadPart[]

/** The time is kept in so many parts, and the part that is under way. */
const PARTS = 25
/** Fewer readings tell no spread. */
const FEWEST = 10

export function newSpread(): RecentSpread {
  return []
}

/** The spread with one more reading. A clock that was set back begins anew. */
export function withSpread(spread: RecentSpread, time: number, value: number, over: number): RecentSpread {
  if (Number.isNaN(value) || Number.isNaN(time)) return spread
  const long = over / PARTS
  const begin = Math.floor(time / long) * long
  const last = spread[spread.length - 1]
  if (last === undefined || begin < last[0]) return [[begin, 1, value, 0]]
  const [, count, mean, squares] = last
  if (begin > last[0]) {
    let first = 0
    while (first < spread.length && spread[first]![0] < begin - over) first++
    return [...spread.slice(first), [begin, 1, value, 0]]
  }
  const off = value - mean
  const next = mean + off / (count + 1)
  const kept = spread.slice()
  kept[kept.length - 1] = [begin, count + 1, next, squares + off * (value - next)]
  return kept
}

/** The standard deviation of the readings, or undefined where they are too few or all the same. */
export function spreadOf(spread: RecentSpread): number | undefined {
  let [count, mean, squares] = [0, 0, 0]
  for (const [, n, m, s] of spread) {
    const off = m - mean
    squares += s + (off * off * count * n) / (count + n)
    mean += (off * n) / (count + n)
    count += n
  }
  const variance = squares / (count - 1)
  return count < FEWEST || !(variance > 0) ? undefined : Math.sqrt(variance)
}
