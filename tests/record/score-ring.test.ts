import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normalTailInverse } from '../../src/numerics/normal-tail.js'
import { randomNumbers } from '../../src/numerics/random.js'
import { bandsOf, newRing, realMisses, sizesOf, withScore } from '../../src/record/forecast/score-ring.js'

describe('a ring of misses', () => {
  it('starts with the bands of a normal distribution (quantiles 0.674 and 1.645 of the standard one)', () => {
    const { half, ninety } = bandsOf(newRing(2, 'both'))
    // Ranks of twenty numbers lie a little wide of the distribution, most at its ends.
    expect(Math.abs(half[0] + 2 * 0.674)).toBeLessThan(0.12)
    expect(half[1]).toBeCloseTo(-half[0], 12)
    expect(Math.abs(ninety[0] + 2 * 1.645)).toBeLessThan(0.6)
    expect(ninety[1]).toBeCloseTo(-ninety[0], 12)
    expect(realMisses(newRing(2, 'both'))).toBe(0)
  })
  it('starts with the quantiles of that in the middles of twenty equal shares, to three digits', () => {
    const quantiles = Array.from({ length: 10 }, (_, i) =>
      Number(normalTailInverse(Math.log((9.5 - i) / 20)).toPrecision(3)),
    )
    expect(newRing(1, 'both').scores).toEqual([...quantiles.map((one) => -one).reverse(), ...quantiles])
  })
  it('of sizes starts with those of half a normal distribution', () => {
    const ring = newRing(1, 'size')
    expect(Math.min(...ring.scores)).toBeGreaterThan(0)
    expect(Math.abs(sizesOf(ring).half - 0.674)).toBeLessThan(0.06)
    expect(Math.abs(sizesOf(ring).ninety - 1.645)).toBeLessThan(0.3)
    // Misses to one side only, as two-sided ones, would have both ends above zero.
    expect(bandsOf(newRing(1, 'both')).half[0]).toBeLessThan(0)
  })
  it('leaves out no more than 0.95 where nothing is missed, and no less than 0.002 where all is', () => {
    const behindFifty = (miss: (i: number) => number) =>
      Array.from({ length: 50 }).reduce<ReturnType<typeof newRing>>(
        (ring, _, i) => withScore(ring, miss(i), 'both'),
        newRing(1, 'both'),
      )
    expect(behindFifty(() => 0).miss50).toBe(0.95)
    expect(behindFifty((i) => 10 ** (i + 1)).miss90).toBe(0.002)
  })
  it('keeps the newest forty, oldest first', () => {
    let ring = newRing(1, 'both')
    for (let i = 1; i <= 60; i++) ring = withScore(ring, i, 'both')
    expect(ring.scores).toEqual(Array.from({ length: 40 }, (_, i) => 21 + i))
  })
  // Gibbs and Candès (2021): the share that is left out follows its target, whatever the misses are like.
  it.each(['both', 'size'] as const)('holds what it promises over a thousand skewed misses: %s', (sides) => {
    const { uniform } = randomNumbers(5)
    let ring = newRing(1, sides)
    let [inHalf, inNinety] = [0, 0]
    for (let i = 0; i < 1000; i++) {
      const miss = -Math.log(1 - uniform()) - (sides === 'both' ? 1 : 0)
      const [half, ninety] =
        sides === 'both'
          ? [bandsOf(ring).half, bandsOf(ring).ninety]
          : [[0, sizesOf(ring).half] as const, [0, sizesOf(ring).ninety] as const]
      if (miss >= half[0] && miss <= half[1]) inHalf++
      if (miss >= ninety[0] && miss <= ninety[1]) inNinety++
      ring = withScore(ring, miss, sides)
    }
    expect(Math.abs(inHalf / 1000 - 0.5)).toBeLessThan(0.04)
    expect(Math.abs(inNinety / 1000 - 0.9)).toBeLessThan(0.04)
  })
  it('has a wider band of 90 than of 50 %, around it', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -3, max: 3, noNaN: true }), { maxLength: 80 }), (misses) => {
        const ring = misses.reduce((before, miss) => withScore(before, miss, 'both'), newRing(1, 'both'))
        const { half, ninety } = bandsOf(ring)
        expect(ninety[0]).toBeLessThanOrEqual(half[0])
        expect(half[0]).toBeLessThanOrEqual(half[1])
        expect(half[1]).toBeLessThanOrEqual(ninety[1])
      }),
    )
  })
})
