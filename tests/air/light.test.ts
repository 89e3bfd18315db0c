import fc from 'fast-check'
import {
  celsius,
  dailyLightIntegral,
  dailyLightIntegralOfSeries,
  dailyLightIntegralOfSunlight,
  energyFromPhotonFlux,
  evaporationCeiling,
  evaporationOfDailyEnergy,
  fraction,
  hours,
  illuminanceFromPhotonFlux,
  inJoulesPerSquareCentimetreDay,
  joulesPerSquareCentimetre,
  latentHeatFao56,
  lightSources,
  lux,
  megajoulesPerKilogram,
  megajoulesPerSquareMetreDay,
  micromolesPerJoule,
  micromolesPerSquareMetreSecond,
  minutes,
  molesPerSquareMetreDay,
  nanometres,
  photonFluxForDailyLight,
  photonFluxFromEnergy,
  photonFluxFromIlluminance,
  photonFluxOfLamps,
  photonYieldOfGlobalRadiation,
  photonYieldOfWavelength,
  radiationSum,
  seconds,
  squareMetres,
  watts,
  wattsPerSquareMetre,
  wattsPerSquareMetreDayMean,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('evapotranspiration', 'energy_to_depth', ({ energy, fraction: share }) => ({
  depth: evaporationOfDailyEnergy({ energy: megajoulesPerSquareMetreDay(energy * share) }),
}))
checkPublished('evapotranspiration', 'radiation_units', ({ W }) => {
  const energy = wattsPerSquareMetreDayMean(W)
  return {
    MJ_day: energy,
    J_cm2_day: inJoulesPerSquareCentimetreDay(energy),
    // The print rounds 1/2.45 to 0.408, which is a latent heat of 2.45098 MJ/kg.
    mm_day: evaporationOfDailyEnergy({ energy, latentHeat: megajoulesPerKilogram(1 / 0.408) }),
  }
})
checkPublished('evapotranspiration', 'latent_heat', ({ t }) => ({ lambda: latentHeatFao56(celsius(t)) }))
checkPublished('evapotranspiration', 'ppfd_from_par_watts', ({ W, umol_per_J }) => ({
  PPFD: photonFluxFromEnergy({ irradiance: wattsPerSquareMetre(W), photonYield: micromolesPerJoule(umol_per_J) }),
}))
checkPublished('evapotranspiration', 'dli_from_global', ({ G_MJ, umol_per_J_global }) => ({
  DLI: dailyLightIntegralOfSunlight({
    solar: megajoulesPerSquareMetreDay(G_MJ),
    photonYield: micromolesPerJoule(umol_per_J_global),
  }),
}))
checkPublished('evapotranspiration', 'ppfd_monochromatic', ({ nm }) => ({
  umol_per_J: photonYieldOfWavelength(nanometres(nm)),
}))
checkPublished('irrigation', 'light.dli', ({ PPFD, hours: h }) => ({
  DLI: dailyLightIntegral({ photonFlux: micromolesPerSquareMetreSecond(PPFD), photoperiod: hours(h) }),
}))
checkPublished('irrigation', 'light.dli_series', ({ t, PPFD }) => ({
  DLI: dailyLightIntegralOfSeries({ times: t, photonFlux: PPFD, maxGap: hours(6) }).integral,
}))
checkPublished('irrigation', 'light.dli_solar', ({ Rs, par_fraction, umol_per_J, transmission }) => ({
  DLI: dailyLightIntegralOfSunlight({
    solar: megajoulesPerSquareMetreDay(Rs),
    photonYield: photonYieldOfGlobalRadiation({
      parShare: fraction(par_fraction),
      photonYield: micromolesPerJoule(umol_per_J),
    }),
    transmission: fraction(transmission),
  }),
}))
checkPublished('irrigation', 'radiation.sum', ({ t, G }) => ({ sum: radiationSum({ times: t, irradiance: G }).sum }))
checkPublished('irrigation', 'radiation.latent', ({ sum, lambda }) => ({
  depth_mL_m2:
    1000 * evaporationCeiling({ sum: joulesPerSquareCentimetre(sum), latentHeat: megajoulesPerKilogram(lambda) }),
}))

describe('light of named sources', () => {
  it('goes from lux to photons and back', () => {
    for (const source of Object.keys(lightSources) as (keyof typeof lightSources)[]) {
      const photonFlux = photonFluxFromIlluminance({ illuminance: lux(30000), source })
      expect(illuminanceFromPhotonFlux({ photonFlux, source })).toBeCloseTo(30000, 8)
      const { photonYield } = lightSources[source]
      expect(
        photonFluxFromEnergy({ irradiance: energyFromPhotonFlux({ photonFlux, photonYield }), photonYield }),
      ).toBeCloseTo(photonFlux, 9)
      // No light of 400 to 700 nm has fewer photons than its bluest or more than its reddest.
      expect(photonYield).toBeGreaterThan(photonYieldOfWavelength(nanometres(400)))
      expect(photonYield).toBeLessThan(photonYieldOfWavelength(nanometres(700)))
    }
  })
  it('has full sun at 2000 µmol/m²/s and 108 000 lx', () => {
    expect(photonFluxFromIlluminance({ illuminance: lux(108000), source: 'sun-and-sky' })).toBe(2000)
  })
  it('refuses a source without published conversions', () => {
    expectInputError(() => photonFluxFromIlluminance({ illuminance: lux(1), source: 'diode' as never }), 'source')
    expectInputError(
      () => illuminanceFromPhotonFlux({ photonFlux: micromolesPerSquareMetreSecond(1), source: 'toString' as never }),
      'source',
    )
  })
  it('spreads the photons of lamps over the area', () => {
    const lamps = { power: watts(1000), photonYield: micromolesPerJoule(3), area: squareMetres(4) }
    expect(photonFluxOfLamps(lamps)).toBe(750)
    expect(photonFluxOfLamps({ ...lamps, arriving: fraction(0.5) })).toBe(375)
    expectDomainError(() => photonFluxOfLamps({ ...lamps, area: 0 as never }), { quantity: 'lit area' })
  })
})

describe('sums of light', () => {
  it('take a reading a little below zero for darkness, and refuse what no sensor of light reads', () => {
    const sum = (flux: number) =>
      dailyLightIntegralOfSeries({ times: [0, 3600, 7200], photonFlux: [500, flux, 500], maxGap: hours(3) })
    expect(sum(0).integral).toBeCloseTo(1.8, 12)
    for (const offset of [-0.1, -20]) {
      expect(sum(offset)).toMatchObject({ belowZero: 1, refused: 0 })
      expect(sum(offset).integral).toBe(sum(0).integral)
    }
    // A reading that is refused is bridged like one that is missing.
    for (const wrong of [-20.001, -999, 5000.1]) {
      expect(sum(wrong)).toMatchObject({ belowZero: 0, refused: 1 })
      expect(sum(wrong).integral).toBeCloseTo(3.6, 12)
    }
    expect(sum(5000)).toMatchObject({ refused: 0 })
  })
  it('of constant light are flux times time, both ways', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.double({ min: 1, max: 24, noNaN: true }),
        (q, h) => {
          const photoperiod = hours(h)
          const integral = dailyLightIntegral({ photonFlux: micromolesPerSquareMetreSecond(q), photoperiod })
          expect(photonFluxForDailyLight({ integral, photoperiod }) / q).toBeCloseTo(1, 12)
          const times = [0, h * 1800, h * 3600]
          const series = dailyLightIntegralOfSeries({ times, photonFlux: [q, q, q], maxGap: hours(24) })
          expect(series.integral / integral).toBeCloseTo(1, 12)
        },
      ),
    )
  })
  it('do not depend on how finely a straight course is read', () => {
    const coarse = radiationSum({ times: [0, 3600], irradiance: [100, 700] }).sum
    const fine = radiationSum({ times: [0, 900, 1800, 2700, 3600], irradiance: [100, 250, 400, 550, 700] }).sum
    expect(fine).toBeCloseTo(coarse, 10)
  })
  it('leave gaps out and report them', () => {
    const day = radiationSum({
      times: [0, 600, 1200, 9000, 9600, 10200],
      irradiance: [500, Number.NaN, 500, 500, -2, 9999],
      maxGap: minutes(30),
    })
    // 1200 s at 500 W/m², then 600 s from 500 to 0; the 7800 s between them are unknown, and so are the last 600 s.
    expect(day.sum).toBeCloseTo((1200 * 500 + 600 * 250) * 1e-4, 10)
    expect(day).toMatchObject({ covered: 1800, uncovered: 8400, missing: 1, refused: 1, belowZero: 1 })
    expect(day.covered + day.uncovered).toBe(10200)
  })
  it('are zero without readings', () => {
    expect(radiationSum({ times: [], irradiance: [] })).toMatchObject({ sum: 0, covered: 0, uncovered: 0 })
    expect(radiationSum({ times: [0, 60], irradiance: [Number.NaN, Number.NaN] })).toMatchObject({
      sum: 0,
      uncovered: 60,
    })
  })
  it('refuse readings out of order, lists that differ and more than a day of a daily integral', () => {
    expectInputError(() => radiationSum({ times: [0, 0], irradiance: [1, 1] }), 'times')
    expectInputError(() => radiationSum({ times: [0, Number.NaN], irradiance: [1, 1] }), 'times')
    expectInputError(() => radiationSum({ times: [null as never, 60], irradiance: [1, 1] }), 'times')
    expectInputError(() => radiationSum({ times: [0], irradiance: [1, 1] }), 'irradiance')
    expectInputError(() => dailyLightIntegralOfSeries({ times: [0, 90000], photonFlux: [1, 1] }), 'times')
    expectDomainError(() => radiationSum({ times: [0], irradiance: [1], maxGap: seconds(0) }), { unit: 's' })
  })
  it('of 1 J/cm² can evaporate 4.08 mL/m² (FAO-56, Table 3)', () => {
    expect(evaporationCeiling({ sum: joulesPerSquareCentimetre(1) }) * 1000).toBeCloseTo(4.08, 2)
    expect(dailyLightIntegralOfSunlight({ solar: megajoulesPerSquareMetreDay(10) })).toBeCloseTo(20.565, 9)
    expectDomainError(() => photonFluxForDailyLight({ integral: molesPerSquareMetreDay(201), photoperiod: hours(12) }))
  })
})

describe('constants that are written as literals', () => {
  it('are those of the SI (2019): a photon of 1 nm carries h c / λ', () => {
    const perNanometre = 1e-9 / (6.62607015e-34 * 299792458 * 6.02214076e23) / 1e-6
    expect(photonYieldOfWavelength(nanometres(1000)) / (1000 * perNanometre)).toBeCloseTo(1, 15)
    expect(photonYieldOfGlobalRadiation({})).toBe(
      dailyLightIntegralOfSunlight({ solar: megajoulesPerSquareMetreDay(1) }),
    )
  })
})
