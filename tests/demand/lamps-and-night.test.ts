import fc from 'fast-check'
import {
  celsius,
  fixtureLight,
  fraction,
  kilopascals,
  leafAreaIndex,
  leafResistanceStanghellini1987,
  micromolesPerJoule,
  nanometres,
  nightTranspiration,
  photonYieldOfWavelength,
  squareMetres,
  transpirationStanghellini1987,
  transpirationUnderLamps,
  watts,
  wattsPerSquareMetre,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const lamps = (power: number, area: number, efficacy: number, photons: number, reaching: number) => ({
  electricalPower: watts(power),
  area: squareMetres(area),
  efficacy: micromolesPerJoule(efficacy),
  photonsPerJoule: micromolesPerJoule(photons),
  reachingCrop: fraction<never>(reaching),
})

describe('light and heat of fixtures', () => {
  it('closes the energy balance and scales with power over area', () => {
    fc.assert(
      fc.property(
        between(0, 1e6),
        between(0.1, 1e5),
        between(0.1, 3),
        between(3, 6),
        between(0.01, 1),
        (p, a, e, y, u) => {
          const got = fixtureLight(lamps(p, a, e, y, u))
          expect(got.lightOnCrop + got.lightElsewhere + got.fixtureHeat).toBeCloseTo(got.electricity, 6)
          expect(got.electricity * a).toBeCloseTo(p, 3)
          expect(got.photonFlux).toBeCloseTo((u * e * p) / a, 6)
          expect(got.fixtureHeat).toBeGreaterThanOrEqual(-1e-9)
        },
      ),
    )
  })
  it('gives no fixture heat where every joule becomes light of one colour (exact photon energy of the SI)', () => {
    const red = photonYieldOfWavelength(nanometres(660))
    const got = fixtureLight(lamps(1000, 10, red, red, 1))
    expect(got.fixtureHeat).toBeCloseTo(0, 12)
    expect(got.lightOnCrop).toBeCloseTo(100, 12)
  })
  it('feeds the model of a crop under lamps, whose light is what the fixture says', () => {
    const light = fixtureLight(lamps(6000, 60, 2.8, 4.8, 0.9))
    const crop = transpirationUnderLamps({
      photonFlux: light.photonFlux,
      photonsPerJoule: 4.8,
      cover: fraction<never>(1),
      reflected: 0,
      temperature: celsius(24),
      deficit: kilopascals(0.9) as never,
      leafArea: leafAreaIndex(3),
    })
    expect(crop.latentHeat + crop.sensibleHeat).toBeCloseTo(light.lightOnCrop, 9)
  })
  it('refuses more photons than the electricity holds', () => {
    expectInputError(() => fixtureLight(lamps(100, 1, 5, 4, 1)), 'efficacy')
    expectDomainError(() => fixtureLight({ ...lamps(100, 1, 2, 4, 1), area: 0 as never }), { unit: 'm²' })
    expectDomainError(() => fixtureLight({ ...lamps(100, 1, 2, 4, 1), electricalPower: Number.NaN as never }), {})
  })
})

describe('a night under glass', () => {
  const es = (t: number) => 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
  const night = (temperature: number, deficit: number, leafArea: number, net: number) => ({
    temperature: celsius(temperature),
    deficit: kilopascals(deficit) as never,
    leafArea: leafAreaIndex(leafArea),
    netRadiation: wattsPerSquareMetre(net),
  })
  it('agrees with itself: the resistance of the leaf that it gives makes that leaf', () => {
    fc.assert(
      fc.property(between(10, 30), between(0, 1.2), between(0.3, 6), between(-50, 50), (t, d, leaves, net) => {
        fc.pre(d < es(t))
        const got = nightTranspiration(night(t, d, leaves, net))
        const leaf = Math.min(60, Math.max(0, got.leafTemperature))
        const leafDeficit = Math.min(10, Math.max(0, d + es(leaf) - es(t)))
        const leafResistance = leafResistanceStanghellini1987({
          radiationOnLeaf: wattsPerSquareMetre(0),
          leafTemperature: celsius(leaf),
          deficit: kilopascals(leafDeficit) as never,
          night: true,
        })
        const again = transpirationStanghellini1987({ ...night(t, d, leaves, net), leafResistance })
        expect(again.leafTemperature).toBeCloseTo(got.leafTemperature, 8)
        expect(got.latentHeat + got.sensibleHeat).toBeCloseTo(net, 9)
      }),
    )
  })
  it('makes leaves colder than dry air without radiation, and dew under a cold roof in damp air', () => {
    const dry = nightTranspiration(night(18, 0.6, 3, 0))
    expect(dry.transpiration).toBeGreaterThan(0)
    expect(dry.leafTemperature).toBeLessThan(18)
    expect(nightTranspiration(night(18, 0, 3, -40)).transpiration).toBeLessThan(0)
    expect(nightTranspiration(night(18, 0, 3, 0)).transpiration).toBe(0)
  })
  it('is far below the transpiration of a sunny hour', () => {
    const day = transpirationStanghellini1987({ ...night(24, 1.2, 3, 300), leafResistance: 150 })
    expect(nightTranspiration(night(18, 0.5, 3, 0)).transpiration).toBeLessThan(day.transpiration / 5)
  })
  it('refuses a sunny night and no leaves', () => {
    expectDomainError(() => nightTranspiration(night(18, 0.5, 3, 301)), { unit: 'W/m²' })
    expectDomainError(() => nightTranspiration({ ...night(18, 0.5, 3, 0), leafArea: 0 as never }), {})
    expectDomainError(() => nightTranspiration({ ...night(18, 0.5, 3, 0), carbonDioxide: Number.NaN }), { unit: 'ppm' })
  })
})

describe('a deficit that the air cannot have', () => {
  // Saturation at 24 °C is 2.98 kPa (FAO-56, 1998, Annex 2, Table 2.3); 9 hPa written as 9 kPa gave a leaf at -12.8 °C.
  const air = { temperature: celsius(24), leafArea: leafAreaIndex(3) }
  const models = {
    day: (deficit: number) =>
      transpirationStanghellini1987({
        ...air,
        deficit: kilopascals(deficit),
        netRadiation: wattsPerSquareMetre(250),
        leafResistance: 150,
      }),
    lamps: (deficit: number) =>
      transpirationUnderLamps({
        ...air,
        deficit: kilopascals(deficit),
        photonFlux: 300 as never,
        photonsPerJoule: 4.8,
        cover: fraction(0.9),
      }),
    night: (deficit: number) => nightTranspiration({ ...air, deficit: kilopascals(deficit) }),
  }
  it.each(Object.entries(models))('is refused by the model of %s, which answers up to quite dry air', (_, model) => {
    expectInputError(() => model(9), 'deficit')
    expectInputError(() => model(2.99), 'deficit')
    expect(model(2.98).transpiration).toBeGreaterThan(0)
    expect(() => model(9)).toThrow('10 hPa is 1 kPa')
  })
})
