import fc from 'fast-check'
import { centimetresOfSuction, kosugi1996, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

interface Given {
  theta_r: number
  theta_s: number
  median_suction: number
  sigma: number
  l?: number
}
const mediumOf = (given: unknown) => {
  const { theta_r, theta_s, median_suction, sigma, l = 0.5 } = given as Given
  return kosugi1996({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    medianSuction: centimetresOfSuction(median_suction),
    sigma,
    poreConnection: l,
  })
}

checkPublished('hydraulics', 'retention.kosugi', ({ ks, suction, ...curve }) => {
  const medium = mediumOf(curve)
  return {
    theta: medium.waterContent(suction),
    capacity: medium.capacity(suction),
    k: ks * medium.relativeConductivity(suction),
  }
})
checkPublished('hydraulics', 'retention.kosugi_inverse', ({ theta, ...curve }) => ({
  suction: mediumOf(curve).suction(waterContent(theta)),
}))

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
checkRetentionModel(
  'kosugi-1996',
  fc
    .record({
      theta_r: numbers(0, 0.3),
      theta_s: numbers(0.35, 1),
      median_suction: numbers(1, 500),
      sigma: numbers(0.2, 4),
      l: numbers(-1.9, 3),
    })
    .map(mediumOf),
)

describe('Kosugi 1996', () => {
  const curve = { theta_r: 0.1, theta_s: 0.9, median_suction: 25, sigma: 1.2 }

  it('has no air and no infinite conductivity far out, whatever the pore connection', () => {
    const medium = mediumOf({ ...curve, sigma: 0.2, l: -1.9 })
    const s = centimetresOfSuction(1e12)
    expect(medium.waterContent(s)).toBe(0.1)
    expect(medium.capacity(s)).toBe(0)
    expect(medium.relativeConductivity(s)).toBe(0)
  })
  it('is saturated at zero and under water pressure, and gives zero back', () => {
    const medium = mediumOf(curve)
    for (const s of [0, -5]) {
      expect(medium.waterContent(s as never)).toBe(0.9)
      expect(medium.capacity(s as never)).toBe(0)
      expect(medium.relativeConductivity(s as never)).toBe(1)
    }
    expect(medium.suction(waterContent(0.9))).toBe(0)
    expect(medium.suction(waterContent(0.5))).toBeCloseTo(25, 10)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => mediumOf({ ...curve, median_suction: 0 }), { quantity: 'median suction' })
    expectDomainError(() => mediumOf({ ...curve, sigma: 0 }), { quantity: 'sigma' })
    expectInputError(() => mediumOf({ ...curve, theta_r: 0.9 }), 'residual')
    expectInputError(() => mediumOf({ ...curve, l: -2 }), 'poreConnection')
    expectDomainError(() => mediumOf(curve).suction(waterContent(0.1)), { min: 0.1 })
    expectDomainError(() => mediumOf(curve).capacity(Number.NaN as never), { quantity: 'suction' })
  })
})
