import { isPorewaterError } from '../quantity/attempt.js'
import type { BatchCounts, RefusalCount } from '../quantity/batch.js'
import { InputError } from '../quantity/errors.js'
import { requireList, requireObject } from '../quantity/guard.js'
import { columnOf } from '../quantity/missing.js'
import type { ProbeCalibration } from './calibration.js'
import { requireCalibration, valueAt } from './calibration-curve.js'
import { checkReading } from './calibration-samples.js'

/** A long series of readings of one calibrated probe. */
export interface ReadingSeries {
  /** What the readings mean, made by `calibrateTwoPoint`, `fitCalibration` or `restoreCalibration`. */
  readonly calibration: ProbeCalibration
  /** Readings of the probe; NaN is a missing one. Unit: raw. Range: any. */
  readonly readings: Float64Array
  /** Where the water contents go, row by row; it may be the array of readings itself. Unit: m³/m³. Range: any. */
  readonly output: Float64Array
}

/** What became of every row, and how many of the results are extrapolations. */
export interface SeriesCounts extends BatchCounts {
  /** Converted rows whose reading lies below the samples. Unit: 1. */
  readonly belowSpan: number
  /** Converted rows whose reading lies above the samples. Unit: 1. */
  readonly aboveSpan: number
  /** Converted rows whose water content is below zero or above the porosity. Unit: 1. */
  readonly impossible: number
}

/**
 * Water contents from a long series of readings, written into an array of the caller. No row is lost.
 *
 * @procedure Applies the calibration row by row. A missing reading stays NaN; one that cannot be used becomes NaN and is counted with its reason. Values outside the calibrated span or the pores are kept and counted.
 * @returns Counts of rows converted, missing, refused, extrapolated and impossible.
 * @throws `InputError` when the output is shorter than the readings.
 * @source definition
 * @example
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * const output = new Float64Array(3)
 * const readings = Float64Array.of(700, NaN, 1200)
 * applyCalibrationToSeries({ calibration, readings, output }) // => { converted: 2, missing: 1, refused: 0, aboveSpan: 1 }
 * output // => [0.4, NaN, 0.875]
 */
export function applyCalibrationToSeries(series: ReadingSeries): SeriesCounts {
  requireObject(series, 'series')
  requireList(series.output, 'output')
  requireCalibration(series.calibration)
  const { calibration, output } = series
  const readings = columnOf(series.readings, 'readings')
  const rows = readings.length
  if (output.length < rows)
    throw new InputError(
      'output',
      `it has room for ${output.length} of ${rows} rows`,
      'make it as long as the readings',
    )
  const { exponent, porosity = 1 } = calibration
  const { min, max } = calibration.span
  const refusals: Refused[] = []
  let [missing, belowSpan, aboveSpan, impossible, refused] = [0, 0, 0, 0, 0]
  let i = convertPlain(calibration, readings, output, 0)
  while (i < rows) {
    const reading = readings[i]!
    const value = valueAt(calibration, reading)
    output[i] = value
    if (Number.isNaN(reading)) missing++
    else if (refuse(refusals, reading, value, exponent, i)) {
      output[i] = Number.NaN
      refused++
    } else {
      if (reading < min) belowSpan++
      else if (reading > max) aboveSpan++
      if (!(value >= 0 && value <= porosity)) impossible++
    }
    i = convertPlain(calibration, readings, output, i + 1)
  }
  const converted = rows - missing - refused
  return { rows, converted, missing, refused, refusals, belowSpan, aboveSpan, impossible }
}

/**
 * Converts rows from `start` on until one is out of the ordinary, and gives its index; that row is left as it is. A good row passes four
 * comparisons, which NaN does not.
 */
function convertPlain(calibration: ProbeCalibration, readings: Float64Array, output: Float64Array, start: number) {
  const { min, max } = calibration.span
  const full: number = calibration.porosity ?? 1
  const rows = readings.length
  let i = start
  if (calibration.exponent === 1 && calibration.knots.length === 0) {
    // The usual forms have a loop of their own, in which nothing is called.
    const [c0 = 0, c1 = 0, c2 = 0, c3 = 0] = calibration.coefficients
    for (; i < rows; i++) {
      const x = readings[i]!
      const value = ((c3 * x + c2) * x + c1) * x + c0
      if (!(x >= min && x <= max && value >= 0 && value <= full)) return i
      output[i] = value
    }
    return i
  }
  for (; i < rows; i++) {
    const reading = readings[i]!
    const value = valueAt(calibration, reading)
    if (!(reading >= min && reading <= max && value >= 0 && value <= full)) return i
    output[i] = value
  }
  return i
}

type Refused = { -readonly [K in keyof RefusalCount]: RefusalCount[K] }

/** Whether a reading cannot be used; if so it is counted with its reason. */
function refuse(refusals: Refused[], reading: number, value: number, exponent: number, first: number): boolean {
  let refusal: Omit<RefusalCount, 'count' | 'first'>
  try {
    checkReading(reading, exponent)
    if (value - value === 0) return false
    refusal = { code: 'not-finite', about: 'result', message: `row ${first} gave ${value}` }
  } catch (error) {
    if (!isPorewaterError(error)) throw error
    const about = `reading ${reading < 0 ? 'below' : 'above'} its range`
    refusal = { code: error.code, about, message: error.message }
  }
  const known = refusals.find(({ code, about }) => code === refusal.code && about === refusal.about)
  if (known === undefined) refusals.push({ ...refusal, count: 1, first })
  else known.count++
  return true
}
