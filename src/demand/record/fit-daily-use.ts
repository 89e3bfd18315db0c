import { type LinearFit, leastSquares } from '../../numerics/least-squares.js'
import { studentTwoSided } from '../../numerics/student-t.js'
import { sumsAboutMeans } from '../../numerics/sums-about-means.js'
import { CONFIDENCE } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { maxOf } from '../../quantity/extremes.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { DAILY_RADIATION_SUM, TEST_SHARE } from '../domains.js'
import type { IntervalConfidence } from '../terms.js'
import type { DoubtedFit, UseFinding } from '../use-finding.js'

/** Days of measured use with the climate that drove it, in order of time. NaN marks what is missing. */
export interface DailyUseRecord extends IntervalConfidence {
  /** Water used each day, weighed, or given less drained; mm (L/m²) or L for a plant. Unit: mm. Range: any. */
  readonly use: Float64Array
  /** Radiation sum of each day; no day brings more than 5000, and a record of less than 50 on every day is doubted. Unit: J/cm². Range: any. */
  readonly radiationSum: Float64Array
  /** Sum over each day of the vapour pressure deficit times hours. Unit: kPa·h. Range: any. */
  readonly deficitHours: Float64Array
  /** Share of the usable days, the last ones, that are kept out of the fit to test it; 0.3 by default. Unit: 1. Range: [0.1, 0.5]. */
  readonly testShare?: number
}

/** A fitted coefficient and how surely it is known. */
export interface FittedUse {
  /** Estimate, in the unit of the use for each unit of the cause. Unit: use/cause. */
  readonly value: number
  /** Lower end of the interval. Unit: use/cause. */
  readonly low: number
  /** Upper end of the interval. Unit: use/cause. */
  readonly high: number
}

/** Coefficients from a record, and what days outside the fit say of them. */
export interface DailyUseFit extends DoubtedFit {
  /** Use for each J/cm². */
  readonly perJoule: FittedUse
  /** Use for each kPa·h. */
  readonly perDeficitHour: FittedUse
  /** Days that were fitted. Unit: 1. */
  readonly fittedDays: number
  /** Days that were kept back. Unit: 1. */
  readonly testDays: number
  /** Days left out because a number is missing, infinite or negative, or a radiation sum is more than any day brings. Unit: 1. */
  readonly skippedDays: number
  /** Root mean square error on the fitted days. Unit: mm. */
  readonly fittedError: number
  /** Root mean square error on the days kept back. Unit: mm. */
  readonly testError: number
  /** Mean of predicted less measured on the days kept back. Unit: mm. */
  readonly testBias: number
  /** Share of the variance of the days kept back that is explained; negative when their own mean would do better. Unit: 1. */
  readonly testExplained: number
  /** Correlation of the two causes on the fitted days; NaN never, 0 when one of them does not vary. Unit: 1. */
  readonly correlation: number
  /** Whether the record can tell both coefficients and stands the test: nothing was found. */
  readonly usable: boolean
}

const FEWEST = 10
/** A record of dull winter days has a brighter one, and no day has so many MJ/m². Own judgement, no source. Unit: J/cm². */
const DULL = 50

/**
 * Your own coefficients of water use, from days of measured use: so much for each J/cm² and so much for each kPa·h.
 *
 * It explains days that have passed, and tells whether a record can separate the two causes. As a forecast it lost to "as yesterday" in
 * seven of eight real records, because a crop grows: for tomorrow use `forecastDailyUse`.
 *
 * @param record - Use, radiation and dryness of days, in order of time.
 * @procedure Leaves out days with a number that is missing, negative or more light than a day brings, keeps the last days back, fits the rest by least squares without a
 *   constant, gives Student intervals, predicts the days kept back, and says when the record cannot tell the causes apart or no day is as bright as a dull one.
 * @returns Coefficients, intervals, errors in and out of the fit, and cautions.
 * @throws `DomainError` outside the ranges, and for a radiation sum that no day brings where without such days fewer than 10 can be fitted; `InputError` when lengths differ, when fewer than 10 days can be fitted or when the causes cannot be told apart at all.
 * @validity Crops whose size changes little over the record; for a growing crop fit anew every two or three weeks.
 * @source draper-1998, chapters 1 and 5
 * @example
 * const radiation = Float64Array.from({ length: 20 }, (_, i) => 1000 + 100 * (i % 7))
 * const dry = Float64Array.from({ length: 20 }, (_, i) => 10 + (i % 5))
 * const use = radiation.map((s, i) => 0.0018 * s + 0.05 * dry[i])
 * const fit = fitDailyUse({ use, radiationSum: radiation, deficitHours: dry })
 * fit.perJoule.value // => 0.0018
 * fit.perDeficitHour.value // => 0.0500
 */
