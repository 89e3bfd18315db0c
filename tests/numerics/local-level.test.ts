import fc from 'fast-check'
import { Matrix, solve } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { localLevel } from '../../src/numerics/local-level.js'

const number = fc.double({ min: -3, max: 3, noNaN: true })
const records = fc.array(fc.tuple(number, number, number), { minLength: 8, maxLength: 20 })
/** Inverse of the variance from which the filter sets out. */
const LITTLE = 1e-8

/** What a level without steps comes to: least squares with a penalty of the variance at the start, by ml-matrix in full. */
function ridge(rows: readonly (readonly number[])[], y: readonly number[]): number[] {
  const x = new Matrix(rows.map((row) => [1, ...row]))
  const normal = x.transpose().mmul(x)
  for (let i = 0; i < normal.rows; i++) normal.set(i, i, normal.get(i, i) + LITTLE)
  return solve(normal, x.transpose().mmul(Matrix.columnVector([...y]))).to1DArray()
}

describe('a regression whose constant wanders', () => {
  it('is least squares where it does not wander, and forecasts each row from those before it', () => {
    fc.assert(
      fc.property(records, (record) => {
        const rows = record.map(([a, b]) => [a, b])
        const y = record.map(([, , value]) => value)
        const { state, forecasts } = localLevel(rows, Float64Array.from(y), 0)
        const exact = ridge(rows, y)
        fc.pre(exact.every((value) => Math.abs(value) < 100))
        exact.forEach((value, i) => {
          expect(Math.abs(state[i]! - value)).toBeLessThan(1e-4)
        })
        const before = ridge(rows.slice(0, -1), y.slice(0, -1))
        fc.pre(before.every((value) => Math.abs(value) < 100))
        const last = rows.at(-1)!
        expect(Math.abs(forecasts.at(-1)! - before[0]! - before[1]! * last[0]! - before[2]! * last[1]!)).toBeLessThan(
          1e-3,
        )
      }),
    )
  })
  it('holds the level as tightly as the steady state of the filter says', () => {
    // Of a level alone the variance before a row settles where P² = q P + q: Harvey (1989), 3.2.
    for (const pace of [0.01, 0.3, 4]) {
      const { spreads, variance } = localLevel(
        Array.from({ length: 400 }, () => []),
        new Float64Array(400),
        pace,
      )
      const before = (pace + Math.sqrt(pace * pace + 4 * pace)) / 2
      expect(spreads.at(-1)).toBeCloseTo(before + 1, 9)
      expect(variance[0]![0]).toBeCloseTo(before / (before + 1), 9)
    }
  })
  it('forecasts what was not observed without learning from it, and passes over rows that are not known', () => {
    const y = Float64Array.of(1, 1, Number.NaN, 1, 3)
    const { forecasts, spreads } = localLevel([[0], [1], [2], [Number.NaN], [4]], y, 0)
    expect(forecasts[2]).toBeCloseTo(1, 4)
    expect(forecasts[3]).toBeNaN()
    expect(spreads[3]).toBeNaN()
    // By hand: through (0, 1) and (1, 1) alone.
    expect(forecasts[4]).toBeCloseTo(1, 4)
    // Its variance is 1 + xᵀ (XᵀX)⁻¹ x with x = (1, 4): 1 + 1·1 - 2·4 + 2·16.
    expect(spreads[4]).toBeCloseTo(26, 3)
  })
})
