import {
  centimetresOfSuction,
  perCentimetre,
  type VanGenuchtenParameters,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'

const dryingOf = (theta_r: number, theta_s: number, alpha: number, n: number): VanGenuchtenParameters => ({
  residual: waterContent(theta_r),
  saturated: waterContent(theta_s),
  alpha: perCentimetre(alpha),
  n,
})
const peat = dryingOf(0.12, 0.93, 0.1, 1.6)

checkPublished('hydraulics', 'hysteresis.alpha_ratio', ({ theta_r, theta_s, alpha, n, suction, alpha_ratio }) => {
  const drying = dryingOf(theta_r, theta_s, alpha, n)
  const [dry, wet] = [vanGenuchten1980(drying), wettingCurveKoolParker1987({ ...drying, alphaRatio: alpha_ratio })]
  const [theta_drying, theta_wetting] = [dry.waterContent(suction), wet.waterContent(suction)]
  return { theta_drying, theta_wetting, gap: theta_drying - theta_wetting }
})

describe('main wetting curve of Kool and Parker 1987', () => {
  it('is the drying curve at half the suction, with the ratio of 2 that is used when none is given', () => {
    const [drying, wetting] = [vanGenuchten1980(peat), wettingCurveKoolParker1987(peat)]
    for (const s of [0, 1, 10, 100, 1000]) {
      const half = wetting.waterContent(centimetresOfSuction(s / 2))
      expect(half).toBeCloseTo(drying.waterContent(centimetresOfSuction(s)), 14)
    }
    expect(wettingCurveKoolParker1987({ ...peat, alphaRatio: 1 }).waterContent(centimetresOfSuction(10))).toBe(
      drying.waterContent(centimetresOfSuction(10)),
    )
  })
  it('refuses a medium that would hold more when wetted', () => {
    expectDomainError(() => wettingCurveKoolParker1987({ ...peat, alphaRatio: 0.5 }), {
      quantity: 'alpha ratio',
      min: 1,
    })
  })
})
