import { type LocalLevel, localLevel } from '../../numerics/local-level.js'
import { studentTwoSided } from '../../numerics/student-t.js'
import { CONFIDENCE } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { PACE, TRAINING_SHARE } from '../domains.js'
import type { IntervalConfidence, SkippedDays, UseSeries } from '../terms.js'
import type { DoubtedFit, UseFinding } from '../use-finding.js'
import type { FittedUse } from './fit-daily-use.js'
import { type ForecastRows, forecastRows, type UseCause } from './forecast-record.js'
import { type ForecastScore, forecastScore } from './forecast-score.js'

/** Days of use with what drove it. */
export interface FollowingLevelInput extends UseSeries, IntervalConfidence {
  /** What drives use beside the level; may be none. */
  readonly causes: readonly UseCause[]
  /** Share of the complete days, the first ones, from which the pace of the level is learnt; 0.7 by default. Unit: 1. Range: [0.5, 0.9]. */
  readonly trainingShare?: number
  /** Variance of the daily step of the level over that of the noise; learnt by default. Unit: 1. Range: [0, 1000000]. */
  readonly pace?: number
}

/** A coefficient at the end of the record. */
export interface LevelCoefficient extends FittedUse {
  /** Name of the cause, or `level`. */
  readonly name: string
}

/** Forecasts of each day from the days before it, and what was learnt. */
export interface FollowingLevel extends SkippedDays, DoubtedFit {
  /** Forecast of each day; NaN on the first days and where a cause is missing. Unit: mm. */
  readonly forecasts: Float64Array
  /** Lower end of the interval of each forecast. Unit: mm. */
  readonly low: Float64Array
  /** Upper end of the interval of each forecast. Unit: mm. */
  readonly high: Float64Array
  /** The level, then the coefficient of each cause, after the last day. */
  readonly coefficients: readonly LevelCoefficient[]
  /** Pace of the level, as given or learnt. Unit: 1. */
  readonly pace: number
  /** Days from which the pace was learnt. Unit: 1. */
  readonly trainedDays: number
  /** How the forecasts met the days after those. */
  readonly score: ForecastScore
  /** Share of these days inside their interval. Unit: 1. */
  readonly covered: number
}

const FEWEST = 14

/**
 * Use of each day forecast from its causes and a level that follows the crop: growth, pruning and weather that no cause tells.
 *
 * It is for the question which cause drives use, with several causes and their intervals. For the use of tomorrow `forecastDailyUse`
 * misses less and its bands hold; those here count on a noise that stays what it was.
 *
 * Each day is forecast from the days before it by Kalman's filter. The pace q is the likeliest one of the training days alone, so the
 * days after them test it. A day without use is forecast all the same: add tomorrow with its expected causes and NaN as its use.
 *
 * @equation `u_t = \mu_t + \sum_j b_j x_{j,t} + e_t, \qquad \mu_t = \mu_{t-1} + w_t, \qquad q = \frac{\mathrm{var}\,w}{\mathrm{var}\,e}`
 * @returns Forecasts with intervals, coefficients, and errors on the days after the training.
 * @throws `DomainError` outside the ranges, `InputError` when lengths differ or fewer than 14 days are complete.
 * @validity One-day forecasts of a crop that changes step by step; the first days after pruning or a move are missed.
 * @source harvey-1989: the local level model with explanatory variables
 * @example
 * const sun = Float64Array.from({ length: 30 }, (_, i) => 1000 + 100 * (i % 7))
 * const use = sun.map((s, i) => 0.4 + 0.01 * i + 0.0015 * s)
 * const found = forecastByFollowingLevel({ use, causes: [{ name: 'radiation', values: sun }] })
 * found.forecasts[29] // => 2.33
 * found.score.days // => 9
 */
