import fc from 'fast-check'
import { centimetresOfSuction, perCentimetre, vanGenuchten1980, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

interface Given {
  theta_r?: number
  theta_s?: number
  alpha: number
  n: number
  l?: number
}

function mediumOf(given: unknown) {
  const { theta_r = 0, theta_s = 1, alpha, n, l = 0.5 } = given as Given
  return vanGenuchten1980({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    alpha: perCentimetre(alpha),
    n,
    poreConnection: l,
  })
}

for (const topic of ['retention.vg', 'retention.edges', 'conductivity.mualem_l', 'conductivity.cancellation']) {
  checkPublished('hydraulics', topic, ({ suction, ks, ...curve }) => {
    // Rows at the edges hold a negative suction: a water pressure.
    const medium = mediumOf(curve)
    const theta = medium.waterContent(suction)
    return {
      theta,
      se: (theta - medium.residual) / (medium.saturated - medium.residual),
      capacity: medium.capacity(suction),
      k: ks * medium.relativeConductivity(suction),
    }
  })
}
checkPublished('hydraulics', 'retention.vg_inverse', ({ theta, ...curve }) => ({
  suction: mediumOf(curve).suction(waterContent(theta)),
}))
checkPublished('hydraulics', 'lag.k_collapse', (curve) => {
  const medium = mediumOf(curve)
  return Object.fromEntries(
    [5, 10, 20, 30, 50, 70].map((s) => [`k_ratio_${s}`, medium.relativeConductivity(centimetresOfSuction(s))]),
  )
})

checkRetentionModel(
  'van-genuchten-1980',
  fc
    .record({
      theta_r: fc.double({ min: 0, max: 0.3, noNaN: true }),
      theta_s: fc.double({ min: 0.35, max: 1, noNaN: true }),
      alpha: fc.double({ min: 1e-3, max: 1, noNaN: true }),
      n: fc.double({ min: 1.05, max: 8, noNaN: true }),
      l: fc.double({ min: -1.5, max: 3, noNaN: true }),
    })
    .map(mediumOf),
)

describe('van Genuchten 1980', () => {
  const good = { residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.6 }

  it('keeps a conductivity where the printed form has lost all its digits', () => {
    // Dry end: 1 - (1 - S^(1/m))^m tends to m S^(1/m), so K/Ks tends to m² S^(l + 2/m) (independent limit).
    const medium = vanGenuchten1980(good)
    const m = 1 - 1 / 1.6
    const limit = m * m * (0.1 * 1e9) ** (-1.6 * (m * 0.5 + 2))
    expect(medium.relativeConductivity(centimetresOfSuction(1e9)) / limit).toBeCloseTo(1, 8)
    expect(medium.waterContent(centimetresOfSuction(Number.MAX_VALUE))).toBe(0.1)
    expect(vanGenuchten1980({ ...good, n: 60 }).capacity(centimetresOfSuction(1e9))).toBe(0)
  })
  it('is saturated under water pressure and at zero', () => {
    const medium = vanGenuchten1980(good)
    for (const s of [0, -5]) {
      expect(medium.waterContent(s as never)).toBe(0.9)
      expect(medium.capacity(s as never)).toBe(0)
      expect(medium.relativeConductivity(s as never)).toBe(1)
    }
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => vanGenuchten1980({ ...good, n: 1 }), { quantity: 'n', min: 1 })
    expectDomainError(() => vanGenuchten1980({ ...good, alpha: perCentimetre(0) }), { quantity: 'alpha' })
    expectDomainError(() => vanGenuchten1980({ ...good, saturated: 1.1 as never }), { max: 1 })
    expectDomainError(() => vanGenuchten1980({ ...good, poreConnection: Number.NaN }))
    expectInputError(() => vanGenuchten1980({ ...good, residual: waterContent(0.9) }), 'residual')
    expectInputError(() => vanGenuchten1980({ ...good, poreConnection: -5.4 }), 'poreConnection')
    const medium = vanGenuchten1980(good)
    expectDomainError(() => medium.suction(waterContent(0.1)), { quantity: 'water content', min: 0.1, max: 0.9 })
    expectDomainError(() => medium.suction(waterContent(0.91)))
    expectDomainError(() => medium.waterContent(Number.NaN as never), { quantity: 'suction' })
    expectDomainError(() => medium.capacity(Number.NaN as never))
    expectDomainError(() => medium.relativeConductivity(Number.NaN as never))
    expectDomainError(() => vanGenuchten1980({ ...good, n: 1.001 }).suction(waterContent(0.1 + 1e-12)), {
      hint: expect.stringContaining('no finite suction'),
    })
  })
})