export function fitDailyUse(record: DailyUseRecord): DailyUseFit {
  requireObject(record, 'record')
  const testShare = numberIn(optionOr(record.testShare, 0.3), TEST_SHARE, 'testShare')
  const confidence = numberIn(optionOr(record.confidence, 0.95), CONFIDENCE, 'confidence')
  const [use, radiationSum, deficitHours] = alignedDays(record)
  const days = completeDays([use, sunlit(radiationSum, testShare), deficitHours])
  const testDays = testDaysOf(days.length, testShare)
  const fitted = days.slice(0, days.length - testDays)
  const rowOf = (i: number) => [radiationSum[i]!, deficitHours[i]!]
  const fit = fitRows(
    fitted.map(rowOf),
    fitted.map((i) => use[i]!),
  )
  const [perJoule, perDeficitHour] = intervals(fit, fitted.length, confidence)
  const kept = days.slice(days.length - testDays)
  const misses = kept.map((i) => perJoule.value * rowOf(i)[0]! + perDeficitHour.value * rowOf(i)[1]! - use[i]!)
  const spread = squares(offMean(kept.map((i) => use[i]!)))
  const testExplained = spread > 0 ? 1 - squares(misses) / spread : 0
  const correlation = correlationOf(fitted.map(rowOf))
  const brightest = maxOf(days.map((i) => radiationSum[i]!))
  const findings = doubts(perJoule, perDeficitHour, correlation, testExplained, brightest)
  return {
    perJoule,
    perDeficitHour,
    fittedDays: fitted.length,
    testDays,
    skippedDays: use.length - days.length,
    fittedError: Math.sqrt(squares(fit.residuals) / fitted.length),
    testError: Math.sqrt(squares(misses) / testDays),
    testBias: misses.reduce((total, miss) => total + miss, 0) / testDays,
    testExplained,
    correlation,
    usable: findings.length === 0,
    findings,
  }
}

type Series = ArrayLike<number>

function alignedDays(record: DailyUseRecord): readonly [use: Series, radiationSum: Series, deficitHours: Series] {
  const use = seriesOf(record.use, 'use')
  const radiationSum = seriesOf(record.radiationSum, 'radiationSum')
  const deficitHours = seriesOf(record.deficitHours, 'deficitHours')
  if (radiationSum.length === use.length && deficitHours.length === use.length) return [use, radiationSum, deficitHours]
  throw new InputError('use', 'the three series differ in length', 'give one number a day in each, NaN where missing')
}

/** How many of the days are kept back. */
function testDaysOf(days: number, testShare: number): number {
  return Math.max(2, Math.round(days * testShare))
}

/** The sums without those that no sun brings, which are of another unit. Where hardly any are left, that is what is wrong. */
function sunlit(sums: Series, testShare: number): Series {
  const kept = Float64Array.from(sums, (sum) => (sum > DAILY_RADIATION_SUM.max ? Number.NaN : sum))
  const bright = Array.from(sums).find((sum) => sum > DAILY_RADIATION_SUM.max)
  const left = kept.filter((sum) => sum >= 0).length
  if (bright !== undefined && left - testDaysOf(left, testShare) < FEWEST)
    numberIn(bright, DAILY_RADIATION_SUM, 'radiationSum')
  return kept
}

/** The days on which nothing is missing or negative. */
function completeDays(series: readonly Series[]): number[] {
  return Array.from({ length: series[0]!.length }, (_, i) => i).filter((i) => series.every((one) => one[i]! >= 0))
}

function fitRows(rows: readonly (readonly number[])[], use: readonly number[]): LinearFit {
  if (rows.length < FEWEST) {
    throw new InputError(
      'use',
      `only ${rows.length} days can be fitted`,
      `record ${FEWEST} complete days besides the test days`,
    )
  }
  const fit = leastSquares(rows, use)
  if (fit === undefined) {
    throw new InputError('deficitHours', 'radiation and dryness move as one', 'record days on which they differ')
  }
  return fit
}

function intervals(fit: LinearFit, count: number, confidence: number): [FittedUse, FittedUse] {
  const freedom = count - 2
  const variance = squares(fit.residuals) / freedom
  const reach = studentTwoSided(confidence, freedom)
  const of = (k: number): FittedUse => {
    const value = fit.coefficients[k]!
    const half = reach * Math.sqrt(variance * fit.inverse[k]![k]!)
    return { value, low: value - half, high: value + half }
  }
  return [of(0), of(1)]
}

function doubts(
  joule: FittedUse,
  hour: FittedUse,
  correlation: number,
  explained: number,
  brightest: number,
): UseFinding[] {
  const found: UseFinding[] = []
  const say = (code: UseFinding['code'], about: string, value: number, limit: number, unit: UseFinding['unit']) =>
    found.push({ code, level: 'caution', about, value, limit, unit })
  if (joule.low <= 0) say('cannot-tell-radiation', 'perJoule', joule.value, 0, 'use/cause')
  if (hour.low <= 0) say('cannot-tell-dryness', 'perDeficitHour', hour.value, 0, 'use/cause')
  if (Math.abs(correlation) > 0.95) say('causes-move-together', 'correlation', correlation, 0.95, '1')
  if (explained < 0.5) say('fails-new-days', 'testExplained', explained, 0.5, '1')
  if (brightest < DULL) say('hardly-any-light', 'radiationSum', brightest, DULL, 'J/cm²')
  return found
}

function squares(values: readonly number[]): number {
  return values.reduce((total, value) => total + value * value, 0)
}

function offMean(values: readonly number[]): number[] {
  const mean = values.reduce((total, value) => total + value, 0) / values.length
  return values.map((value) => value - mean)
}

/** Zero where one of the two never varies. */
function correlationOf(rows: readonly (readonly number[])[]): number {
  const { xx, xy, yy } = sumsAboutMeans(
    rows.map((row) => row[0]!),
    rows.map((row) => row[1]!),
  )
  const scale = Math.sqrt(xx * yy)
  return scale > 0 ? xy / scale : 0
}
