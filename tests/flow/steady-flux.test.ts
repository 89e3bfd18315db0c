import fc from 'fast-check'
import {
  brooksCorey1964,
  type ConductiveModel,
  capillaryFlux,
  capillaryRise,
  centimetres,
  centimetresOfSuction,
  centimetresPerDay,
  centimetresPerHour,
  gardner1958,
  haverkamp1977,
  hours,
  infiltrationSrivastavaYeh1991,
  maxCapillaryRise,
  maxEvaporationGardner1958,
  maxEvaporationPowerGardner1958,
  millimetresPerHour,
  perCentimetre,
  steadySuctionGardner1958,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('hydraulics', 'flow.gardner_steady', ({ ks, alpha, q_downward, z }) => ({
  h: -steadySuctionGardner1958({
    saturatedConductivity: centimetresPerHour(ks),
    alpha: perCentimetre(alpha),
    downwardFlux: millimetresPerHour(10 * q_downward),
    height: centimetres(z),
  }),
}))
checkPublished('hydraulics', 'flow.gardner_max_evaporation', ({ ks, alpha, depth, a, b, n }) => {
  const below = { depth: centimetres(depth) }
  if (ks !== undefined) {
    const medium = { saturatedConductivity: centimetresPerHour(ks), alpha: perCentimetre(alpha) }
    return { e_max: maxEvaporationGardner1958({ ...medium, ...below }) / 10 }
  }
  const perDay = (mmPerHour: number) => (mmPerHour * 24) / 10
  return {
    e_max: perDay(maxEvaporationPowerGardner1958({ a: a / 24, b, n, ...below })),
    factor_b0: (perDay(maxEvaporationPowerGardner1958({ a: a / 24, b: 0, n, ...below })) * depth ** n) / a,
  }
})
checkPublished('hydraulics', 'flow.capillary_rise', (given, row) => {
  const perHour = row.given.ks?.[1] === 'cm/min' ? 60 : 1 / 24
  return {
    height: capillaryRise({
      medium: vanGenuchten1980({
        residual: waterContent(given.theta_r),
        saturated: waterContent(given.theta_s),
        alpha: perCentimetre(given.alpha),
        n: given.n,
        poreConnection: given.l,
      }),
      saturatedConductivity: centimetresPerHour(given.ks * perHour),
      upwardFlux: millimetresPerHour(10 * given.upward_flux * perHour),
      suction: centimetresOfSuction(given.suction),
    }),
  }
})

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const exponential = { saturatedConductivity: centimetresPerHour(10), alpha: perCentimetre(0.04) }
const limits = { residual: waterContent(0.1), saturated: waterContent(0.9) }
const peat = vanGenuchten1980({ ...limits, alpha: perCentimetre(0.1), n: 1.6 })
const suctionAt = (flux: number, z: number) =>
  steadySuctionGardner1958({ ...exponential, downwardFlux: millimetresPerHour(flux), height: centimetres(z) })
const riseIn = (medium: ConductiveModel, flux: number, s: number) =>
  capillaryRise({
    medium,
    saturatedConductivity: exponential.saturatedConductivity,
    upwardFlux: millimetresPerHour(flux),
    suction: centimetresOfSuction(s),
  })

describe('steady suction of Gardner 1958', () => {
  it('obeys the law of Darcy: q = K (1 - ds/dz)', () => {
    fc.assert(
      fc.property(numbers(-15, 90), numbers(1, 40), (flux, z) => {
        const step = 1e-4
        const slope = (suctionAt(flux, z + step) - suctionAt(flux, z - step)) / (2 * step)
        expect(100 * Math.exp(-0.04 * suctionAt(flux, z)) * (1 - slope)).toBeCloseTo(flux, 4)
      }),
    )
  })
  it('is the height at rest, less under a downward flux, more under a rising one', () => {
    expect(suctionAt(0, 1e5)).toBe(1e5)
    fc.assert(
      fc.property(numbers(0.1, 50), numbers(0.01, 60), (z, flux) => {
        expect(suctionAt(flux, z)).toBeLessThan(z)
        expect(suctionAt(-Math.min(flux, 5), z)).toBeGreaterThan(z)
      }),
    )
    expect(suctionAt(50, 1e6)).toBeCloseTo(Math.log(2) / 0.04, 10)
    expect(suctionAt(100, 30)).toBe(0)
  })
  it('is where the solution of Srivastava and Yeh ends', () => {
    for (const flux of [-1, 4, 60]) {
      const column = { ...exponential, ...limits, columnHeight: centimetres(50), height: centimetres(35) }
      const { suction } = infiltrationSrivastavaYeh1991({
        ...column,
        fluxBefore: millimetresPerHour(20),
        fluxSince: millimetresPerHour(flux),
        bottomSuction: centimetresOfSuction(5),
        time: hours(1e4),
      })
      const steady = { ...exponential, bottomSuction: centimetresOfSuction(5), height: column.height }
      expect(suction).toBeCloseTo(steadySuctionGardner1958({ ...steady, downwardFlux: millimetresPerHour(flux) }), 9)
    }
  })
  it('ends at the most that can evaporate', () => {
    const most = maxEvaporationGardner1958({ ...exponential, depth: centimetres(60) })
    expect(suctionAt(-most * (1 - 1e-9), 60)).toBeGreaterThan(400)
    expectInputError(() => suctionAt(-most * (1 + 1e-9), 60), 'height')
  })
  it('refuses what has no meaning', () => {
    expectInputError(() => suctionAt(101, 10), 'downwardFlux')
    expectDomainError(() => suctionAt(Number.NaN, 10), {})
    expectDomainError(() => suctionAt(1, -10), {})
    expectDomainError(
      () =>
        steadySuctionGardner1958({ ...exponential, alpha: 0 as never, downwardFlux: 1 as never, height: 1 as never }),
      { quantity: 'alpha of the exponential conductivity' },
    )
  })
})

describe('most evaporation of Gardner 1958', () => {
  it('by powers obeys the integral that it solves (quadrature by the trapezium rule on the logarithm of suction)', () => {
    for (const [a, b, n] of [
      [1000, 500, 2],
      [50, 3, 1.3],
      [5e4, 2e5, 3.7],
    ] as const) {
      const e = maxEvaporationPowerGardner1958({ a, b, n, depth: centimetres(60) }) / 10
      let depth = 0
      for (let x = -60; x < 120; x += 0.01) {
        const s = Math.exp(x)
        depth += (0.01 * s) / (1 + (e * (s ** n + b)) / a)
      }
      expect(depth).toBeCloseTo(60, 4)
    }
  })
  it('by powers goes with the depth to the power -n without b, with the factors of the paper (hand calculation)', () => {
    for (const [n, factor] of [
      [1.5, 3.76],
      [2, 2.47],
      [3, 1.77],
      [4, 1.52],
    ] as const)
      expect(maxEvaporationPowerGardner1958({ a: 100, b: 0, n, depth: centimetres(1) }) / 1000).toBeCloseTo(factor, 1)
    fc.assert(
      fc.property(numbers(1.05, 6), numbers(5, 200), (n, depth) => {
        const at = (d: number, b: number) => maxEvaporationPowerGardner1958({ a: 100, b, n, depth: centimetres(d) })
        expect(at(2 * depth, 0) / at(depth, 0)).toBeCloseTo(2 ** -n, 10)
        expect(at(depth, 10)).toBeLessThanOrEqual(at(depth, 0))
        expect(at(depth, 1e-9) / at(depth, 0)).toBeCloseTo(1, 3)
      }),
    )
  })
  it('by an exponential falls with depth', () => {
    fc.assert(
      fc.property(numbers(0.1, 300), numbers(0.1, 300), (a, b) => {
        fc.pre(a < b)
        const at = (d: number) => maxEvaporationGardner1958({ ...exponential, depth: centimetres(d) })
        expect(at(b)).toBeLessThanOrEqual(at(a))
      }),
    )
  })
  it('refuses what has no meaning', () => {
    const good = { a: 100, b: 1, n: 2, depth: centimetres(50) }
    expectDomainError(() => maxEvaporationPowerGardner1958({ ...good, n: 1 }), { quantity: 'n', min: 1 })
    expectDomainError(() => maxEvaporationPowerGardner1958({ ...good, a: 0 }), { quantity: 'a' })
    expectDomainError(() => maxEvaporationPowerGardner1958({ ...good, b: -1 }), { quantity: 'b' })
    expectDomainError(() => maxEvaporationPowerGardner1958({ ...good, depth: centimetres(0) }), { unit: 'cm' })
    expectInputError(() => maxEvaporationPowerGardner1958({ ...good, b: 0, n: 600, depth: 0.1 as never }), 'depth')
    expectDomainError(() => maxEvaporationGardner1958({ ...exponential, depth: Number.NaN as never }), { unit: 'cm' })
  })
})

describe('capillary rise', () => {
  const gardner = gardner1958({ ...limits, alpha: exponential.alpha })
  it('is undone by the closed form of the exponential medium', () => {
    fc.assert(
      fc.property(numbers(1e-3, 80), numbers(0.1, 400), (flux, s) => {
        const z = riseIn(gardner, flux, s)
        // Close to its limit the height no longer tells the suction.
        fc.pre(Math.exp(-0.04 * s) * 100 > 1e-3 * flux)
        expect(suctionAt(-flux, z)).toBeCloseTo(s, 5)
      }),
    )
  })
  it('ends at the closed form ln(1 + K_s/e) / α of the exponential medium', () => {
    fc.assert(
      fc.property(numbers(-4, 2), (power) => {
        const flux = 10 ** power
        const most = maxCapillaryRise({
          medium: gardner,
          saturatedConductivity: exponential.saturatedConductivity,
          upwardFlux: millimetresPerHour(flux),
        })
        expect(most / (Math.log1p(100 / flux) / 0.04)).toBeCloseTo(1, 9)
      }),
    )
  })
  it('ends where the power form says, for a conductivity of powers', () => {
    // A / (A + s^γ) times K_s is a / (s^n + b) with a = A K_s and b = A.
    const sand = haverkamp1977({
      ...limits,
      alpha: 1.611e6,
      beta: 3.96,
      conductivityA: 1.175e6,
      conductivityGamma: 4.74,
    })
    const most = maxEvaporationPowerGardner1958({ a: 11.75e6, b: 1.175e6, n: 4.74, depth: centimetres(70) })
    const rise = maxCapillaryRise({
      medium: sand,
      saturatedConductivity: centimetresPerHour(10),
      upwardFlux: most,
    })
    expect(rise).toBeCloseTo(70, 8)
  })
  it('rises with suction to its limit, falls with flux, and is the suction without a flux', () => {
    fc.assert(
      fc.property(numbers(0.01, 50), numbers(0.1, 1e4), numbers(0.1, 1e4), (flux, a, b) => {
        fc.pre(a < b)
        expect(riseIn(peat, flux, a)).toBeLessThanOrEqual(riseIn(peat, flux, b))
        expect(riseIn(peat, 2 * flux, b)).toBeLessThanOrEqual(riseIn(peat, flux, b))
        expect(riseIn(peat, 0, b)).toBe(b)
        const most = maxCapillaryRise({ medium: peat, ...exponential, upwardFlux: millimetresPerHour(flux) })
        expect(riseIn(peat, flux, b)).toBeLessThanOrEqual(most * (1 + 1e-9))
      }),
      { numRuns: 40 },
    )
  })
  it('takes curves with a kink', () => {
    const bark = brooksCorey1964({ ...limits, airEntry: centimetresOfSuction(6), lambda: 0.7 })
    // Up to the air entry the medium conducts fully: z = s / (1 + e / K_s).
    expect(riseIn(bark, 50, 6)).toBeCloseTo(6 / 1.5, 10)
    expect(riseIn(bark, 50, 30)).toBeGreaterThan(4)
  })
  it('gives the flux that rises to a height, and none where the suction is no more than the height', () => {
    fc.assert(
      fc.property(numbers(1e-3, 50), numbers(1, 1000), (flux, s) => {
        const height = riseIn(peat, flux, s)
        const medium = { medium: peat, saturatedConductivity: exponential.saturatedConductivity }
        const back = capillaryFlux({ ...medium, height, suction: centimetresOfSuction(s) })
        expect(back / flux).toBeCloseTo(1, 5)
      }),
      { numRuns: 20 },
    )
    const still = { medium: peat, saturatedConductivity: centimetresPerDay(100), height: centimetres(20) }
    expect(capillaryFlux({ ...still, suction: centimetresOfSuction(20) })).toBe(0)
    expect(capillaryFlux({ ...still, suction: centimetresOfSuction(21) })).toBeGreaterThan(0)
  })
  it('refuses what has no meaning', () => {
    expectInputError(
      () => maxCapillaryRise({ medium: peat, ...exponential, upwardFlux: millimetresPerHour(0) }),
      'upwardFlux',
    )
    const slow = haverkamp1977({ ...limits, alpha: 100, beta: 1, conductivityA: 10, conductivityGamma: 0.8 })
    expect(() => maxCapillaryRise({ medium: slow, ...exponential, upwardFlux: millimetresPerHour(1) })).toThrow(
      expect.objectContaining({ code: 'no-convergence' }),
    )
    expectDomainError(() => riseIn(peat, -1, 10), { quantity: 'upward flux' })
    expectDomainError(() => capillaryFlux({ ...exponential, medium: peat, height: 0 as never, suction: 1 as never }), {
      quantity: 'height',
    })
  })
})

describe('the flux to a height of next to nothing', () => {
  const medium = vanGenuchten1980({
    residual: waterContent(0.12),
    saturated: waterContent(0.93),
    alpha: perCentimetre(0.1),
    n: 1.6,
  })
  const rising = { medium, saturatedConductivity: centimetresPerHour(60), suction: centimetresOfSuction(10) }
  it('ends: heights below a hundredth of a millimetre are refused', () => {
    expectDomainError(() => capillaryFlux({ ...rising, height: centimetres(5e-324) }), {
      quantity: 'height',
      min: 0.001,
    })
    expect(capillaryFlux({ ...rising, height: centimetres(0.001) })).toBeGreaterThan(0)
    expectDomainError(
      () => capillaryFlux({ ...rising, height: centimetres(1), suction: centimetresOfSuction(1e300) }),
      { quantity: 'suction' },
    )
  })
})
