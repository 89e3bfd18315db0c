import fc from 'fast-check'
import {
  celsius,
  explainDemandFinding,
  fitDailyUse,
  fraction,
  interceptedFraction,
  joulesPerSquareCentimetre,
  kilopascals,
  leafAreaFromCover,
  leafAreaIndex,
  leafResistanceStanghellini1987,
  micromolesPerSquareMetreSecond,
  transpirationBaille1994,
  transpirationStanghellini1987,
  transpirationUnderLamps,
  validityBaille1994,
  validityOf,
  waterUseFromRadiationAndHeating,
  waterUseFromRadiationSum,
  wattsPerSquareMetre,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('evapotranspiration', 'radiation_plus_heating', (g) => ({
  T: waterUseFromRadiationAndHeating({
    radiationSum: joulesPerSquareCentimetre(g.S),
    heatingSum: g.degmin,
    usePerJoule: g.a,
    usePerDegreeMinute: g.b,
    cropSize: g.f,
  }),
}))

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const house = (net: number, dry: number, leafResistance = 200) => ({
  netRadiation: wattsPerSquareMetre(net),
  temperature: celsius(22),
  deficit: kilopascals(dry) as never,
  leafArea: leafAreaIndex(3),
  leafResistance,
})

describe('the Penman-Monteith equation of Stanghellini', () => {
  it('closes the energy balance and gives the vapour flow of its own leaf temperature (independent form)', () => {
    fc.assert(
      fc.property(between(0, 600), between(0.1, 2.5), between(50, 1000), (net, dry, rs) => {
        const got = transpirationStanghellini1987(house(net, dry, rs))
        expect(got.latentHeat + got.sensibleHeat).toBeCloseTo(net, 8)
        // From the resistances and the linear saturation curve (4098 es / (T + 237.3)²) without the combined equation.
        const es = 0.6108 * Math.exp((17.27 * 22) / (22 + 237.3))
        const slope = (4098 * es) / (22 + 237.3) ** 2
        const gamma = 0.000665 * 101.325
        const rho = (1000 * (101.325 - 0.378 * (es - dry))) / (287.05 * 295.15)
        const leafDeficit = dry + slope * (got.leafTemperature - 22)
        const flow = (2 * 3 * rho * 1013 * leafDeficit) / (gamma * (275 + rs))
        expect(Math.abs(flow / got.latentHeat - 1)).toBeLessThan(1e-3)
      }),
    )
  })
  it('rises with radiation and with dryness and falls with resistance', () => {
    fc.assert(
      fc.property(between(0, 500), between(0.1, 2.5), between(80, 900), (net, dry, rs) => {
        const at = (n: number, d: number, r: number) => transpirationStanghellini1987(house(n, d, r)).transpiration
        expect(at(net + 10, dry, rs)).toBeGreaterThan(at(net, dry, rs))
        expect(at(net, dry + 0.1, rs)).toBeGreaterThan(at(net, dry, rs))
        expect(at(net, dry, rs + 10)).toBeLessThan(at(net, dry, rs))
      }),
    )
  })
  it('closes pores in the dark, in dry and in hot or cold air', () => {
    const at = (light: number, warm: number, dry: number, night = false) =>
      leafResistanceStanghellini1987({
        radiationOnLeaf: wattsPerSquareMetre(light),
        leafTemperature: celsius(warm),
        deficit: kilopascals(dry) as never,
        night,
      })
    expect(at(0, 24.5, 0)).toBeCloseTo((82 * 4.3) / 0.54, 9)
    expect(at(50, 24.5, 1)).toBeGreaterThan(at(50, 24.5, 0.5))
    expect(at(50, 15, 0.5)).toBeGreaterThan(at(50, 24.5, 0.5))
    expect(at(50, 24.5, 3)).toBeCloseTo(3.8 * at(50, 24.5, 0), 9)
    expect(at(0, 33.6, 0, true)).toBeCloseTo(658.5, 9)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => transpirationStanghellini1987({ ...house(100, 1), leafResistance: 0 }), { unit: 's/m' })
    expectDomainError(() => transpirationStanghellini1987(house(Number.NaN, 1) as never), {})
  })
})

