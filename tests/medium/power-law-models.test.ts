import fc from 'fast-check'
import { brooksCorey1964, campbell1974, centimetresOfSuction, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

checkPublished('hydraulics', 'retention.brooks_corey', ({ theta_r, theta_s, bubbling, lambda, ks, suction }) => {
  const curve = {
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    airEntry: centimetresOfSuction(bubbling),
    lambda,
  }
  const medium = brooksCorey1964(curve)
  return {
    theta: medium.waterContent(suction),
    capacity: medium.capacity(suction),
    k_burdine: ks * medium.relativeConductivity(suction),
    k_mualem: ks * brooksCorey1964({ ...curve, poreConnection: 0.5 }).relativeConductivity(suction),
    'suction_at_theta_0.2': medium.suction(waterContent(0.2)),
  }
})
checkPublished('hydraulics', 'retention.campbell', ({ theta_s, air_entry, b, ks, suction }) => {
  const medium = campbell1974({ saturated: waterContent(theta_s), airEntry: centimetresOfSuction(air_entry), b })
  return {
    theta: medium.waterContent(suction),
    capacity: medium.capacity(suction),
    k: ks * medium.relativeConductivity(suction),
    suction_at_half_saturation: medium.suction(waterContent(theta_s / 2)),
  }
})

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const brooksCorey = {
  residual: waterContent(0.05),
  saturated: waterContent(0.8),
  airEntry: centimetresOfSuction(6),
  lambda: 0.7,
}
checkRetentionModel(
  'brooks-corey-1964',
  fc
    .record({ airEntry: numbers(0.5, 100).map(centimetresOfSuction), lambda: numbers(0.05, 4) })
    .map((p) => brooksCorey1964({ ...brooksCorey, ...p })),
)
checkRetentionModel(
  'campbell-1974',
  fc
    .record({ airEntry: numbers(0.5, 100).map(centimetresOfSuction), b: numbers(0.3, 15) })
    .map((p) => campbell1974({ saturated: waterContent(0.8), ...p })),
)

describe('models with an air entry', () => {
  it('are full up to the air entry, which is the largest suction that still holds all', () => {
    for (const medium of [
      brooksCorey1964(brooksCorey),
      campbell1974({ saturated: waterContent(0.8), airEntry: centimetresOfSuction(6), b: 3 }),
    ]) {
      for (const s of [-3, 0, 6]) {
        expect(medium.waterContent(s as never)).toBe(0.8)
        expect(medium.capacity(s as never)).toBe(0)
        expect(medium.relativeConductivity(s as never)).toBe(1)
      }
      expect(medium.suction(waterContent(0.8))).toBe(6)
      expect(medium.breakpoints).toEqual([6])
    }
  })
  it('are one curve when the residual water is zero and b is 1/λ', () => {
    const campbell = campbell1974({ saturated: waterContent(0.8), airEntry: centimetresOfSuction(6), b: 1 / 0.7 })
    const same = brooksCorey1964({ ...brooksCorey, residual: waterContent(0) })
    const s = centimetresOfSuction(50)
    expect(campbell.waterContent(s)).toBeCloseTo(same.waterContent(s), 15)
    // 2b + 3 on the water content is 2 + 3λ on the suction.
    expect(campbell.relativeConductivity(s)).toBeCloseTo(same.relativeConductivity(s), 15)
  })
  it('refuse what has no meaning', () => {
    expectDomainError(() => brooksCorey1964({ ...brooksCorey, airEntry: centimetresOfSuction(0) }), {
      quantity: 'air entry',
    })
    expectDomainError(() => brooksCorey1964({ ...brooksCorey, lambda: 0 }), { quantity: 'lambda' })
    expectInputError(() => brooksCorey1964({ ...brooksCorey, poreConnection: -5 }), 'poreConnection')
    expectInputError(() => brooksCorey1964({ ...brooksCorey, residual: waterContent(0.9) }), 'residual')
    const campbell = { saturated: waterContent(0.8), airEntry: centimetresOfSuction(6), b: 4 }
    expectDomainError(() => campbell1974({ ...campbell, b: Number.NaN }), { quantity: 'b' })
    expectDomainError(() => campbell1974(campbell).suction(waterContent(0)), { min: 0, max: 0.8 })
    expectDomainError(() => campbell1974(campbell).relativeConductivity(Number.NaN as never), { quantity: 'suction' })
  })
})
