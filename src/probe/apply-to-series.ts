import { type BatchCounts, convertInto } from '../quantity/batch.js'
import type { ProbeCalibration, ProbeReading } from './calibration.js'
import { curveOf } from './calibration-curve.js'
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
 * @param series - Calibration, readings and output.
 * @procedure Applies the calibration row by row. A missing reading stays NaN; one that cannot be used becomes NaN and is counted with its reason. Values outside the calibrated span or the pores are kept and counted.
 * @returns Counts of rows converted, missing, refused, extrapolated and impossible.
 * @throws `InputError` when the output is shorter than the readings.
 * @source definition
 * @example
 * ```ts
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * const output = new Float64Array(3)
 * const readings = Float64Array.of(700, NaN, 1200)
 * applyCalibrationToSeries({ calibration, readings, output }) // => { converted: 2, missing: 1, refused: 0, aboveSpan: 1 }
 * output // => [0.4, NaN, 0.875]
 * ```
 */
export function applyCalibrationToSeries({ calibration, readings, output }: ReadingSeries): SeriesCounts {
  const curve = curveOf(calibration)
  const { exponent, porosity = 1 } = calibration
  const { lowest, highest } = calibration.span
  let belowSpan = 0
  let aboveSpan = 0
  let impossible = 0
  const counts = convertInto<ProbeReading>({
    readings,
    output,
    convert: (reading) => {
      const value = curve(checkReading(reading, exponent))
      if (reading < lowest) belowSpan++
      else if (reading > highest) aboveSpan++
      if (value < 0 || value > porosity) impossible++
      return value
    },
  })
  return { ...counts, belowSpan, aboveSpan, impossible }
}
