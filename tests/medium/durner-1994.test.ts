import fc from 'fast-check'
import { centimetresOfSuction, durner1994, fraction, perCentimetre, vanGenuchten1980, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { integrate } from '../../src/numerics/quadrature.js'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

interface Given {
  theta_r: number
  theta_s: number
  w1: number
  alpha1: number
  n1: number
  alpha2: number
  n2: number
  l?: number
}
const mediumOf = (given: unknown) => {
  const { theta_r, theta_s, w1, alpha1, n1, alpha2, n2, l = 0.5 } = given as Given
  return durner1994({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    coarseShare: fraction(w1),
    coarse: { alpha: perCentimetre(alpha1), n: n1 },
    fine: { alpha: perCentimetre(alpha2), n: n2 },
    poreConnection: l,
  })
}

checkPublished('hydraulics', 'retention.durner', ({ ks, suction, ...curve }) => {
  const medium = mediumOf(curve)
  return {
    theta: medium.waterContent(suction),
    capacity: medium.capacity(suction),
    k: ks * medium.relativeConductivity(suction),
  }
})
checkPublished('hydraulics', 'retention.durner_inverse', ({ theta, ...curve }) => ({
  suction: mediumOf(curve).suction(waterContent(theta)),
}))

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
checkRetentionModel(
  'durner-1994',
  fc
    .record({
      theta_r: numbers(0, 0.3),
      theta_s: numbers(0.35, 1),
      w1: numbers(0, 1),
      alpha1: numbers(0.1, 1),
      n1: numbers(1.2, 6),
      alpha2: numbers(1e-3, 0.1),
      n2: numbers(1.1, 4),
    })
    .map(mediumOf),
)

describe('Durner 1994', () => {
  const curve = { theta_r: 0.1, theta_s: 0.9, w1: 0.5, alpha1: 0.5, n1: 2.5, alpha2: 0.02, n2: 1.5 }

  it('is van Genuchten when one family has all the pores', () => {
    const s = centimetresOfSuction(30)
    for (const [w1, alpha, n] of [
      [1, 0.5, 2.5],
      [0, 0.02, 1.5],
    ] as const) {
      const limits = { residual: waterContent(0.1), saturated: waterContent(0.9) }
      const alone = vanGenuchten1980({ ...limits, alpha: perCentimetre(alpha), n })
      const medium = mediumOf({ ...curve, w1 })
      expect(medium.waterContent(s)).toBeCloseTo(alone.waterContent(s), 15)
      expect(medium.relativeConductivity(s) / alone.relativeConductivity(s)).toBeCloseTo(1, 12)
    }
  })
  it('has the conductivity of Mualem’s integral, taken numerically (independent of the closed form)', () => {
    const medium = mediumOf(curve)
    // ∫ dS/s over the filled pores is ∫ c(s)/s ds from s to ∞, here over t = ln s.
    const pores = (from: number) =>
      integrate((t) => medium.capacity(centimetresOfSuction(Math.exp(t))), [Math.log(from), -5, 3, 8, 40])
    for (const s of [0.5, 5, 50, 500]) {
      const saturation = (medium.waterContent(centimetresOfSuction(s)) - 0.1) / 0.8
      const k = Math.sqrt(saturation) * (pores(s) / pores(1e-30)) ** 2
      expect(medium.relativeConductivity(centimetresOfSuction(s)) / k).toBeCloseTo(1, 9)
    }
  })
  it('is saturated at zero and under water pressure, and gives zero back', () => {
    const medium = mediumOf(curve)
    for (const s of [0, -5]) {
      expect(medium.waterContent(s as never)).toBe(0.9)
      expect(medium.capacity(s as never)).toBe(0)
      expect(medium.relativeConductivity(s as never)).toBe(1)
    }
    expect(medium.suction(waterContent(0.9))).toBe(0)
  })
  it('says when no finite suction is left', () => {
    const flat = mediumOf({ ...curve, n1: 1.001, n2: 1.001 })
    expectDomainError(() => flat.suction(waterContent(0.11)), { hint: expect.stringContaining('no finite suction') })
    // Here one family ends within the numbers and the other beyond them.
    const half = mediumOf({ ...curve, n1: 3, n2: 1.001 })
    expectDomainError(() => half.suction(waterContent(0.101)), { hint: expect.stringContaining('no finite suction') })
  })
  it('stays finite in the dry end with a negative pore connection', () => {
    const medium = mediumOf({ ...curve, n1: 30, n2: 30, l: -1.5 })
    expect(medium.relativeConductivity(centimetresOfSuction(1e300))).toBe(0)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(
      () =>
        durner1994({
          residual: waterContent(0.1),
          saturated: waterContent(0.9),
          coarseShare: 1.1 as never,
          coarse: { alpha: perCentimetre(0.5), n: 2 },
          fine: { alpha: perCentimetre(0.05), n: 2 },
        }),
      { quantity: 'coarse share', max: 1 },
    )
    expectDomainError(() => mediumOf({ ...curve, n2: 1 }), { quantity: 'n', min: 1 })
    expectDomainError(() => mediumOf({ ...curve, alpha1: 0 }), { quantity: 'alpha' })
    expectInputError(() => mediumOf({ ...curve, l: -7 }), 'poreConnection')
    expectDomainError(() => mediumOf(curve).suction(waterContent(0.05)), { min: 0.1 })
    expect(mediumOf(curve).suction(waterContent(0.9))).toBe(0)
  })
})