export function forecastByFollowingLevel(input: FollowingLevelInput): FollowingLevel {
  requireObject(input, 'input')
  const record = forecastRows(input.use, input.causes)
  const share = numberIn(optionOr(input.trainingShare, 0.7), TRAINING_SHARE, 'trainingShare')
  const confidence = numberIn(optionOr(input.confidence, 0.95), CONFIDENCE, 'confidence')
  const size = input.causes.length + 1
  const { complete, use } = record
  const trainedDays = Math.round(share * complete.length)
  refuseFew(complete.length, trainedDays, size)
  const trained = complete.slice(0, trainedDays)
  const scaled = inOwnScale(record, complete.slice(0, FEWEST))
  const pace = input.pace === undefined ? likeliestPace(scaled, trained, size) : numberIn(input.pace, PACE, 'pace')
  const found = localLevel(scaled.rows, scaled.use, pace)
  const noise = estimateNoise(found, scaled.use, trained.slice(size)).variance
  const reach = studentTwoSided(confidence, trained.length - size) * Math.sqrt(noise) * scaled.useScale
  const known = complete[size - 1]!
  const forecasts = found.forecasts.map((value, day) => (day > known ? value * scaled.useScale : Number.NaN))
  const half = found.spreads.map((value) => reach * Math.sqrt(value))
  const low = forecasts.map((value, day) => value - half[day]!)
  const high = forecasts.map((value, day) => value + half[day]!)
  const names = ['level', ...input.causes.map((cause) => cause.name)]
  const coefficients = names.map((name, k) => coefficientOf(name, k, found, scaled, reach))
  const tests = complete.slice(trainedDays)
  const inside = tests.filter((day) => use[day]! >= low[day]! && use[day]! <= high[day]!).length
  const score = forecastScore(use, forecasts, complete, trainedDays)
  return {
    forecasts,
    low,
    high,
    coefficients,
    pace,
    trainedDays,
    score,
    covered: inside / tests.length,
    skippedDays: use.length - complete.length,
    findings: doubts(coefficients.slice(1), score),
  }
}

function refuseFew(complete: number, trainedDays: number, size: number): void {
  if (complete < FEWEST || trainedDays < 2 * size + 2) {
    throw new InputError('use', `only ${complete} days are complete`, `record at least ${FEWEST}, more for many causes`)
  }
}

function coefficientOf(
  name: string,
  k: number,
  found: ReturnType<typeof localLevel>,
  scaled: ScaledRows,
  reach: number,
): FollowingLevel['coefficients'][number] {
  const unit = k === 0 ? 1 : scaled.scales[k - 1]!
  const value = (found.state[k]! * scaled.useScale) / unit
  const width = (reach * Math.sqrt(Math.max(0, found.variance[k]![k]!))) / unit
  return { name, value, low: value - width, high: value + width }
}

interface ScaledRows {
  readonly rows: number[][]
  readonly use: Float64Array
  readonly scales: readonly number[]
  readonly useScale: number
}

/** Numbers near 1 by the mean size on the first days, so that one start of the filter fits every unit. */
function inOwnScale({ rows, use }: ForecastRows, first: readonly number[]): ScaledRows {
  const meanSize = (value: (day: number) => number) =>
    first.reduce((total, day) => total + Math.abs(value(day)), 0) / first.length || 1
  const scales = rows[0]!.map((_, k) => meanSize((day) => rows[day]![k]!))
  const useScale = meanSize((day) => use[day]!)
  return {
    rows: rows.map((row) => row.map((value, k) => value / scales[k]!)),
    use: use.map((value) => value / useScale),
    scales,
    useScale,
  }
}

/** Variance of the noise, and the logarithm of the likelihood but for a constant, from the misses of the given days. */
function estimateNoise(found: LocalLevel, use: Float64Array, days: readonly number[]) {
  requireObject(found, 'input')
  let squares = 0
  let logs = 0
  for (const day of days) {
    squares += (use[day]! - found.forecasts[day]!) ** 2 / found.spreads[day]!
    logs += Math.log(found.spreads[day]!)
  }
  const variance = squares / days.length
  return { variance, likelihood: -(logs + days.length * Math.log(Math.max(variance, 1e-18))) }
}

/** The likeliest pace among 0.0001 to 1000 in steps of a tenth of a decade. */
function likeliestPace(scaled: ScaledRows, trained: readonly number[], size: number): number {
  let [best, at] = [-Infinity, 0]
  const last = trained.at(-1)!
  const rows = scaled.rows.slice(0, last + 1)
  for (let step = -40; step <= 30; step++) {
    const { likelihood } = estimateNoise(
      localLevel(rows, scaled.use, 10 ** (step / 10)),
      scaled.use,
      trained.slice(size),
    )
    if (likelihood > best) [best, at] = [likelihood, step]
  }
  return 10 ** (at / 10)
}

function doubts(causes: readonly LevelCoefficient[], { explained }: ForecastScore): UseFinding[] {
  const found: UseFinding[] = causes
    .filter(({ low, high }) => low <= 0 && high >= 0)
    .map(({ name, value }) => ({
      code: 'cannot-tell-cause',
      level: 'caution',
      about: name,
      value,
      limit: 0,
      unit: 'use/cause',
    }))
  if (explained < 0.5)
    found.push({ code: 'fails-new-days', level: 'caution', about: 'score', value: explained, limit: 0.5, unit: '1' })
  return found
}
