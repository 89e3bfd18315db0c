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

describe('the steps of Dormand and Prince (1980)', () => {
  // Table 2 of the work, as two public programs have it: the same in mrc-ide/dde (dopri5_constants.h) and yiping/numerical (ode45.cpp).
  const STAGES = [
    [1 / 5],
    [3 / 40, 9 / 40],
    [44 / 45, -56 / 15, 32 / 9],
    [19372 / 6561, -25360 / 2187, 64448 / 6561, -212 / 729],
    [9017 / 3168, -355 / 33, 46732 / 5247, 49 / 176, -5103 / 18656],
    [35 / 384, 0, 500 / 1113, 125 / 192, -2187 / 6784, 11 / 84],
  ]
  /** Those of fourth order. */
  const LOWER = [5179 / 57600, 0, 7571 / 16695, 393 / 640, -92097 / 339200, 187 / 2100, 1 / 40]

  /** Where slopes are asked for in a step of one that begins at zero, and how much longer the next step is, with these slopes one after the other. */
  function step(given: readonly number[]) {
    const asked: { x: number; y: number }[] = []
    const slopes = (x: number, [y]: Pair): Pair => {
      asked.push({ x, y })
      // Behind the first look of the next step all is known.
      if (asked.length > 8) throw new RangeError('enough')
      return [given[asked.length - 1] ?? 0, 0]
    }
    expect(() => followPair({ ...problem, tolerance: 1, slopes, to: 1e9, start: [0, 0] })).toThrow('enough')
    return { asked: asked.slice(1, 7), longer: 5 * (asked[7]!.x - 1) }
  }
  const close = (list: readonly number[]) => list.map((one) => expect.closeTo(one, 14))

  it('look where they say', () => {
    expect(step([]).asked.map(({ x }) => x)).toEqual(close([1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1]))
    // Slopes of one lead from zero to each place.
    expect(step(Array(7).fill(1)).asked.map(({ y }) => y)).toEqual(close([1 / 5, 3 / 10, 4 / 5, 8 / 9, 1, 1]))
  })
  it.each([0, 1, 2, 3, 4, 5])('weigh slope %d as printed', (k) => {
    const only = Array.from({ length: 7 }, (_, i) => (i === k ? 1 : 0))
    expect(step(only).asked.map(({ y }) => y)).toEqual(close(STAGES.map((weights) => weights[k] ?? 0)))
  })
  it.each([0, 2, 3, 4, 5, 6])('err by what slope %d weighs more than in those of fourth order', (k) => {
    // The next step is 0.9 times the fifth root of tolerance over error as long.
    const error = (given: readonly number[]) => (0.9 / step(given).longer) ** 5
    const more = [...STAGES[5]!, 0].map((weight, i) => weight - LOWER[i]!)
    const with0 = Array.from({ length: 7 }, (_, i) => (i === k || i === 0 ? 1 : 0))
    expect(error(with0) / Math.abs(more[0]! + (k === 0 ? 0 : more[k]!))).toBeCloseTo(1, 10)
  })
  it('become no shorter at once than a fifth, and no longer than five times', () => {
    // Only the last slope errs, by a fortieth of it; behind a step that is refused the next begins at zero again.
    const next = (asFar: number) => step([0, 0, 0, 0, 0, 0, 40 * (0.9 / asFar) ** 5]).longer + (asFar < 0.9 ? 5 : 0)
    expect([0.25, 0.21, 0.15, 0.01, 3, 5.5].map(next)).toEqual(close([0.25, 0.21, 0.2, 0.2, 3, 5]))
  })
})
