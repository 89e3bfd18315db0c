import { choleskyFactor, choleskyInverse } from '../../numerics/cholesky.js'
import type { LeastSquaresMinimum } from '../../numerics/levenberg-marquardt.js'
import { studentTwoSided } from '../../numerics/student-t.js'
import { numberAt, type SoughtNumber } from './medium-numbers.js'

/** How well a number is told: an interval, or the reason why there is none, with the part of the range that is left. */
export type MediumNumberTold =
  | { readonly known: true; readonly interval: { readonly min: number; readonly max: number } }
  | {
      readonly known: false
      readonly reason: 'at-its-limit' | 'interval-reaches-limit'
      readonly range: { readonly min: number; readonly max: number }
    }

/**
 * Weak knowledge of every number: a normal distribution ten times as wide as its range. It changes nothing that data tell, and
 * lets numbers that they do not tell apart come out as wide as their ranges instead of as a singular matrix.
 */
const WIDE = 10

/** Intervals on the scale of the search by the curvature at its end, and the correlations between the numbers. */
export function toldBySearch(
  sought: readonly SoughtNumber[],
  { parameters, curvature, sumOfSquares, free }: LeastSquaresMinimum,
  freedom: number,
  confidence: number,
): { readonly told: MediumNumberTold[]; readonly correlation: number[][] } {
  // A sum of squares of nothing but rounding still has some variance.
  const variance = Math.max(sumOfSquares / freedom, 1e-12)
  const precision = curvature.map((row, i) =>
    row.map((entry, j) => {
      const { low, high } = sought[i]!
      return entry / variance + (i === j ? 1 / (WIDE * (high - low)) ** 2 : 0)
    }),
  )
  const scale = precision.map((row, i) => 1 / Math.sqrt(row[i]!))
  const factor = choleskyFactor(precision.map((row, i) => row.map((entry, j) => entry * scale[i]! * scale[j]!)))
  // With the weak knowledge a pivot vanishes only by rounding, where a number says the same as others.
  const inverse =
    'dependent' in factor
      ? sought.map((_, i) => sought.map((__, j) => (i === j ? Infinity : 0)))
      : choleskyInverse(factor.lower)
  const spread = inverse.map((row, i) => Math.sqrt(row[i]!))
  const reach = studentTwoSided(confidence, freedom)
  const told = sought.map((number, i): MediumNumberTold => {
    const width = reach * spread[i]! * scale[i]!
    // Uncertainties next to nothing leave no width that could be worked out: then the whole range is left.
    const half = Number.isNaN(width) ? Infinity : width
    const [min, max] = [parameters[i]! - half, parameters[i]! + half]
    const { low, high } = number
    if (free.includes(i) && min > low && max < high)
      return { known: true, interval: { min: numberAt(number, min), max: numberAt(number, max) } }
    return {
      known: false,
      reason: free.includes(i) ? 'interval-reaches-limit' : 'at-its-limit',
      range: { min: numberAt(number, Math.max(min, low)), max: numberAt(number, Math.min(max, high)) },
    }
  })
  const correlation = inverse.map((row, i) => row.map((entry, j) => (i === j ? 1 : entry / (spread[i]! * spread[j]!))))
  return { told, correlation }
}
