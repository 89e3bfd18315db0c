import { leastSquares } from '../../numerics/least-squares.js'
import { InputError } from '../../quantity/errors.js'
import { booleanOf, optionOr, requireList, requireObject, wholeNumberIn } from '../../quantity/guard.js'
import { WINDOW_DAYS } from '../domains.js'
import type { SkippedDays, UseSeries } from '../terms.js'
import { forecastRows, type UseCause } from './forecast-record.js'
import { type ForecastScore, forecastScore } from './forecast-score.js'

/** Days of use with what drove it, and how many days a fit looks back. */
export interface SlidingFitInput extends UseSeries {
  /** What drives use, with a value for each day; at least one. */
  readonly causes: readonly UseCause[]
  /** Complete days that each fit looks back on; 14 by default. Unit: d. Range: integers [5, 365]. */
  readonly window?: number
  /** Whether use has a base beside the causes; true by default. */
  readonly base?: boolean
}

/** Forecasts of each day from the days before it. */
export interface SlidingFit extends SkippedDays {
  /** Forecast of each day; NaN before the window is full and where a cause is missing. Unit: mm. */
  readonly forecasts: Float64Array
  /** How the forecasts met the days. */
  readonly score: ForecastScore
  /** Days that could not be forecast because in their window the causes move as one. Unit: 1. */
  readonly undecidedDays: number
}

/**
 * Use of each day forecast by coefficients that were fitted to the days just before it: the plain way, to compare others with. For the
 * use of tomorrow `forecastDailyUse` misses less.
 *
 * @param input - Use, causes, and days to look back.
 * @procedure For each day with known causes takes the last complete days before it, fits use by least squares, and applies the
 *   coefficients to the causes of the day. No day is forecast from itself or a later one.
 * @returns Forecasts and their errors on days that the fits had not seen.
 * @throws `DomainError` outside the ranges, `InputError` when lengths differ, no cause is given, or the record is not longer than the window.
 * @validity Days like those in the window; after pruning, a move or a new screen the window has to fill again.
 * @source draper-1998, chapter 1
 * @example
 * const sun = Float64Array.from({ length: 30 }, (_, i) => 1000 + 100 * (i % 7))
 * const use = sun.map((s) => 0.4 + 0.0015 * s)
 * const found = forecastBySlidingFit({ use, causes: [{ name: 'radiation', values: sun }], window: 10 })
 * found.forecasts[29] // => 2.05
 * found.score.days // => 20
 */
export function forecastBySlidingFit(input: SlidingFitInput): SlidingFit {
  requireObject(input, 'input')
  const window = wholeNumberIn(optionOr(input.window, 14), WINDOW_DAYS, 'window')
  requireList(input.causes, 'causes')
  if (input.causes.length === 0) throw new InputError('causes', 'there are none', 'give the radiation sum at least')
  const { rows, use, complete } = forecastRows(input.use, input.causes)
  const withBase = booleanOf(optionOr(input.base, true), 'base')
  if (complete.length <= Math.max(window, input.causes.length + 2)) {
    throw new InputError(
      'use',
      `only ${complete.length} days are complete`,
      `record more than ${window}, or look back less`,
    )
  }
  const columns = (day: number) => (withBase ? [1, ...rows[day]!] : rows[day]!)
  let undecidedDays = 0
  const forecasts = use.map((_, day) => {
    const past = complete.filter((other) => other < day).slice(-window)
    if (past.length < window || columns(day).some(Number.isNaN)) return Number.NaN
    const fit = leastSquares(
      past.map(columns),
      past.map((other) => use[other]!),
    )
    if (fit === undefined) {
      undecidedDays++
      return Number.NaN
    }
    return columns(day).reduce((total, value, k) => total + value * fit.coefficients[k]!, 0)
  })
  if (complete.slice(window).every((day) => Number.isNaN(forecasts[day]))) {
    throw new InputError('causes', 'they move as one or do not vary', 'record days on which they differ')
  }
  return {
    forecasts,
    score: forecastScore(use, forecasts, complete, window),
    skippedDays: use.length - complete.length,
    undecidedDays,
  }
}
