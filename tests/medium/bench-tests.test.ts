import fc from 'fast-check'
import {
  type BenchShares,
  drainedMediumRegression1991,
  grams,
  inGravimetricWaterContent,
  litres,
  millilitres,
  pluggedPotTest,
  porometerTest,
  waterContent,
  weighedPotTest,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const inPercents = ({ airSpace, containerCapacity, totalPorosity }: BenchShares) => ({
  air_space: airSpace * 100,
  container_capacity: containerCapacity * 100,
  total_porosity: totalPorosity * 100,
})

checkPublished(
  'hydraulics',
  'media.ncsu_procedure',
  ({ core_volume, wet_mass_after_drainage, oven_dry_mass, drained_volume }) => {
    const found = porometerTest({
      coreVolume: millilitres(core_volume),
      drainedVolume: millilitres(drained_volume),
      drainedMass: grams(wet_mass_after_drainage),
      dryMass: grams(oven_dry_mass),
    })
    // The readings of this row leave no room for solids, and the result must say so.
    expect(found.findings).toMatchObject([{ code: 'more-than-full', level: 'danger' }])
    return { ...inPercents(found), bulk_density: found.bulkDensity }
  },
)
checkPublished('hydraulics', 'media.pot_test', ({ pot_volume, volume_to_saturate, drained_volume }) =>
  inPercents(
    pluggedPotTest({
      substrateVolume: millilitres(pot_volume),
      volumeToSaturate: millilitres(volume_to_saturate),
      drainedVolume: millilitres(drained_volume),
    }),
  ),
)
checkPublished('hydraulics', 'media.gravimetric_test', (given) => {
  const found = weighedPotTest({
    saturatedMass: grams(given.saturated_mass),
    drainedMass: grams(given.drained_mass),
    dryMass: grams(given.dry_mass),
    potMass: grams(given.pot_mass),
    substrateVolume: millilitres(given.medium_volume),
  })
  expect(found.findings).toEqual([])
  return {
    ...inPercents(found),
    bulk_density: found.bulkDensity,
    gravimetric_capacity: inGravimetricWaterContent(found.gravimetricCapacity),
  }
})
checkPublished('hydraulics', 'media.regression_238', ({ volume_weight, drained_density }) => {
  const found = drainedMediumRegression1991({
    drainedVolume: litres(1),
    drainedMass: grams(drained_density * 1000),
    dryMass: grams(volume_weight),
  })
  return {
    pore_space: found.totalPorosity * 100,
    air_volume: found.airSpace * 100,
    water_volume: found.containerCapacity * 100,
  }
})

const pot = {
  saturatedMass: grams(2450),
  drainedMass: grams(2210),
  dryMass: grams(480),
  potMass: grams(95),
  substrateVolume: litres(2.2),
}
const uncertainty = { mass: grams(2), substrateVolume: litres(0.04), waterVolume: millilitres(5) }

describe('error budgets', () => {
  it('equal the partial derivatives of the definitions, squared and added (GUM, JCGM 100:2008, Eq. 10)', () => {
    const { budgets, airSpace, containerCapacity } = weighedPotTest({ ...pot, uncertainty })
    const perGram = 2 / 2200
    const volume = 0.04 / 2.2
    expect(budgets?.airSpace.standardUncertainty).toBeCloseTo(Math.hypot(perGram, perGram, airSpace * volume), 5)
    expect(budgets?.containerCapacity.standardUncertainty).toBeCloseTo(
      Math.hypot(perGram, perGram, containerCapacity * volume),
      5,
    )
    // The drained mass cancels in the sum.
    expect(budgets?.totalPorosity.lines.map((line) => line.input).sort()).toEqual(['dry', 'saturated', 'volume'])
    expect(budgets?.containerCapacity.lines[0]?.input).toBe('volume')
  })
  it('agree with repeated readings (Monte Carlo with a fixed sequence)', () => {
    let seed = 4711
    const uniform = () => {
      seed = (seed * 16807) % 2147483647
      return seed / 2147483647
    }
    const normal = () => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b) - 6
    const readings = { substrateVolume: 1.5, volumeToSaturate: 1.08, drainedVolume: 0.24 }
    const { budgets } = pluggedPotTest({
      substrateVolume: litres(1.5),
      volumeToSaturate: litres(1.08),
      drainedVolume: litres(0.24),
      uncertainty,
    })
    const drawn = Array.from({ length: 4000 }, () =>
      pluggedPotTest({
        substrateVolume: litres(readings.substrateVolume + 0.04 * normal()),
        volumeToSaturate: litres(readings.volumeToSaturate + 0.005 * normal()),
        drainedVolume: litres(readings.drainedVolume + 0.005 * normal()),
      }),
    )
    for (const name of ['airSpace', 'containerCapacity', 'totalPorosity'] as const) {
      const values = drawn.map((shares) => Number(shares[name]))
      const mean = values.reduce((a, b) => a + b) / values.length
      const scatter = Math.sqrt(values.reduce((a, b) => a + (b - mean) ** 2, 0) / (values.length - 1))
      expect((budgets?.[name].standardUncertainty as number) / scatter, name).toBeGreaterThan(0.95)
      expect((budgets?.[name].standardUncertainty as number) / scatter, name).toBeLessThan(1.05)
    }
  })
  it('add up to the whole variance, the largest part first', () => {
    const { budgets } = porometerTest({
      coreVolume: millilitres(347.5),
      drainedVolume: millilitres(40),
      drainedMass: grams(310),
      dryMass: grams(62),
      uncertainty: { ...uncertainty, substrateVolume: millilitres(4) },
    })
    const lines = budgets?.totalPorosity.lines ?? []
    expect(lines.reduce((sum, line) => sum + line.shareOfVariance, 0)).toBeCloseTo(1, 12)
    expect([...lines].sort((a, b) => b.contribution - a.contribution)).toEqual(lines)
  })
  it('are left out when the uncertainty of the readings is not known', () => {
    expect('budgets' in weighedPotTest(pot)).toBe(false)
  })
})

