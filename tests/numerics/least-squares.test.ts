import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leastSquares } from '../../src/numerics/least-squares.js'

const number = fc.double({ min: -1, max: 1, noNaN: true })
const problems = fc
  .array(fc.tuple(fc.tuple(number, number, number), number, fc.double({ min: 0.2, max: 5, noNaN: true })), {
    minLength: 6,
    maxLength: 15,
  })
  .map((rows) => ({ x: rows.map(([x]) => [...x]), y: rows.map(([, y]) => y), w: rows.map(([, , w]) => w) }))

describe('linear least squares', () => {
  it('leaves weighted residuals at right angles to every column, and leverages that sum to their number', () => {
    fc.assert(
      fc.property(problems, ({ x, y, w }) => {
        const fit = leastSquares(x, y, w)
        fc.pre(fit !== undefined && Math.max(...fit.inverse.flat().map(Math.abs)) < 1e4)
        for (const k of [0, 1, 2]) {
          const dot = x.reduce((sum, row, i) => sum + row[k]! * fit!.residuals[i]! * w[i]!, 0)
          expect(Math.abs(dot)).toBeLessThan(1e-10)
        }
        expect(fit!.leverages.reduce((sum, h) => sum + h, 0)).toBeCloseTo(3, 10)
      }),
    )
  })
  it('says when columns depend on each other', () => {
    expect(
      leastSquares(
        [
          [1, 2],
          [2, 4],
          [3, 6],
        ],
        [1, 2, 3],
      ),
    ).toBeUndefined()
    expect(
      leastSquares(
        [
          [1, 0],
          [1, 0],
        ],
        [1, 2],
      ),
    ).toBeUndefined()
  })
  it.each([1e-9, 1, 1e9])('does so by shares: the unit of a column changes only its coefficient, %s', (unit) => {
    // y = 1 + 2 x met exactly.
    const rows = [0, 1, 2, 4].map((x) => [unit, x * unit])
    const fit = leastSquares(rows, [1, 3, 5, 9])!
    expect(fit.coefficients[0]! * unit).toBeCloseTo(1, 12)
    expect(fit.coefficients[1]! * unit).toBeCloseTo(2, 12)
    // A third column that is the sum of both, up to rounding.
    const same = rows.map(([a, b]) => [a!, b!, 0.1 * a! + 0.7 * b!])
    expect(leastSquares(same, [1, 3, 5, 9])).toBeUndefined()
  })
})
