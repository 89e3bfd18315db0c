import { InputError } from '../quantity/errors.js'
import type { DailyLightIntegral, Duration, RadiationSum } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { seriesOf } from '../quantity/missing.js'
import { MAX_GAP } from './domains.js'
import type { BridgedGap } from './terms.js'

/** A light meter at night may read a little below zero; more than this is a fault. */
const NIGHT_OFFSET = -20
/** No light of the sun or of lamps is stronger, in W/m² or µmol/m²/s. */
const STRONGEST = 5000

/** Readings of a pyranometer. */
export interface IrradianceSeries extends BridgedGap {
  /** Times, each later than the one before. Unit: s. Range: any. */
  readonly times: ArrayLike<number>
  /** Irradiance at these times; NaN where it is missing. Unit: W/m². Range: any. */
  readonly irradiance: ArrayLike<number>
}

/** Readings of a quantum sensor. */
export interface PhotonFluxSeries extends BridgedGap {
  /** Times, each later than the one before, within one day. Unit: s. Range: any. */
  readonly times: ArrayLike<number>
  /** Photon flux density at these times; NaN where it is missing. Unit: µmol/m²/s. Range: any. */
  readonly photonFlux: ArrayLike<number>
}

/** What a sum of light rests on. */
export interface LightCoverage {
  /** Time that the sum covers. Unit: s. */
  readonly covered: Duration
  /** Time between the first and the last reading that no readings cover: light in it is not in the sum. Unit: s. */
  readonly uncovered: Duration
  /** Readings that were missing. Unit: 1. */
  readonly missing: number
  /** Readings that cannot be light, taken as missing. Unit: 1. */
  readonly refused: number
  /** Readings a little below zero, as sensors show at night, taken as zero. Unit: 1. */
  readonly belowZero: number
}

/** Sum of radiation, with what it rests on. */
export interface RadiationSumResult extends LightCoverage {
  /** Radiation sum. Unit: J/cm². */
  readonly sum: RadiationSum
}

/** Daily light integral, with what it rests on. */
export interface DailyLightResult extends LightCoverage {
  /** Daily light integral. Unit: mol/m²/d. */
  readonly integral: DailyLightIntegral
}

/**
 * Sum of radiation from the readings of a pyranometer.
 *
 * Readings from -20 W/m² to zero count as zero; below that, or above 5000, a reading counts as missing. A gap that is longer than the
 * longest one is left out of the sum and reported, never filled.
 *
 * @equation `S = 10^{-4} \sum_i \frac{G_i + G_{i+1}}{2} (t_{i+1} - t_i)`
 * @returns Sum, the time that it covers, and counts.
 * @throws `DomainError` outside the range, `InputError` when lengths differ or times do not rise.
 * @source definition: trapezium rule; 1 J/cm² = 10 kJ/m²
 * @example
 * radiationSum({ times: [0, 3600], irradiance: [500, 500] }).sum // => 180
 */
export function radiationSum(series: IrradianceSeries): RadiationSumResult {
  requireObject(series, 'series')
  const { times, irradiance, maxGap = 7200 } = series
  const { total, ...coverage } = integrate(times, irradiance, numberIn(maxGap, MAX_GAP, 'maxGap'), 'irradiance')
  return { sum: (total * 1e-4) as RadiationSum, ...coverage }
}

/**
 * Daily light integral from the readings of a quantum sensor in one day.
 *
 * Readings from -20 µmol/m²/s to zero count as zero; below that, or above 5000, a reading counts as missing. A gap that is longer than
 * the longest one is left out and reported, never filled.
 *
 * @equation `DLI = 10^{-6} \sum_i \frac{Q_i + Q_{i+1}}{2} (t_{i+1} - t_i)`
 * @returns Integral, the time that it covers, and counts.
 * @throws `DomainError` outside the range, `InputError` when lengths differ, times do not rise, or they span more than a day.
 * @source definition: trapezium rule; torres-2010
 * @example
 * dailyLightIntegralOfSeries({ times: [0, 21600, 43200], photonFlux: [0, 900, 0], maxGap: hours(6) }).integral // => 19.44
 */
export function dailyLightIntegralOfSeries(series: PhotonFluxSeries): DailyLightResult {
  requireObject(series, 'series')
  const { times, photonFlux, maxGap = 7200 } = series
  const { total, ...coverage } = integrate(times, photonFlux, numberIn(maxGap, MAX_GAP, 'maxGap'), 'photonFlux')
  if (coverage.covered + coverage.uncovered > 86400)
    throw new InputError('times', 'span more than a day', 'pass the readings of one day')
  return { integral: (total * 1e-6) as DailyLightIntegral, ...coverage }
}

function integrate(
  times: ArrayLike<number>,
  readings: ArrayLike<number>,
  maxGap: number,
  name: string,
): LightCoverage & { readonly total: number } {
  const moments = seriesOf(times, 'times')
  const values = seriesOf(readings, name)
  const n = moments.length
  if (values.length !== n)
    throw new InputError(name, `has ${values.length} readings for ${n} times`, 'give one reading for each time')
  let total = 0
  let covered = 0
  let uncovered = 0
  let missing = 0
  let refused = 0
  let belowZero = 0
  let before = Number.NaN
  let beforeAt = moments[0]!
  for (let i = 0; i < n; i++) {
    const at = moments[i]!
    if (at - at !== 0 || (i > 0 && at <= moments[i - 1]!))
      throw new InputError('times', `time ${i} is ${at}, not later than the one before`, 'sort the readings by time')
    let value = values[i]!
    if (Number.isNaN(value)) {
      missing++
      continue
    }
    if (value < NIGHT_OFFSET || value > STRONGEST) {
      refused++
      continue
    }
    if (value < 0) {
      belowZero++
      value = 0
    }
    const step = at - beforeAt
    if (Number.isNaN(before) || step > maxGap) uncovered += step
    else {
      total += ((before + value) / 2) * step
      covered += step
    }
    before = value
    beforeAt = at
  }
  if (n > 0) uncovered += moments[n - 1]! - beforeAt
  return { total, covered: covered as Duration, uncovered: uncovered as Duration, missing, refused, belowZero }
}
