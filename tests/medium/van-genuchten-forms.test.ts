import fc from 'fast-check'
import {
  centimetresOfSuction,
  logLogisticRetention,
  milksFontenoLarson1989,
  perCentimetre,
  type RetentionModel,
  type SuctionHead,
  vanGenuchten1980,
  vanGenuchtenBurdine1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { integrate } from '../../src/numerics/quadrature.js'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

const limits = { residual: waterContent(0.1), saturated: waterContent(0.9) }
const throughCurve = (medium: RetentionModel, suction: number) => {
  const s = centimetresOfSuction(suction)
  return {
    theta: medium.waterContent(s),
    capacity: medium.capacity(s),
    suction_back: medium.suction(medium.waterContent(s)),
  }
}

checkPublished('hydraulics', 'conductivity.vg_burdine', ({ alpha, n, ks, l, suction }) => {
  const medium = vanGenuchtenBurdine1980({
    residual: waterContent(0),
    saturated: waterContent(1),
    alpha: perCentimetre(alpha),
    n,
    poreConnection: l,
  })
  const s = centimetresOfSuction(suction)
  return { k: ks * medium.relativeConductivity(s), se: medium.waterContent(s) }
})
checkPublished('hydraulics', 'retention.five_parameter', ({ theta_r, theta_s, alpha, n, m, suction }) =>
  throughCurve(
    milksFontenoLarson1989({
      residual: waterContent(theta_r),
      saturated: waterContent(theta_s),
      alpha: perCentimetre(alpha),
      n,
      m,
    }),
    suction,
  ),
)
checkPublished('hydraulics', 'retention.log_logistic', ({ theta_low, theta_high, suction_half, slope, suction }) =>
  throughCurve(
    logLogisticRetention({
      residual: waterContent(theta_low),
      saturated: waterContent(theta_high),
      halfSuction: centimetresOfSuction(suction_half),
      slope,
    }),
    suction,
  ),
)

const alphas = fc.double({ min: 1e-3, max: 1, noNaN: true }).map(perCentimetre)
const exponents = (min: number, max: number) => fc.double({ min, max, noNaN: true })
checkRetentionModel(
  'van-genuchten-burdine-1980',
  fc.record({ alpha: alphas, n: exponents(2.05, 8) }).map((p) => vanGenuchtenBurdine1980({ ...limits, ...p })),
)
checkRetentionModel(
  'milks-fonteno-larson-1989',
  fc
    .record({ alpha: alphas, n: exponents(0.8, 6), m: exponents(0.05, 3) })
    .map((p) => milksFontenoLarson1989({ ...limits, ...p })),
)
checkRetentionModel(
  'log-logistic',
  fc
    .record({ halfSuction: exponents(1, 100).map(centimetresOfSuction), slope: exponents(0.8, 6) })
    .map((p) => logLogisticRetention({ ...limits, ...p })),
)

describe('the forms that share van Genuchten’s curve', () => {
  it('coincide where their exponents do', () => {
    const curve = { ...limits, alpha: perCentimetre(0.1), n: 1.6 }
    const s = centimetresOfSuction(37)
    const m = 1 - 1 / 1.6
    expect(milksFontenoLarson1989({ ...curve, m }).waterContent(s)).toBe(vanGenuchten1980(curve).waterContent(s))
    const logistic = logLogisticRetention({ ...limits, halfSuction: centimetresOfSuction(10), slope: 1.6 })
    expect(milksFontenoLarson1989({ ...curve, m: 1 }).waterContent(s)).toBeCloseTo(logistic.waterContent(s), 14)
  })
  it('conduct as Mualem’s integral says, taken numerically (independent of the incomplete beta function)', () => {
    const curves = [
      milksFontenoLarson1989({ ...limits, alpha: perCentimetre(0.12), n: 1.7, m: 0.9, poreConnection: -0.5 }),
      logLogisticRetention({ ...limits, halfSuction: centimetresOfSuction(6), slope: 1.9, poreConnection: -0.5 }),
    ]
    for (const medium of curves) {
      // ∫ dS/s over the filled pores is ∫ c(s)/s ds from s to ∞, here over t = ln s.
      const pores = (from: number) =>
        integrate((t) => medium.capacity(centimetresOfSuction(Math.exp(t))), [Math.log(from), -5, 3, 8, 40])
      for (const s of [0.5, 5, 50, 500].map(centimetresOfSuction)) {
        const saturation = (medium.waterContent(s) - 0.1) / 0.8
        const k = saturation ** -0.5 * (pores(s) / pores(1e-40)) ** 2
        expect((medium.relativeConductivity as (s: SuctionHead) => number)(s) / k).toBeCloseTo(1, 9)
      }
    }
  })
  it('conduct as van Genuchten where the exponents are tied, and not at all for n up to 1', () => {
    const curve = { ...limits, alpha: perCentimetre(0.1), n: 1.6 }
    const free = milksFontenoLarson1989({ ...curve, m: 1 - 1 / 1.6 })
    for (const s of [0.01, 1, 30, 1e4].map(centimetresOfSuction)) {
      const tied = vanGenuchten1980(curve).relativeConductivity(s)
      expect((free.relativeConductivity as (s: SuctionHead) => number)(s) / tied).toBeCloseTo(1, 12)
    }
    expect(free.relativeConductivity?.(centimetresOfSuction(0))).toBe(1)
    expect(milksFontenoLarson1989({ ...curve, n: 1, m: 0.5 }).relativeConductivity).toBeUndefined()
    expectInputError(() => milksFontenoLarson1989({ ...curve, m: 0.5, poreConnection: -4.5 }), 'poreConnection')
  })
  it('keeps a power-law tail where the power itself is beyond all numbers', () => {
    // S tends to (αs)^(-nm): with n = 50 and m = 0.01 a power of -0.5, though (αs)^50 overflows.
    const medium = milksFontenoLarson1989({ ...limits, alpha: perCentimetre(1), n: 50, m: 0.01 })
    expect(medium.waterContent(centimetresOfSuction(1e8))).toBeCloseTo(0.1 + 0.8 * 1e-4, 15)
  })
  it('with Burdine’s exponent, is saturated at zero and under water pressure', () => {
    const medium = vanGenuchtenBurdine1980({ ...limits, alpha: perCentimetre(0.1), n: 3 })
    for (const s of [0, -5]) {
      expect(medium.waterContent(s as never)).toBe(0.9)
      expect(medium.relativeConductivity(s as never)).toBe(1)
    }
  })
  it('refuses what has no meaning', () => {
    const burdine = { ...limits, alpha: perCentimetre(0.1), n: 3 }
    expectDomainError(() => vanGenuchtenBurdine1980({ ...burdine, n: 2 }), { quantity: 'n', min: 2 })
    expectInputError(() => vanGenuchtenBurdine1980({ ...burdine, poreConnection: -3 }), 'poreConnection')
    expectDomainError(() => milksFontenoLarson1989({ ...burdine, m: 0 }), { quantity: 'm' })
    expectDomainError(() => logLogisticRetention({ ...limits, halfSuction: centimetresOfSuction(0), slope: 2 }), {
      quantity: 'half suction',
    })
  })
})
