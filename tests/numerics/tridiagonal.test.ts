import fc from 'fast-check'
import { Matrix, solve } from 'ml-matrix'
import { describe, expect, it } from 'vitest'
import { solveTridiagonal, solveTridiagonalAgain } from '../../src/numerics/tridiagonal.js'

const number = fc.double({ min: -1, max: 1, noNaN: true })
/** Rows of a matrix of which the diagonal outweighs the rest, with two right sides. */
const systems = fc.array(fc.tuple(number, fc.double({ min: 2.1, max: 5, noNaN: true }), number, number, number), {
  minLength: 1,
  maxLength: 12,
})

describe('a matrix of three diagonals', () => {
  it('is solved as ml-matrix solves it in full, for one right side and for another after it', () => {
    fc.assert(
      fc.property(systems, (rows) => {
        const full = Matrix.zeros(rows.length, rows.length)
        rows.forEach(([below, own, above], i) => {
          full.set(i, i, own)
          if (i > 0) full.set(i, i - 1, below)
          if (i + 1 < rows.length) full.set(i, i + 1, above)
        })
        const column = (k: number) => Float64Array.from(rows, (row) => row[k]!)
        const [lower, diagonal, upper, right, other] = [0, 1, 2, 3, 4].map(column) as Float64Array[]
        const exact = [right!, other!].map((side) => solve(full, Matrix.columnVector([...side])).to1DArray())
        solveTridiagonal(lower!, diagonal!, upper!, right!)
        solveTridiagonalAgain(lower!, diagonal!, upper!, other!)
        rows.forEach((_, i) => {
          expect(right![i]).toBeCloseTo(exact[0]![i]!, 12)
          expect(other![i]).toBeCloseTo(exact[1]![i]!, 12)
        })
      }),
    )
  })
})