describe('bench tests', () => {
  it('air, water and solids fill the pot: weighing and pouring agree on the same pot', () => {
    const quantity = fc.double({ min: 0.01, max: 1, noNaN: true })
    fc.assert(
      fc.property(quantity, quantity, quantity, (dry, air, water) => {
        const weighed = weighedPotTest({
          saturatedMass: grams(100 + 300 * dry + 1000 * (air + water)),
          drainedMass: grams(100 + 300 * dry + 1000 * water),
          dryMass: grams(100 + 300 * dry),
          potMass: grams(100),
          substrateVolume: litres(2.5),
        })
        const poured = pluggedPotTest({
          substrateVolume: litres(2.5),
          volumeToSaturate: litres(air + water),
          drainedVolume: litres(air),
        })
        expect(weighed.airSpace).toBeCloseTo(poured.airSpace, 10)
        expect(weighed.containerCapacity).toBeCloseTo(poured.containerCapacity, 10)
        expect(weighed.totalPorosity).toBeCloseTo(weighed.airSpace + weighed.containerCapacity, 12)
      }),
    )
  })
  it('a moist start is made good by its water content', () => {
    const dry = pluggedPotTest({
      substrateVolume: litres(2),
      volumeToSaturate: litres(1.6),
      drainedVolume: litres(0.3),
    })
    const moist = pluggedPotTest({
      substrateVolume: litres(2),
      volumeToSaturate: litres(1.2),
      drainedVolume: litres(0.3),
      startingWaterContent: waterContent(0.2),
    })
    expect(moist.totalPorosity).toBeCloseTo(dry.totalPorosity, 12)
    expect(moist.containerCapacity).toBeCloseTo(dry.containerCapacity, 12)
  })
  it('warn when the solids would be lighter or heavier than any', () => {
    expect(
      weighedPotTest({ ...pot, saturatedMass: grams(1400), drainedMass: grams(1300), potMass: grams(300) }).findings,
    ).toMatchObject([{ code: 'odd-solids', level: 'caution' }])
    expect(weighedPotTest({ ...pot, substrateVolume: litres(2) }).findings).toMatchObject([{ code: 'odd-solids' }])
  })
  it('refuse readings that contradict each other', () => {
    expectInputError(() => weighedPotTest({ ...pot, drainedMass: grams(2500) }), 'drainedMass')
    expectInputError(() => weighedPotTest({ ...pot, potMass: grams(500) }), 'potMass')
    expectInputError(() => weighedPotTest({ ...pot, potMass: grams(480) }), 'dryMass')
    expectInputError(
      () => pluggedPotTest({ substrateVolume: litres(1), volumeToSaturate: litres(0.5), drainedVolume: litres(0.6) }),
      'drainedVolume',
    )
    expectInputError(
      () =>
        porometerTest({
          coreVolume: millilitres(347.5),
          drainedVolume: millilitres(40),
          drainedMass: grams(310),
          dryMass: grams(0),
        }),
      'dryMass',
    )
    expectInputError(
      () => drainedMediumRegression1991({ drainedVolume: litres(1), drainedMass: grams(1300), dryMass: grams(200) }),
      'drainedMass',
    )
  })
  it('refuse a volume that is hardly known', () => {
    expectInputError(
      () => weighedPotTest({ ...pot, uncertainty: { ...uncertainty, substrateVolume: litres(1) } }),
      'uncertainty',
    )
  })
  it('refuse impossible numbers', () => {
    expectDomainError(() => weighedPotTest({ ...pot, substrateVolume: litres(0) }), {
      quantity: 'substrate volume',
      argument: 'substrateVolume',
    })
    expectDomainError(() => weighedPotTest({ ...pot, dryMass: Number.NaN as never }), { quantity: 'dry mass' })
    expectDomainError(() => weighedPotTest({ ...pot, uncertainty: { ...uncertainty, mass: Number.NaN as never } }), {
      quantity: 'uncertainty of a weighing',
    })
  })
})
