import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inverseLogExcess, logExcess } from '../../src/numerics/log-excess.js'
import { scaledErfc } from '../../src/numerics/normal-tail.js'
import { followPair } from '../../src/numerics/runge-kutta.js'

/** x and its value. */
const ERFCX = [
  [0, 1.0],
  [0.1, 0.8964569799691268],
  [0.5, 0.6156903441929258],
  [0.79, 0.49258013390448946],
  [0.81, 0.48566353493024744],
  [1, 0.427583576155807],
  [2, 0.2553956763105058],
  [5, 0.11070463773306861],
  [6.2, 0.08985810831974593],
  [6.4, 0.08711570467441576],
  [10, 0.05614099274382259],
  [100, 0.005641613782989433],
  [1e8, 5.641895835477563e-9],
] as const

describe('x - ln(1 + x)', () => {
  it('keeps its digits for small x, where it is the series x²/2 - x³/3 + ...', () => {
    for (const x of [1e-9, 1e-5, 1e-3])
      expect(logExcess(x) / (x ** 2 / 2 - x ** 3 / 3 + x ** 4 / 4 - x ** 5 / 5 + x ** 6 / 6)).toBeCloseTo(1, 13)
    for (const x of [0.3, 0.5, 0.500001, 3, 1e6]) expect(logExcess(x) / (x - Math.log(1 + x))).toBeCloseTo(1, 13)
  })
  it('has an inverse over its whole range: -1 - W₋₁ of mpmath 1.3, lambertw(-exp(-1 - u), -1)', () => {
    expect(inverseLogExcess(1)).toBeCloseTo(2.1461932206205825, 14)
    expect(inverseLogExcess(0.01)).toBeCloseTo(0.148165122379395, 12)
    fc.assert(
      fc.property(fc.double({ min: -200, max: 200, noNaN: true }), (power) => {
        expect(inverseLogExcess(logExcess(10 ** (power / 2))) / 10 ** (power / 2)).toBeCloseTo(1, 12)
      }),
    )
    expect(inverseLogExcess(0)).toBe(0)
  })
})

describe('exp(x²) erfc(x)', () => {
  it('equals scipy.special.erfcx (scipy 1.17)', () => {
    for (const [x, value] of ERFCX) expect(scaledErfc(x) / value).toBeCloseTo(1, 14)
  })
})

describe('two differential equations', () => {
  it('are followed to the tolerance: a harmonic oscillator', () => {
    const [x, [y, z]] = followPair({
      slopes: (_, [a, b]) => [b, -a],
      from: 0,
      to: 10,
      start: [1, 0],
      tolerance: 1e-11,
      scale: [1, 1],
      ended: () => false,
    })
    expect(x).toBe(10)
    expect(y).toBeCloseTo(Math.cos(10), 9)
    expect(z).toBeCloseTo(-Math.sin(10), 9)
  })
  it('end early when told, and are given up where they are too steep', () => {
    const problem = { from: 0, to: 10, tolerance: 1e-8, scale: [1, 1] as const }
    const [x, [y]] = followPair({ ...problem, slopes: () => [1, 0], start: [0, 0], ended: ([a]) => a > 2 })
    expect(y).toBeGreaterThan(2)
    expect(x).toBeLessThan(10)
    expect(() =>
      followPair({ ...problem, slopes: (t) => [1 / (t - 1) ** 2, 0], start: [0, 0], ended: () => false }),
    ).toThrow(expect.objectContaining({ code: 'no-convergence' }))
  })
})
