import { describe, expect, it } from 'vitest'
import { integrate } from '../../src/numerics/quadrature.js'

describe('adaptive quadrature', () => {
  it('is exact for polynomials up to degree 22 in one piece, which pins every node and weight', () => {
    // The 15-point Kronrod rule has degree 22; a tolerance of one accepts the first estimate.
    for (let degree = 0; degree <= 22; degree++) {
      expect(integrate((x) => x ** degree, [0, 1], 1) * (degree + 1)).toBeCloseTo(1, 14)
    }
  })
  it('reaches known integrals with singular slopes and values at an end', () => {
    expect(Math.abs(integrate(Math.sqrt, [0, 1]) - 2 / 3)).toBeLessThan(1e-13)
    expect(Math.abs(integrate((x) => x ** -0.5, [0, 1]) - 2)).toBeLessThan(1e-11)
    expect(Math.abs(integrate((x) => x ** 1.05, [0, 3]) - 3 ** 2.05 / 2.05)).toBeLessThan(1e-12)
    expect(Math.abs(integrate((x) => 1 / (1e-4 + x * x), [-1, 1]) - 200 * Math.atan(100))).toBeLessThan(1e-10)
  })
  it('splits at given ends and takes them backwards', () => {
    const kinked = (x: number) => Math.abs(x - 0.3)
    expect(integrate(kinked, [0, 0.3, 1])).toBeCloseTo((0.09 + 0.49) / 2, 15)
    expect(integrate(kinked, [1, 0.3, 0])).toBeCloseTo(-(0.09 + 0.49) / 2, 15)
    expect(integrate(Math.exp, [2])).toBe(0)
    expect(integrate(() => 0, [0, 1])).toBe(0)
  })
  it('gives up with a typed error where there is no integral', () => {
    const error = expect.objectContaining({ code: 'no-convergence' })
    expect(() => integrate((x) => 1 / x, [0, 1])).toThrow(error)
    // A jump at each of many places that nobody named.
    expect(() => integrate((x) => Math.floor(1e6 * x) % 2, [0, 1])).toThrow(error)
    expect(() => integrate(() => Number.NaN, [0, 1])).toThrow(error)
  })
})