describe('lamps', () => {
  it('transpires in the dark by dryness alone and never beyond light plus what air gives', () => {
    const room = {
      photonsPerJoule: 4.8,
      cover: fraction<never>(0.9),
      temperature: celsius(24),
      deficit: kilopascals(0.9) as never,
      leafArea: leafAreaIndex(3),
    }
    const dark = transpirationUnderLamps({ ...room, photonFlux: micromolesPerSquareMetreSecond(0) })
    expect(dark.transpiration).toBeGreaterThan(0)
    expect(dark.leafTemperature).toBeLessThan(24)
    const light = transpirationUnderLamps({ ...room, photonFlux: micromolesPerSquareMetreSecond(300) })
    expect(light.latentHeat + light.sensibleHeat).toBeCloseTo((0.95 * 0.9 * 300) / 4.8, 9)
  })
  it('solves the balance of Graamans and others (2017): LAI over rs + ra for vapour, LAI over ra for heat (by bisection here)', () => {
    fc.assert(
      fc.property(between(50, 700), between(0.2, 2), between(0.5, 5), between(60, 300), (photons, dry, leaves, ra) => {
        const got = transpirationUnderLamps({
          photonFlux: micromolesPerSquareMetreSecond(photons),
          photonsPerJoule: 4.8,
          cover: fraction<never>(0.9),
          temperature: celsius(22),
          deficit: kilopascals(dry) as never,
          leafArea: leafAreaIndex(leaves),
          airResistance: ra,
        })
        const es = 0.6108 * Math.exp((17.27 * 22) / (22 + 237.3))
        const slope = (4098 * es) / (22 + 237.3) ** 2
        const heatOfAir = (1013 * 1000 * (101.325 - 0.378 * (es - dry))) / (287.05 * 295.15)
        const gamma = 0.000665 * 101.325
        const rs = (60 * (1500 + photons)) / (200 + photons)
        const vapour = (leaf: number) => (leaves * heatOfAir * (dry + slope * (leaf - 22))) / (gamma * (rs + ra))
        const heat = (leaf: number) => (leaves * heatOfAir * (leaf - 22)) / ra
        const net = (0.95 * 0.9 * photons) / 4.8
        let [cold, hot] = [-50, 100]
        for (let i = 0; i < 100; i++) {
          const leaf = (cold + hot) / 2
          if (vapour(leaf) + heat(leaf) > net) hot = leaf
          else cold = leaf
        }
        // The psychrometric constant of FAO-56 has three digits here and is worked out there.
        expect(Math.abs(got.latentHeat / vapour(cold) - 1)).toBeLessThan(1e-3)
        expect(got.leafTemperature).toBeCloseTo(cold, 1)
      }),
    )
  })
})

describe('the simplified model and the radiation sum', () => {
  it('adds a term of light and a term of dryness', () => {
    const at = (G: number, D: number) =>
      transpirationBaille1994({
        radiation: wattsPerSquareMetre(G),
        deficit: kilopascals(D) as never,
        leafArea: leafAreaIndex(2),
        radiationCoefficient: 0.4,
        deficitCoefficient: 25,
      })
    expect(at(300, 1)).toBeCloseTo(at(300, 0) + at(0, 1), 12)
    expect(at(0, 1)).toBeCloseTo((50 * 3600) / 2.45e6, 12)
    expect(validityOf(validityBaille1994, { radiationCoefficient: 0.9 })).toHaveLength(1)
  })
  it('warns above the latent heat of the radiation', () => {
    const use = (usePerJoule: number) =>
      waterUseFromRadiationSum({ radiationSum: joulesPerSquareCentimetre(100), usePerJoule })
    expect(use(4.08).findings).toEqual([])
    const [above] = use(4.09).findings
    expect(above).toMatchObject({ code: 'above-latent-heat', level: 'danger' })
    expect(above && explainDemandFinding(above).message).toMatch(/^4\.09 mL\/m² per J\/cm² is above the 4\.08 that/)
    expectInputError(() => explainDemandFinding({ ...above, code: 'hot' } as never), 'finding')
    // FAO-56 Table 3: 2.45 MJ/kg.
    expect(use(2).ceiling).toBeCloseTo(0.40816, 5)
    expectDomainError(() => use(11), { max: 10 })
  })
  it('gets leaf area back from its cover', () => {
    fc.assert(
      fc.property(between(0.05, 8), between(0.3, 0.8), (leaves, extinction) => {
        const cover = interceptedFraction({ leafArea: leafAreaIndex(leaves), extinction })
        fc.pre(cover <= 0.999)
        expect(leafAreaFromCover({ cover, extinction })).toBeCloseTo(leaves, 9)
      }),
    )
  })
})

