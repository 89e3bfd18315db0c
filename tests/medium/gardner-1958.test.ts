import fc from 'fast-check'
import { centimetresOfSuction, gardner1958, perCentimetre, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

const medium = { residual: waterContent(0.06), saturated: waterContent(0.4), alpha: perCentimetre(0.1) }
checkRetentionModel(
  'gardner-1958',
  fc
    .double({ min: -3, max: 0, noNaN: true })
    .map((power) => gardner1958({ ...medium, alpha: perCentimetre(10 ** power) })),
)

describe('Gardner 1958', () => {
  it('has one exponential for water and conductivity, so that the diffusivity is constant', () => {
    const curve = gardner1958(medium)
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 5000, noNaN: true }), (s) => {
        const suction = centimetresOfSuction(s)
        // D = K / C = K_s / (α (θ_s - θ_r)) at every suction.
        expect(curve.relativeConductivity(suction) / curve.capacity(suction)).toBeCloseTo(1 / (0.1 * 0.34), 10)
      }),
    )
    expect(curve.relativeConductivity(centimetresOfSuction(10))).toBe(Math.exp(-1))
  })
  it('holds all at no suction only', () => {
    expect(gardner1958(medium).suction(waterContent(0.4))).toBe(0)
    expect(gardner1958(medium).relativeConductivity(-3 as never)).toBe(1)
    expect(gardner1958(medium).capacity(-3 as never)).toBe(0)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => gardner1958({ ...medium, alpha: perCentimetre(0) }), { quantity: 'alpha' })
    expectInputError(() => gardner1958({ ...medium, saturated: waterContent(0.06) }), 'residual')
    expectDomainError(() => gardner1958(medium).suction(waterContent(0.06)), { min: 0.06, max: 0.4 })
    expectDomainError(() => gardner1958(medium).waterContent(Number.NaN as never), { quantity: 'suction' })
    expectDomainError(() => gardner1958(medium).relativeConductivity(Number.NaN as never), { quantity: 'suction' })
  })
})
