import { describe, expect, it } from 'vitest'
import { logNormalTail, normalTailInverse } from '../../src/numerics/normal-tail.js'

describe('the normal tail', () => {
  // mpmath at 40 digits: log(erfc(z/sqrt(2))/2).
  const table: [number, number][] = [
    [-8, -6.220960574271786e-16],
    [-5, -2.866516129637636e-7],
    [-2, -0.023012909328963486],
    [-1.2, -0.12224636048741779],
    [-1.1, -0.14579608131705274],
    [-0.5, -0.3689464152886564],
    [0, -0.6931471805599453],
    [0.3, -0.9621028181688507],
    [1, -1.8410216450092636],
    [1.13, -2.0460987447557155],
    [1.14, -2.062441657516638],
    [2, -3.783184333682032],
    [3.3, -7.634616148071127],
    [5, -15.064998393988725],
    [8, -35.01343715991455],
    [8.9, -42.722238827359746],
    [12, -75.4106730015688],
    [20, -203.91715537109727],
    [40, -804.6084420137538],
    [100, -5005.524208694205],
  ]
  it.each(table)('has the logarithm at %d that a 40-digit library gives', (z, logTail) => {
    expect(Math.abs(logNormalTail(z) - logTail)).toBeLessThanOrEqual(2e-14 * Math.abs(logTail))
  })
  it('is undone by its inverse', () => {
    for (let z = 0; z < 60; z += 0.37)
      expect(Math.abs(normalTailInverse(logNormalTail(z)) - z)).toBeLessThan(2e-14 * (1 + z))
    expect(normalTailInverse(Math.log(0.5))).toBeCloseTo(0, 15)
  })
  it('adds up to one on both sides', () => {
    for (let z = 0; z < 6; z += 0.1) expect(Math.exp(logNormalTail(z)) + Math.exp(logNormalTail(-z))).toBeCloseTo(1, 15)
  })
})
