import { requireList, requireObject } from '../quantity/guard.js'
import type { CalibrationKnot, ProbeCalibration } from './calibration.js'
import { powerOf } from './power-of.js'

/** Refuses what is no calibration: `restoreCalibration` says in full what is wrong with a stored one. */
export function requireCalibration(calibration: ProbeCalibration): void {
  requireObject(calibration, 'calibration')
  requireList(calibration.coefficients, 'calibration.coefficients')
  requireList(calibration.knots, 'calibration.knots')
  requireObject(calibration.span, 'calibration.span')
}

/** The bare curve of a calibration. NaN stays NaN. */
export function valueAt({ exponent, coefficients, knots }: ProbeCalibration, reading: number): number {
  if (knots.length > 0) return throughKnots(knots, reading)[0]
  const x = powerOf(reading, exponent)
  let value = 0
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + coefficients[i]!
  return value
}

/** Slope of the water content with the reading. */
export function slopeOf({ exponent, coefficients, knots }: ProbeCalibration, reading: number): number {
  if (knots.length > 0) return throughKnots(knots, reading)[1]
  const [, c1 = 0, c2 = 0, c3 = 0] = coefficients
  if (exponent !== 1) return c1 * exponent * powerOf(reading, exponent - 1)
  return (3 * c3 * reading + 2 * c2) * reading + c1
}

/** Value and slope of the cubic through knots; beyond the ends it goes on straight. */
export function throughKnots(knots: readonly CalibrationKnot[], reading: number): [value: number, slope: number] {
  const last = knots.length - 1
  const [first, end] = [knots[0]!, knots[last]!]
  if (!(reading > first.reading)) return [first.waterContent + first.slope * (reading - first.reading), first.slope]
  if (!(reading < end.reading)) return [end.waterContent + end.slope * (reading - end.reading), end.slope]
  let low = 0
  let high = last
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (knots[middle]!.reading <= reading) low = middle
    else high = middle
  }
  const [a, b] = [knots[low]!, knots[high]!]
  const width = b.reading - a.reading
  const t = (reading - a.reading) / width
  const s = 1 - t
  const value =
    a.waterContent * s * s * (1 + 2 * t) +
    b.waterContent * t * t * (1 + 2 * s) +
    width * t * s * (a.slope * s - b.slope * t)
  const slope =
    (6 * t * s * (b.waterContent - a.waterContent)) / width + a.slope * s * (1 - 3 * t) + b.slope * t * (1 - 3 * s)
  return [value, slope]
}
