import fc from 'fast-check'
import {
  type BulkDensity,
  celsius,
  centimetres,
  constantMass,
  fraction,
  grams,
  gramsPerCubicCentimetre,
  gravimetricWaterContent,
  inGramsPerCubicCentimetre,
  inKilogramsPerCubicMetre,
  kilograms,
  litres,
  particleDensityEN13041,
  porosityFromDensities,
  sampledVolume,
  squareMetres,
  waterContentFromGravimetric,
  waterDensityKell1975,
  waterOfSample,
  weighedContainerWater,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('dielectric', 'grav.water_content', ({ m_wet, m_dry, m_tare }) => {
  const { gravimetric, dryMatter } = waterOfSample({
    wetMass: grams(m_wet),
    dryMass: grams(m_dry),
    tareMass: grams(m_tare),
  })
  return { w: gravimetric, dry_matter: dryMatter }
})
checkPublished('dielectric', 'grav.theta', ({ w, rho_b, rho_w }) => ({
  theta: waterContentFromGravimetric({
    gravimetric: gravimetricWaterContent(w),
    bulkDensity: gramsPerCubicCentimetre(rho_b),
    waterDensity: gramsPerCubicCentimetre(rho_w),
  }),
}))
checkPublished('dielectric', 'grav.container', ({ m_pot, m_tare, m_dry_medium, volume, temperature }) => {
  const { waterVolume, waterContent } = weighedContainerWater({
    totalMass: kilograms(m_pot),
    tareMass: kilograms(m_tare),
    dryMass: kilograms(m_dry_medium),
    substrateVolume: litres(volume),
    waterDensity: waterDensityKell1975(celsius(temperature)),
  })
  return { water_volume: waterVolume, theta: waterContent }
})
checkPublished('dielectric', 'grav.porosity', ({ rho_b, rho_s }) => ({
  porosity: porosityFromDensities({
    bulkDensity: gramsPerCubicCentimetre(rho_b),
    particleDensity: gramsPerCubicCentimetre(rho_s),
  }),
}))
checkPublished('dielectric', 'grav.particle_density', ({ organic }) => ({
  rho_s: inKilogramsPerCubicMetre(particleDensityEN13041(fraction(organic))),
}))
checkPublished('dielectric', 'grav.constant_mass', ({ m_previous, m_last, limit }) => {
  const { change, constant } = constantMass({ previousMass: grams(m_previous), lastMass: grams(m_last), limit })
  return { change, constant: Number(constant) }
})
checkPublished('dielectric', 'tdr.sampled_volume', ({ area, rod_length }) => ({
  volume: sampledVolume({ sampledArea: squareMetres(area), rodLength: centimetres(100 * rod_length) }) / 1000,
}))

const sample = { wetMass: grams(251.3), dryMass: grams(86.4), tareMass: grams(52.1) }

describe('a weighed sample', () => {
  it('has the same water by volume as by mass and bulk density', () => {
    // No medium is lighter than the lightest foam.
    const amount = fc.double({ min: 13, max: 500, noNaN: true })
    fc.assert(
      fc.property(
        amount,
        amount,
        fc.double({ min: 100, max: 500, noNaN: true }),
        fc.double({ min: 1.01, max: 5, noNaN: true }),
        (tare, dry, water, room) => {
          const found = waterOfSample({
            wetMass: grams(tare + dry + water),
            dryMass: grams(tare + dry),
            tareMass: grams(tare),
            volume: litres((room * water) / 1000),
          })
          const byMass = waterContentFromGravimetric({
            gravimetric: found.gravimetric,
            bulkDensity: found.bulkDensity as BulkDensity,
          })
          expect(Math.abs((found.waterContent ?? 0) - byMass)).toBeLessThan(1e-10)
          expect(found.gravimetric * found.dryMatter + found.dryMatter).toBeCloseTo(1, 10)
        },
      ),
    )
  })
  it('warns while its mass still falls', () => {
    expect(waterOfSample({ ...sample, previousDryMass: grams(86.9) }).findings).toMatchObject([
      { code: 'not-dry-yet', level: 'caution' },
    ])
    expect(waterOfSample({ ...sample, previousDryMass: grams(86.45) }).findings).toEqual([])
  })
  it('has no water content without a volume', () => {
    expect(waterOfSample(sample)).not.toHaveProperty('waterContent')
  })
  it('refuses masses that contradict each other', () => {
    expectInputError(() => waterOfSample({ ...sample, dryMass: grams(50) }), 'dryMass')
    expectInputError(() => waterOfSample({ ...sample, wetMass: grams(80) }), 'wetMass')
    expectInputError(() => waterOfSample({ ...sample, volume: litres(0.1) }), 'volume')
    expectDomainError(() => waterOfSample({ ...sample, wetMass: Number.NaN as never }), {
      quantity: 'mass of the wet sample',
    })
  })
})

describe('a weighed container', () => {
  const container = {
    totalMass: kilograms(6.85),
    tareMass: grams(350),
    dryMass: kilograms(1.1),
    substrateVolume: litres(8),
  }
  it('loses what the plant weighs', () => {
    const bare = weighedContainerWater(container).waterVolume
    expect(bare - weighedContainerWater({ ...container, plantMass: grams(400) }).waterVolume).toBeCloseTo(0.4, 12)
  })
  it('refuses less than no water and more than its volume', () => {
    expectInputError(() => weighedContainerWater({ ...container, dryMass: kilograms(7) }), 'totalMass')
    expectInputError(() => weighedContainerWater({ ...container, substrateVolume: litres(5) }), 'totalMass')
    expect(inGramsPerCubicCentimetre(waterDensityKell1975(celsius(20)))).toBeCloseTo(0.9982, 4)
  })
})
