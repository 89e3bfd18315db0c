import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Cubic, cubicAt, cubicRoot } from '../../src/numerics/cubic.js'

const part = fc.double({ min: 0.1, max: 2, noNaN: true })

describe('a cubic', () => {
  it('is the sum of its powers', () => {
    // 1 + 2·3 + 5·9 + 7·27, by hand.
    expect(cubicAt([1, 2, 5, 7], 3)).toBe(241)
  })
  it('is turned round where it rises', () => {
    fc.assert(
      // A slope of (x - a)² + b at all places: it rises everywhere.
      fc.property(
        part,
        part,
        fc.double({ min: -1, max: 1, noNaN: true }),
        fc.double({ min: -2, max: 3, noNaN: true }),
        (a, b, c, x) => {
          const cubic: Cubic = [c, a * a + b, -a, 1 / 3]
          expect(cubicRoot(cubic, cubicAt(cubic, x), -2, 3)).toBeCloseTo(x, 9)
        },
      ),
    )
  })
  it('is turned round in few looks: its slope is that of the cubic', () => {
    const looks = { times: 0 }
    const cubic = new Proxy([0, 1, 0.5, 2] as [number, number, number, number], {
      get: (target, key) => {
        if (key === '3') looks.times++
        return Reflect.get(target, key)
      },
    })
    // 0.8 + 0.5·0.64 + 2·0.512, by hand.
    expect(cubicRoot(cubic, 2.144, 0, 1)).toBeCloseTo(0.8, 12)
    // A wrong slope leaves only halvings, some fifty of them.
    expect(looks.times).toBeLessThan(15)
  })
})
