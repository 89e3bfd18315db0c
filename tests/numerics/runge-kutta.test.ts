import { describe, expect, it } from 'vitest'
import { followPair, type Pair } from '../../src/numerics/runge-kutta.js'

const problem = { from: 0, tolerance: 1e-8, scale: [1, 1] as Pair, ended: () => false }

describe('two differential equations', () => {
  it('follow the place and both unknowns: y = sin x² and z = cos x², by their slopes', () => {
    const looks = { times: 0 }
    const slopes = (x: number, [y, z]: Pair): Pair => {
      looks.times++
      // Half by the place, half by the unknowns.
      return [x * z + x * Math.cos(x * x), -x * y - x * Math.sin(x * x)]
    }
    const [x, [y, z]] = followPair({ ...problem, slopes, to: 3, start: [0, 1] })
    expect(x).toBe(3)
    expect(y).toBeCloseTo(Math.sin(9), 6)
    expect(z).toBeCloseTo(Math.cos(9), 6)
    // A wrong place within a step costs many more.
    expect(looks.times).toBeLessThan(1200)
  })
  it('grow more exact with the tolerance, and end early where they are told to', () => {
    const slopes = (_: number, [y, z]: Pair): Pair => [z, -y]
    const off = (tolerance: number) => {
      const [, [y, z]] = followPair({ ...problem, tolerance, slopes, to: 10, start: [0, 1] })
      return Math.max(Math.abs(y - Math.sin(10)), Math.abs(z - Math.cos(10)))
    }
    expect(off(1e-5)).toBeLessThan(1e-3)
    expect(off(1e-10)).toBeLessThan(1e-7)
    const [x, [y]] = followPair({ ...problem, slopes, to: 10, start: [0, 1], ended: ([a]) => a > 0.5 })
    expect(x).toBeLessThan(Math.PI / 2)
    expect(y).toBeCloseTo(Math.sin(x), 6)
    expect(y).toBeGreaterThan(0.5)
  })
})