describe('learning from the record', () => {
  const radiationSum = Float64Array.from({ length: 30 }, (_, i) => 800 + 90 * ((i * 7) % 11))
  const deficitHours = Float64Array.from({ length: 30 }, (_, i) => 8 + ((i * 5) % 13))
  const noise = Float64Array.from({ length: 30 }, (_, i) => 0.1 * Math.sin(i * 2.3))
  const use = radiationSum.map((s, i) => 0.0015 * s + 0.06 * deficitHours[i]! + noise[i]!)
  it('holds the true coefficients in 95 of 100 intervals', () => {
    let state = 12345
    const uniform = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      return (state + 0.5) / 2 ** 32
    }
    let held = 0
    for (let round = 0; round < 1000; round++) {
      const noisy = radiationSum.map((s, i) => {
        const normal = Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
        return 0.0015 * s + 0.06 * deficitHours[i]! + 0.1 * normal
      })
      const { perDeficitHour } = fitDailyUse({ use: noisy, radiationSum, deficitHours })
      if (perDeficitHour.low < 0.06 && perDeficitHour.high > 0.06) held++
    }
    // Three standard errors of a share of 0.95 in 1000 are 0.021.
    expect(Math.abs(held / 1000 - 0.95)).toBeLessThan(0.021)
    expect(fitDailyUse({ use, radiationSum, deficitHours })).toMatchObject({
      fittedDays: 21,
      testDays: 9,
      skippedDays: 0,
      usable: true,
    })
  })
  it('agrees with the normal equations (independent oracle)', () => {
    const fit = fitDailyUse({ use, radiationSum, deficitHours })
    let [ss, sd, dd, su, du] = [0, 0, 0, 0, 0]
    for (let i = 0; i < 21; i++) {
      const [s, d, u] = [radiationSum[i]!, deficitHours[i]!, use[i]!]
      ss += s * s
      sd += s * d
      dd += d * d
      su += s * u
      du += d * u
    }
    expect(fit.perJoule.value).toBeCloseTo((su * dd - du * sd) / (ss * dd - sd * sd), 12)
    expect(fit.perDeficitHour.value).toBeCloseTo((du * ss - su * sd) / (ss * dd - sd * sd), 10)
  })
  it('counts days with gaps and says when the record cannot tell', () => {
    const holes = use.map((u, i) => (i % 6 === 0 ? Number.NaN : u))
    expect(fitDailyUse({ use: holes, radiationSum, deficitHours }).skippedDays).toBe(5)
    const together = radiationSum.map((s, i) => s / 100 + 0.01 * noise[i]!)
    const fit = fitDailyUse({ use, radiationSum, deficitHours: together })
    expect(fit.usable).toBe(false)
    expect(fit.findings.map((w) => w.code)).toContain('causes-move-together')
    expectInputError(() => fitDailyUse({ use: use.slice(0, 8), radiationSum, deficitHours }), 'use')
    expectInputError(() => fitDailyUse({ use, radiationSum, deficitHours: radiationSum }), 'deficitHours')
  })
})
