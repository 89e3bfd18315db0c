import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { inverse, Matrix } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { choleskyFactor, choleskyInverse, choleskySolve } from '../../src/numerics/cholesky.js'
import { nonlinearLeastSquares } from '../../src/numerics/levenberg-marquardt.js'

const anywhere = (n: number) => ({ lower: Array(n).fill(-1e9) as number[], upper: Array(n).fill(1e9) as number[] })

describe('least squares', () => {
  // The certified values of the data set Misra1a of the National Institute of Standards and Technology (NIST, Statistical
  // Reference Datasets, nonlinear regression), y = b1 (1 - exp(-b2 x)) [not confirmed, source not seen]; ml-levenberg-marquardt confirms them.
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760]
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78]
  const curve =
    ([b1 = 0, b2 = 0]: readonly number[]) =>
    (t: number) =>
      b1 * -Math.expm1(-b2 * t)
  const problem = {
    ...anywhere(2),
    count: x.length,
    residuals: (p: readonly number[], out: Float64Array) => {
      x.forEach((t, i) => {
        out[i] = curve(p)(t) - y[i]!
      })
    },
  }
  it('gives the certified values of Misra1a from both published starts', () => {
    for (const start of [
      [500, 0.0001],
      [250, 0.0005],
    ]) {
      const { parameters, sumOfSquares } = nonlinearLeastSquares({ ...problem, start })
      expect(parameters[0]! / 238.94212918).toBeCloseTo(1, 6)
      expect(parameters[1]! / 5.5015643181e-4).toBeCloseTo(1, 6)
      expect(sumOfSquares / 0.12455138894).toBeCloseTo(1, 8)
    }
  })
  it('agrees with ml-levenberg-marquardt', () => {
    const other = levenbergMarquardt({ x, y }, curve as never, {
      initialValues: [240, 0.00055],
      damping: 1e-3,
      maxIterations: 500,
      gradientDifference: 1e-7,
    })
    const ours = nonlinearLeastSquares({ ...problem, start: [500, 0.0001] })
    expect(other.parameterValues[0]! / ours.parameters[0]!).toBeCloseTo(1, 3)
    // Whatever the other finds, ours is at least as good.
    const residuals = new Float64Array(x.length)
    problem.residuals(other.parameterValues, residuals)
    expect(ours.sumOfSquares).toBeLessThanOrEqual(residuals.reduce((sum, r) => sum + r * r, 0) + 1e-9)
  })
  it('finds the exact answer of a straight line, which has a closed form', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -5, max: 5, noNaN: true }), { minLength: 5, maxLength: 12 }), (values) => {
        const n = values.length
        const mean = values.reduce((a, b) => a + b) / n
        const middle = (n - 1) / 2
        let [top, bottom] = [0, 0]
        values.forEach((v, i) => {
          top += (i - middle) * (v - mean)
          bottom += (i - middle) ** 2
        })
        const { parameters } = nonlinearLeastSquares({
          ...anywhere(2),
          start: [0, 0],
          count: n,
          residuals: ([a = 0, b = 0], out) => {
            values.forEach((v, i) => {
              out[i] = a + b * (i - middle) - v
            })
          },
        })
        expect(parameters[0]).toBeCloseTo(mean, 5)
        expect(parameters[1]).toBeCloseTo(top / bottom, 5)
      }),
    )
  })
  it('stays in its box and says which parameters the box holds', () => {
    const { parameters, free } = nonlinearLeastSquares({
      start: [0.5, 0.5],
      lower: [0, 0],
      upper: [1, 1],
      count: 2,
      residuals: ([a = 0, b = 0], out) => {
        out[0] = a - 3
        out[1] = b - 0.25
      },
    })
    expect(parameters[0]).toBe(1)
    expect(parameters[1]).toBeCloseTo(0.25, 8)
    expect(free).toEqual([1])
  })
})

describe('Cholesky', () => {
  const square = fc.array(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { minLength: 4, maxLength: 4 }), {
    minLength: 4,
    maxLength: 4,
  })
  it('agrees with ml-matrix', () => {
    fc.assert(
      fc.property(square, (rows) => {
        const a = new Matrix(rows)
        const positive = a.mmul(a.transpose()).add(Matrix.eye(4, 4)).to2DArray()
        const factor = choleskyFactor(positive)
        if ('dependent' in factor) throw new Error('a positive definite matrix was refused')
        const expected = inverse(new Matrix(positive)).to2DArray()
        choleskyInverse(factor.lower).forEach((row, i) => {
          row.forEach((entry, j) => {
            expect(entry).toBeCloseTo(expected[i]![j]!, 9)
          })
        })
        const solved = choleskySolve(factor.lower, [1, 0, 0, 0])
        solved.forEach((entry, i) => {
          expect(entry).toBeCloseTo(expected[i]![0]!, 9)
        })
      }),
    )
  })
  it('names the first row that depends on others', () => {
    expect(
      choleskyFactor(
        [
          [1, 1],
          [1, 1],
        ],
        1e-12,
      ),
    ).toEqual({ dependent: 1 })
  })
})

describe('least squares of a model that is itself rounded', () => {
  // An exponential fall read at ten times, with its values cut off after three digits, as by a simulation with a tolerance.
  const times = Array.from({ length: 10 }, (_, i) => i / 2)
  const truth = [2, 0.7]
  const problem = (cut: (value: number) => number) => ({
    ...anywhere(2),
    start: [1, 0.3],
    count: times.length,
    residuals: ([height = 0, rate = 0]: readonly number[], out: Float64Array) => {
      times.forEach((time, i) => {
        out[i] = cut(height * Math.exp(-rate * time)) - truth[0]! * Math.exp(-truth[1]! * time)
      })
    },
  })
  const rounded = (value: number) => Math.round(value * 1000) / 1000
  it('comes to the minimum by moves that are longer than the rounding', () => {
    const { parameters } = nonlinearLeastSquares({ ...problem(rounded), moves: [0.05, 0.05], settled: 1e-6 })
    parameters.forEach((value, j) => {
      expect(value).toBeCloseTo(truth[j]!, 2)
    })
    // Without them the slopes are those of the steps, or none.
    const blind = nonlinearLeastSquares(problem(rounded)).parameters
    expect(Math.abs(blind[1]! - 0.7)).toBeGreaterThan(0.05)
  })
  it('stays away from where the model has no answer', () => {
    const exact = problem((value) => value)
    const found = nonlinearLeastSquares({
      ...exact,
      start: [2.2, 0.6],
      residuals: (place, out) => {
        if (place[1]! > 0.7) out.fill(Number.NaN)
        else exact.residuals(place, out)
      },
    })
    expect(found.parameters[1]).toBeLessThanOrEqual(0.7)
    expect(found.parameters[1]).toBeCloseTo(0.7, 2)
  })
})
