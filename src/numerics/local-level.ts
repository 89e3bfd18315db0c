/** A regression whose constant wanders, after the rows seen so far. Variances are in units of the variance of the noise. */
export interface LocalLevel {
  /** The constant, then one coefficient a column. */
  readonly state: Float64Array
  readonly variance: Float64Array[]
  /** Forecast of each row from the rows before it, and its variance. */
  readonly forecasts: Float64Array
  readonly spreads: Float64Array
}

/** Variance before any row: no knowledge beside noise of 1. */
const UNKNOWN = 1e8

/**
 * Kalman's filter for y = level + b·x + noise, where the level takes a random step of variance `pace` (in units of the noise) before
 * each row: Harvey (1989), Forecasting, Structural Time Series Models and the Kalman Filter. A row with NaN in
 * `observed` is forecast and not learnt from; one with NaN in `rows` is neither.
 */
export function localLevel(rows: readonly (readonly number[])[], observed: Float64Array, pace: number): LocalLevel {
  const size = (rows[0]?.length ?? 0) + 1
  const state = new Float64Array(size)
  const variance = Array.from({ length: size }, (_, i) => new Float64Array(size).fill(UNKNOWN, i, i + 1))
  const forecasts = new Float64Array(rows.length).fill(Number.NaN)
  const spreads = new Float64Array(rows.length).fill(Number.NaN)
  rows.forEach((row, t) => {
    variance[0]![0]! += pace
    const x = [1, ...row]
    if (x.some(Number.isNaN)) return
    const gain = variance.map((line) => x.reduce((total, value, j) => total + value * line[j]!, 0))
    const spread = x.reduce((total, value, j) => total + value * gain[j]!, 1)
    const forecast = x.reduce((total, value, j) => total + value * state[j]!, 0)
    forecasts[t] = forecast
    spreads[t] = spread
    const miss = observed[t]! - forecast
    if (Number.isNaN(miss)) return
    for (let i = 0; i < size; i++) {
      state[i]! += (gain[i]! * miss) / spread
      for (let j = 0; j < size; j++) variance[i]![j]! -= (gain[i]! * gain[j]!) / spread
    }
  })
  return { state, variance, forecasts, spreads }
}
