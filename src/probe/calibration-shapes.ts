import { InputError } from '../quantity/errors.js'
import type { CalibrationKnot, CalibrationStatistics } from './calibration.js'
import { throughKnots } from './calibration-curve.js'
import { expansion, fitPolynomial, turningPoint } from './calibration-polynomial.js'
import { levelsOf, monotoneKnots } from './monotone-cubic.js'
import { powerOf } from './power-of.js'

/** A fitted curve with its statistics. */
export interface CalibrationShape {
  readonly coefficients: readonly number[]
  readonly knots: readonly CalibrationKnot[]
  readonly statistics: CalibrationStatistics
}

export function polynomialShape(
  readings: readonly number[],
  y: readonly number[],
  weights: readonly number[],
  degree: number,
  exponent: number,
): CalibrationShape {
  const x = readings.map((reading) => powerOf(reading, exponent))
  const fit = fitPolynomial(x, y, weights, degree)
  refuseTurn(fit, exponent)
  const table = expansion(fit, degree)
  const coefficients = table.map((row) => dot(row, fit.coefficients))
  const statistics = statisticsOf(y, fit.residuals, weights, degree + 1, (i) => {
    const free = 1 - fit.leverages[i]!
    return free < 1e-9 ? undefined : fit.residuals[i]! / free
  })
  const variance = statistics.residualStandardDeviation ** 2
  return {
    coefficients,
    knots: [],
    statistics: {
      ...statistics,
      standardErrors: table.map((row) =>
        Math.sqrt(
          variance *
            dot(
              row,
              fit.inverse.map((line) => dot(line, row)),
            ),
        ),
      ),
      covariance: fit.inverse.map((row) => row.map((value) => variance * value)),
      centre: fit.centre,
      halfWidth: fit.halfWidth,
    },
  }
}

function refuseTurn({ coefficients, centre, halfWidth }: ReturnType<typeof fitPolynomial>, exponent: number): void {
  const turn = turningPoint(coefficients)
  if (turn === undefined) return
  const at = (centre + turn * halfWidth) ** (1 / exponent)
  throw new InputError(
    'samples',
    `the fitted curve turns at a reading of ${Number(at.toPrecision(4))}, between the samples, so that one reading would mean two water contents`,
    'use a line or the monotone cubic, or look for swapped samples',
  )
}

export function monotoneShape(
  readings: readonly number[],
  waterContents: readonly number[],
  weights: readonly number[],
): CalibrationShape {
  const levels = levelsOf(readings, waterContents, weights)
  const knots = monotoneKnots(levels)
  const residuals = waterContents.map((waterContent, i) => waterContent - throughKnots(knots, readings[i]!)[0])
  const statistics = statisticsOf(waterContents, residuals, weights, levels.length, (i) => {
    const others = levels.filter(({ reading }) => reading !== readings[i])
    return others.length < 3 ? undefined : waterContents[i]! - throughKnots(monotoneKnots(others), readings[i]!)[0]
  })
  const [low, high] = [levels[0]!.reading, levels.at(-1)!.reading]
  return {
    coefficients: [],
    knots,
    statistics: {
      ...statistics,
      standardErrors: [],
      covariance: [],
      centre: (low + high) / 2,
      halfWidth: (high - low) / 2,
    },
  }
}

function statisticsOf(
  observed: readonly number[],
  residuals: readonly number[],
  weights: readonly number[],
  parameters: number,
  leftOut: (i: number) => number | undefined,
) {
  const n = observed.length
  const mean = dot(weights, observed) / n
  const left = residuals.reduce((total, e, i) => total + weights[i]! * e * e, 0)
  const spread = observed.reduce((total, y, i) => total + weights[i]! * (y - mean) ** 2, 0)
  const errors = observed.map((_, i) => leftOut(i))
  const press = errors.reduce<number>((total, e, i) => total + weights[i]! * (e ?? Number.NaN) ** 2, 0)
  return {
    samples: n,
    parameters,
    rmse: Math.sqrt(left / n),
    residualStandardDeviation: n > parameters ? Math.sqrt(left / (n - parameters)) : 0,
    // Added to zero, which turns the -0 that JSON cannot keep into 0.
    bias: 0 - dot(weights, residuals) / n,
    rSquared: 1 - left / spread,
    ...(Number.isNaN(press) ? {} : { leaveOneOutRmse: Math.sqrt(press / n) }),
  }
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((total, value, i) => total + value * b[i]!, 0)
}
