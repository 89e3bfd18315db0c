import fc from 'fast-check'
import { centimetresOfSuction, haverkamp1977, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const sand = {
  residual: waterContent(0.075),
  saturated: waterContent(0.287),
  alpha: 1.611e6,
  beta: 3.96,
  conductivityA: 1.175e6,
  conductivityGamma: 4.74,
}
checkRetentionModel(
  'haverkamp-1977',
  fc
    .record({
      alpha: numbers(0, 8).map((p) => 10 ** p),
      beta: numbers(0.3, 6),
      conductivityA: numbers(0, 8).map((p) => 10 ** p),
      conductivityGamma: numbers(0.3, 8),
    })
    .map((p) => haverkamp1977({ ...sand, ...p })),
)

describe('Haverkamp 1977', () => {
  it('gives the water contents between which the sand column of the paper is wetted [not confirmed, source not seen]', () => {
    // 0.10 and 0.267 m³/m³ go with suctions of 61.5 and 20.73 cm.
    expect(haverkamp1977(sand).waterContent(centimetresOfSuction(61.5))).toBeCloseTo(0.1, 3)
    expect(haverkamp1977(sand).waterContent(centimetresOfSuction(20.73))).toBeCloseTo(0.267, 2)
  })
  it('equals the printed form (independent arithmetic)', () => {
    fc.assert(
      fc.property(numbers(0.1, 1e4), (s) => {
        const medium = haverkamp1977(sand)
        const theta = 0.075 + (1.611e6 * (0.287 - 0.075)) / (1.611e6 + s ** 3.96)
        expect(medium.waterContent(centimetresOfSuction(s))).toBeCloseTo(theta, 13)
        const share = 1.175e6 / (1.175e6 + s ** 4.74)
        expect(medium.relativeConductivity(centimetresOfSuction(s)) / share).toBeCloseTo(1, 12)
      }),
    )
  })
  it('has half of its water where sᵝ is α, and half of its conductivity where sᵞ is A', () => {
    const medium = haverkamp1977(sand)
    expect(medium.suction(waterContent((0.075 + 0.287) / 2))).toBeCloseTo(1.611e6 ** (1 / 3.96), 10)
    expect(medium.relativeConductivity(centimetresOfSuction(1.175e6 ** (1 / 4.74)))).toBeCloseTo(0.5, 12)
  })
  it('is saturated under water pressure and at zero, and ends at no number that is not one', () => {
    const medium = haverkamp1977(sand)
    for (const s of [0, -5]) {
      expect(medium.waterContent(s as never)).toBe(0.287)
      expect(medium.capacity(s as never)).toBe(0)
      expect(medium.relativeConductivity(s as never)).toBe(1)
    }
    expect(medium.relativeConductivity(1e300 as never)).toBe(0)
    expect(medium.waterContent(1e300 as never)).toBe(0.075)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => haverkamp1977({ ...sand, alpha: 0 }), { quantity: 'alpha', unit: 'cm^β' })
    expectDomainError(() => haverkamp1977({ ...sand, conductivityA: Number.NaN }), { quantity: 'conductivityA' })
    expectDomainError(() => haverkamp1977({ ...sand, beta: -1 }), { quantity: 'beta' })
    expectDomainError(() => haverkamp1977({ ...sand, conductivityGamma: 0 }), { quantity: 'conductivityGamma' })
    expectInputError(() => haverkamp1977({ ...sand, residual: waterContent(0.3) }), 'residual')
    expectDomainError(() => haverkamp1977(sand).relativeConductivity(Number.NaN as never), { quantity: 'suction' })
  })
})
