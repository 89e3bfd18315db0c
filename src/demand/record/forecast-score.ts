/** How well forecasts met days that they had not seen. */
export interface ForecastScore {
  /** Days that were forecast and measured. Unit: 1. */
  readonly days: number
  /** Root mean square error. Unit: mm. */
  readonly error: number
  /** Mean of forecast less measured. Unit: mm. */
  readonly bias: number
  /** Share of the variance from day to day that is explained; negative when the mean would do better. Unit: 1. */
  readonly explained: number
  /** Root mean square error of taking the use of the day before instead. Unit: mm. */
  readonly yesterdayError: number
}

/** Scores forecasts on the given days; the day before is the one before it in `order`. */
export function forecastScore(
  use: Float64Array,
  forecasts: Float64Array,
  order: readonly number[],
  from: number,
): ForecastScore {
  const scored = order.slice(from).filter((day) => !Number.isNaN(forecasts[day]))
  const count = scored.length
  const meanOf = (value: (day: number) => number) => scored.reduce((total, day) => total + value(day), 0) / count
  const mean = meanOf((day) => use[day]!)
  const missed = meanOf((day) => (forecasts[day]! - use[day]!) ** 2)
  const spread = meanOf((day) => (use[day]! - mean) ** 2)
  const before = (day: number) => use[order[order.indexOf(day) - 1]!]!
  return {
    days: count,
    error: Math.sqrt(missed),
    bias: meanOf((day) => forecasts[day]! - use[day]!),
    explained: spread > 0 ? 1 - missed / spread : 0,
    yesterdayError: Math.sqrt(meanOf((day) => (before(day) - use[day]!) ** 2)),
  }
}
