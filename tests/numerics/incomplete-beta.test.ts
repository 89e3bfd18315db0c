import { describe, expect, it } from 'vitest'
import { logIncompleteBeta } from '../../src/numerics/incomplete-beta.js'

describe('the incomplete beta function', () => {
  // mpmath at 40 digits: log(betainc(a, b, 0, x, regularized=True)).
  const table: [number, number, number, number][] = [
    [1.2, 0.4, 1e-12, -34.16344238930311],
    [1.2, 0.4, 0.01, -6.529135829360931],
    [1.2, 0.4, 0.3, -2.3389915383822677],
    [1.2, 0.4, 0.7, -1.0937731410983946],
    [1.2, 0.4, 0.99, -0.19083518392190457],
    [1.2, 0.4, 0.999999, -0.004375992869625302],
    [0.35, 0.1, 1e-12, -11.131242039479053],
    [0.35, 0.1, 0.01, -3.0698508075429034],
    [0.35, 0.1, 0.3, -1.8006700553234907],
    [0.35, 0.1, 0.7, -1.3285974558338083],
    [0.35, 0.1, 0.99, -0.7194216757704605],
    [0.35, 0.1, 0.999999, -0.22827468543257942],
    [2.5, 0.83, 1e-12, -69.38434937124251],
    [2.5, 0.83, 0.01, -11.818502946163134],
    [2.5, 0.83, 0.3, -3.2750958201616713],
    [2.5, 0.83, 0.7, -1.07228520763056],
    [2.5, 0.83, 0.99, -0.04935546756693617],
    [2.5, 0.83, 0.999999, -2.3207405884094858e-5],
    [20, 0.5, 1e-12, -554.6969027477179],
    [20, 0.5, 0.01, -94.1750993446558],
    [20, 0.5, 0.3, -25.987567558369832],
    [20, 0.5, 0.7, -8.657617775188882],
    [20, 0.5, 0.99, -0.6374664026915435],
    [20, 0.5, 0.999999, -0.005027412029032456],
    [1.5, 0.9, 1e-12, -41.58073146165158],
    [1.5, 0.9, 0.01, -7.041352878034843],
    [1.5, 0.9, 0.3, -1.9198158120394726],
    [1.5, 0.9, 0.7, -0.6090967868704529],
    [1.5, 0.9, 0.99, -0.023312422692275136],
    [1.5, 0.9, 0.999999, -5.801865802566056e-6],
  ]
  it.each(table)('I(%d, %d) at %d', (a, b, x, expected) => {
    const got = logIncompleteBeta(a, b)(Math.log(x), Math.log1p(-x))
    expect(Math.abs(got - expected)).toBeLessThanOrEqual(2e-14 * Math.max(1, Math.abs(expected)))
  })
  it('is 1 - (1 - x)^b for a = 1 and keeps its digits at both ends', () => {
    for (const b of [0.1, 0.5, 0.9]) {
      const f = logIncompleteBeta(1, b)
      for (const logX of [-700, -40, -1, -0.1]) {
        const log1mX = Math.log(-Math.expm1(logX))
        expect(f(logX, log1mX)).toBeCloseTo(Math.log(-Math.expm1(b * Math.log1p(-Math.exp(logX)))), 12)
      }
      // 1 - x = 1e-200 cannot be seen in x.
      expect(-f(-1e-200, -200 * Math.LN10) / 10 ** (-200 * b)).toBeCloseTo(1, 10)
    }
  })
  it('gives up with a typed error when an exponent is beyond it', () => {
    const error = expect.objectContaining({ code: 'no-convergence' })
    expect(() => logIncompleteBeta(1e9, 1e9)).toThrow(error)
  })
})
