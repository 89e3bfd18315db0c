/** A straight line through points in days, with the standard error of its slope. */
export interface Trend {
  readonly slope: number
  readonly error: number
  readonly count: number
}

/** Least squares over the points that are there; no number where they are fewer than three or all of one time. */
export function trendOf(days: ArrayLike<number>, values: ArrayLike<number>): Trend {
  let [count, meanT, meanX, tt, tx, xx] = [0, 0, 0, 0, 0, 0]
  for (let i = 0; i < values.length; i++) {
    const t = days[i]!
    const x = values[i]!
    if (Number.isNaN(x) || Number.isNaN(t)) continue
    count++
    const t0 = t - meanT
    const x0 = x - meanX
    meanT += t0 / count
    meanX += x0 / count
    tt += t0 * (t - meanT)
    tx += t0 * (x - meanX)
    xx += x0 * (x - meanX)
  }
  if (count < 3) return { slope: Number.NaN, error: Number.NaN, count }
  const slope = tx / tt
  return { slope, error: Math.sqrt(Math.max(0, xx - slope * tx) / (count - 2) / tt), count }
}
