import { degreeOfSaturation, effectiveSaturation, fraction, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('hydraulics', 'retention.effective_saturation', ({ theta, theta_r, theta_s }) => ({
  se: effectiveSaturation({
    waterContent: waterContent(theta),
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
  }),
  degree_of_saturation: degreeOfSaturation({ porosity: fraction(theta_s), waterContent: waterContent(theta) }),
}))

describe('effective saturation', () => {
  it('runs from zero at residual to one at saturation and refuses what is outside', () => {
    const limits = { residual: waterContent(0.1), saturated: waterContent(0.9) }
    expect(effectiveSaturation({ ...limits, waterContent: waterContent(0.1) })).toBe(0)
    expect(effectiveSaturation({ ...limits, waterContent: waterContent(0.9) })).toBe(1)
    expectDomainError(() => effectiveSaturation({ ...limits, waterContent: waterContent(0.05) }), { min: 0.1 })
    expectDomainError(() => effectiveSaturation({ ...limits, waterContent: Number.NaN as never }))
    expectInputError(
      () => effectiveSaturation({ ...limits, saturated: waterContent(0.1), waterContent: waterContent(0.1) }),
      'residual',
    )
  })
})
