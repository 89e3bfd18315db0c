import { describe, expect, it } from 'vitest'
import { randomNumbers, xoshiro128 } from '../../src/numerics/random.js'

describe('random numbers', () => {
  // Made by the authors' C program, as kept in the repository edorfaus/xoshiro-6502 (test-rom/testdata.asm), read there.
  it('are those of the authors of xoshiro128**', () => {
    const next = xoshiro128([0x964d4a0c, 0xd40ab895, 0xad7fdecb, 0x3006f0f0])
    expect([next(), next(), next(), next()]).toEqual([0xf1391922, 0x6fe53806, 0xa5be2840, 0xf510ee70])
  })
  it('are fixed by the seed and differ between seeds', () => {
    const draw = (seed: number) => {
      const { uniform } = randomNumbers(seed)
      return [uniform(), uniform(), uniform()]
    }
    expect(draw(7)).toEqual(draw(7))
    expect(draw(0)).not.toEqual(draw(1))
  })
  it('begin with steps of the golden ratio from the seed, scrambled as at the end of MurmurHash3', () => {
    // Written anew with whole numbers without end; the constants as in the public-domain original, fmix32 of MurmurHash3_x86_32.
    const word = (x: bigint) => BigInt.asUintN(32, x)
    const scrambled = (x: bigint) => {
      const first = word((x ^ (x >> 16n)) * 2246822507n)
      const second = word((first ^ (first >> 13n)) * 3266489909n)
      return second ^ (second >> 16n)
    }
    const GOLDEN = BigInt(Math.floor((Math.sqrt(5) - 1) * 2 ** 31))
    for (const seed of [0, 7, 4294967295]) {
      const words = [1n, 2n, 3n, 4n].map((step) => Number(scrambled(word(BigInt(seed) + step * GOLDEN))))
      const next = xoshiro128(words as [number, number, number, number])
      const { uniform } = randomNumbers(seed)
      // The upper 27 bits of one and the upper 26 of the next.
      for (let i = 0; i < 3; i++)
        expect(uniform()).toBe(Math.floor(next() / 2 ** 5) / 2 ** 27 + Math.floor(next() / 2 ** 6) / 2 ** 53)
    }
  })
  it('spread evenly over [0, 1)', () => {
    const { uniform } = randomNumbers(1)
    const bins = new Array<number>(100).fill(0)
    for (let i = 0; i < 100000; i++) bins[Math.floor(100 * uniform())]!++
    const chiSquared = bins.reduce((total, n) => total + (n - 1000) ** 2 / 1000, 0)
    // The 0.01 % and 99.99 % points of chi-squared with 99 degrees of freedom are 55.0 and 160.1 (scipy 1.17.1).
    expect(chiSquared).toBeGreaterThan(55)
    expect(chiSquared).toBeLessThan(160)
  })
  it('have the moments of the normal distribution', () => {
    const { normal } = randomNumbers(2)
    const n = 200000
    let [m1, m2, m3, m4] = [0, 0, 0, 0]
    for (let i = 0; i < n; i++) {
      const z = normal()
      m1 += z / n
      m2 += z ** 2 / n
      m3 += z ** 3 / n
      m4 += z ** 4 / n
    }
    // Four standard errors of each moment of n normal numbers: the variances of z, z², z³, z⁴ are 1, 2, 15, 96.
    expect(Math.abs(m1)).toBeLessThan(4 * Math.sqrt(1 / n))
    expect(Math.abs(m2 - 1)).toBeLessThan(4 * Math.sqrt(2 / n))
    expect(Math.abs(m3)).toBeLessThan(4 * Math.sqrt(15 / n))
    expect(Math.abs(m4 - 3)).toBeLessThan(4 * Math.sqrt(96 / n))
  })
})
