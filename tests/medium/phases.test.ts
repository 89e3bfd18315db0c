import fc from 'fast-check'
import {
  airFilledPorosity,
  type BulkDensity,
  degreeOfSaturation,
  fraction,
  gramsPerCubicCentimetre,
  gravimetricFromWaterContent,
  gravimetricWaterContent,
  inPercent,
  kilogramsPerCubicMetre,
  type ParticleDensity,
  particleDensityEN13041,
  particleDensityOfMix,
  percent,
  phaseShares,
  porosityFromDensities,
  waterContent,
  waterContentAtSaturation,
  waterContentFromGravimetric,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished, publishedRows } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const percentPores = (bulk: number, particle: number) =>
  inPercent(
    porosityFromDensities({
      bulkDensity: gramsPerCubicCentimetre(bulk),
      particleDensity: gramsPerCubicCentimetre(particle),
    }),
  )

checkPublished('hydraulics', 'media.porosity', ({ bulk_density, particle_density, true_particle_density }) => {
  const total_porosity = percentPores(bulk_density, particle_density)
  if (true_particle_density === undefined) return { total_porosity }
  return { error: total_porosity - percentPores(bulk_density, true_particle_density) }
})

checkPublished(
  'hydraulics',
  'media.en13041',
  ({ organic_matter, dry_bulk_density, wet_minus_dry_mass, ring_volume }) => {
    const particleDensity = particleDensityEN13041(percent(organic_matter))
    const bulkDensity = kilogramsPerCubicMetre<BulkDensity>(dry_bulk_density)
    const content = waterContentFromGravimetric({
      gravimetric: gravimetricWaterContent(wet_minus_dry_mass / ((ring_volume * dry_bulk_density) / 1000)),
      bulkDensity,
    })
    const phases = phaseShares({ bulkDensity, particleDensity, waterContent: content })
    return {
      particle_density: particleDensity * 1000,
      total_pore_space: inPercent(porosityFromDensities({ bulkDensity, particleDensity })),
      water_volume: phases.water * 100,
      air_volume: phases.air * 100,
    }
  },
)

describe('coir dust of five sources (Evans, Konduru and Stamps 1996, HortScience 31:965-967, abstract)', () => {
  it('solids and pores of the published ranges fill the volume, seen through our phases', () => {
    for (const row of publishedRows('hydraulics', 'media.evans_coir')) {
      const pores = row.given.total_porosity_range?.[0] as [number, number]
      const solids = row.given.solids_range?.[0] as [number, number]
      const found = [
        [pores[0], solids[1]],
        [pores[1], solids[0]],
      ].map(([pore = 0, solid = 0]) => {
        // Any particle density will do: the bulk density follows from the share of solids.
        const phases = phaseShares({
          bulkDensity: gramsPerCubicCentimetre((solid / 100) * 1.5),
          particleDensity: gramsPerCubicCentimetre(1.5),
          waterContent: waterContent(0),
        })
        expect(phases.air * 100).toBeCloseTo(pore, 9)
        return (phases.air + phases.solid) * 100
      })
      expect(found[0]).toBeCloseTo(Number(row.expected.sum_low_high?.[0]), 9)
      expect(found[1]).toBeCloseTo(Number(row.expected.sum_high_low?.[0]), 9)
    }
  })
})

const share = fc.double({ min: 0, max: 1, noNaN: true })
const density = fc.double({ min: 0.01, max: 3, noNaN: true })

describe('phases', () => {
  it('water, air and solid fill the volume', () => {
    fc.assert(
      fc.property(density, share, share, (particle, packing, wetness) => {
        fc.pre(packing > 1e-6)
        const bulkDensity = gramsPerCubicCentimetre<BulkDensity>(particle * packing)
        const particleDensity = gramsPerCubicCentimetre<ParticleDensity>(particle)
        const porosity = porosityFromDensities({ bulkDensity, particleDensity })
        fc.pre(porosity > 0)
        const content = waterContent(wetness * porosity)
        const { solid, water, air } = phaseShares({ bulkDensity, particleDensity, waterContent: content })
        expect(Math.abs(solid + water + air - 1)).toBeLessThan(1e-15 * 4)
        expect(air).toBeGreaterThanOrEqual(0)
        expect(airFilledPorosity({ porosity, waterContent: content })).toBeCloseTo(air, 14)
      }),
    )
  })
  it('water by mass and water by volume undo each other', () => {
    fc.assert(
      fc.property(density, share, (bulk, theta) => {
        const bulkDensity = gramsPerCubicCentimetre<BulkDensity>(bulk)
        const gravimetric = gravimetricFromWaterContent({ waterContent: waterContent(theta), bulkDensity })
        fc.pre(gravimetric * bulk <= 1)
        expect(waterContentFromGravimetric({ gravimetric, bulkDensity })).toBeCloseTo(theta, 14)
      }),
    )
  })
  it('saturation and water content undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), share, (pores, full) => {
        const porosity = fraction(pores) as never
        const content = waterContentAtSaturation({ porosity, saturation: fraction(full) })
        expect(degreeOfSaturation({ porosity, waterContent: content })).toBeCloseTo(full, 12)
      }),
    )
  })
  it('a mix lies between its parts, and organic matter with ash is such a mix', () => {
    fc.assert(
      fc.property(share, (w) => {
        const mix = particleDensityOfMix([
          { massFraction: fraction(w), particleDensity: gramsPerCubicCentimetre(1.55) },
          { massFraction: fraction(1 - w), particleDensity: gramsPerCubicCentimetre(2.65) },
        ])
        expect(mix).toBeGreaterThanOrEqual(1.55 - 1e-12)
        expect(mix).toBeLessThanOrEqual(2.65 + 1e-12)
        expect(mix).toBeCloseTo(particleDensityEN13041(fraction(w)), 12)
      }),
    )
  })
  it('counts warm water as lighter (definition: 0.9982 g/cm³ at 20 °C)', () => {
    const water = { gravimetric: gravimetricWaterContent(4), bulkDensity: gramsPerCubicCentimetre<BulkDensity>(0.1) }
    expect(waterContentFromGravimetric({ ...water, waterDensity: gramsPerCubicCentimetre(0.9982) })).toBeCloseTo(
      0.4 / 0.9982,
      14,
    )
  })
})

describe('phases refuse', () => {
  it('a number of kg/m³ taken for g/cm³', () => {
    expectDomainError(() => percentPores(120, 1550), { quantity: 'bulk density', max: 10 })
  })
  it('a medium that is heavier than its solids', () => {
    expectInputError(() => percentPores(2.7, 2.65), 'bulkDensity')
  })
  it('more water than pores, and more water than medium', () => {
    expectInputError(
      () => airFilledPorosity({ porosity: percent(60), waterContent: waterContent(0.61) }),
      'waterContent',
    )
    expectInputError(
      () =>
        waterContentFromGravimetric({
          gravimetric: gravimetricWaterContent(9),
          bulkDensity: gramsPerCubicCentimetre(0.12),
        }),
      'gravimetric',
    )
  })
  it('a mix that is not whole, or empty', () => {
    expectInputError(
      () => particleDensityOfMix([{ massFraction: fraction(0.9), particleDensity: gramsPerCubicCentimetre(1.5) }]),
      'parts',
    )
    expectInputError(() => particleDensityOfMix([]), 'parts')
  })
  it('NaN', () => {
    expectDomainError(() => particleDensityEN13041(Number.NaN as never), { quantity: 'organic matter' })
    expectDomainError(() => airFilledPorosity({ porosity: Number.NaN as never, waterContent: waterContent(0) }), {
      quantity: 'porosity',
    })
  })
})
