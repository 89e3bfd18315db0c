import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { studentTail, studentTwoSided } from '../../src/numerics/student-t.js'

describe("Student's t", () => {
  // Solved in 30 digits with mpmath 1.3.0 from the incomplete beta function.
  it.each([
    [0.95, 1, 12.706204736174705],
    [0.95, 2, 4.302652729749464],
    [0.95, 4, 2.7764451051977943],
    [0.95, 17, 2.109815577833317],
    [0.99, 16.5, 2.9091261361605403],
    [0.9545, 18, 2.148852323637396],
    [0.99, 0.7, 364.93520298158535],
    [0.999, 1000, 3.300282648423913],
    [0.95, 99999, 1.9599877077718448],
    [0.95, 250000, 1.9599734736701355],
    [0.5, 3, 0.7648923284043453],
  ])('leaves %d between -t and t at %d degrees of freedom', (confidence, freedom, t) => {
    expect(Math.abs(studentTwoSided(confidence, freedom) / t - 1)).toBeLessThan(freedom > 1000 ? 1e-10 : 1e-13)
  })
  it('is undone by its tail', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.999, noNaN: true }),
        fc.double({ min: 0.5, max: 500, noNaN: true }),
        (confidence, freedom) => {
          const tail = studentTail(freedom)(studentTwoSided(confidence, freedom))
          expect(Math.abs(1 - 2 * tail - confidence)).toBeLessThan(1e-11)
        },
      ),
    )
  })
})
