import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  drainedMediumRegression1991,
  explainMediumFinding,
  fitRetention,
  formVanGenuchten1980,
  grams,
  irrigationLimits,
  litres,
  type MediumFinding,
  perCentimetre,
  pluggedPotTest,
  porometerTest,
  vanGenuchten1980,
  waterContent,
  weighedPotTest,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

const peat = vanGenuchten1980({
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.1),
  n: 1.6,
})

describe('bench tests', () => {
  it('count the water that the medium had before it was filled up', () => {
    // 2 L of medium with 0.4 m³/m³ hold 0.8 L; 0.5 L more fill it, 1.2 L drain.
    const found = pluggedPotTest({
      substrateVolume: litres(2),
      startingWaterContent: waterContent(0.4),
      volumeToSaturate: litres(0.5),
      drainedVolume: litres(1.2),
    })
    expect(found).toMatchObject({
      airSpace: expect.closeTo(0.6, 12),
      containerCapacity: expect.closeTo(0.05, 12),
      totalPorosity: expect.closeTo(0.65, 12),
    })
    // Without a dry mass nothing is said of the solids.
    expect(found.findings).toEqual([])
  })
  const core = (dryMass: number, drainedMass: number) =>
    porometerTest({
      coreVolume: litres(1),
      drainedVolume: litres(0.1),
      drainedMass: grams(drainedMass),
      dryMass: grams(dryMass),
    })
  it('doubt solids lighter than 0.35 or heavier than 2.7 g/cm³, and say which way', () => {
    // A tenth of air and half of water leave 0.4 of solids.
    for (const [solids, words] of [
      [0.345, /air was left in/],
      [2.71, /too small$/],
    ] as const) {
      const [finding, ...more] = core(400 * solids, 400 * solids + 500).findings
      expect(finding).toMatchObject({ code: 'odd-solids', level: 'caution', value: expect.closeTo(solids, 9) })
      expect(more).toEqual([])
      expect(explainMediumFinding(finding as MediumFinding).message).toMatch(words)
    }
    for (const solids of [0.355, 2.69]) expect(core(400 * solids, 400 * solids + 500).findings).toEqual([])
  })
  it('name the reading that is above the one before it, and both in words', () => {
    expectInputError(() => core(500, 499), 'dryMass')
    expect(() => core(500, 499)).toThrow('500 is above the drainedMass of 499')
    const pot =
      (...masses: readonly [number, number, number, number]) =>
      () =>
        weighedPotTest({
          saturatedMass: grams(masses[0]),
          drainedMass: grams(masses[1]),
          dryMass: grams(masses[2]),
          potMass: grams(masses[3]),
          substrateVolume: litres(1),
        })
    expect(pot(900, 901, 300, 100)).toThrow('901 is above the saturatedMass of 900')
    expect(pot(900, 700, 701, 100)).toThrow('701 is above the drainedMass of 700')
    expect(pot(900, 700, 300, 301)).toThrow('301 is above the dryMass of 300')
    expect(pot(900, 900, 300, 100)().airSpace).toBe(0)
  })
  it('take a volume that is known to a quarter, and none that is known less well', () => {
    const run = (substrateVolume: number) => () =>
      porometerTest({
        coreVolume: litres(1),
        drainedVolume: litres(0.1),
        drainedMass: grams(600),
        dryMass: grams(150),
        uncertainty: { mass: grams(1), substrateVolume: litres(substrateVolume), waterVolume: litres(0.01) },
      })
    expect(run(0.25)().budgets).toBeDefined()
    expectInputError(run(0.2501), 'uncertainty')
  })
  it('have no regression for a medium without dry mass', () => {
    const medium = { drainedVolume: litres(1), drainedMass: grams(500), dryMass: grams(0) }
    expectInputError(() => drainedMediumRegression1991(medium), 'drainedMass')
  })
})

describe('limits of irrigation', () => {
  it('tell the suction at the surface where it passes 100 cm at the refill point', () => {
    const container = boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(20) })
    // In the middle, 10 cm up, it is what was allowed, at the surface 10 cm more.
    const found = (maxSuction: number) =>
      irrigationLimits({ container, medium: peat, maxSuction: centimetresOfSuction(maxSuction) }).findings.filter(
        ({ code }) => code === 'beyond-buffer',
      )
    expect(found(89.9)).toEqual([])
    expect(found(95)).toEqual([
      {
        code: 'beyond-buffer',
        level: 'caution',
        about: 'refill',
        value: expect.closeTo(105, 6),
        limit: 100,
        unit: 'cm',
      },
    ])
  })
})

describe('a fit of retention', () => {
  const points = (from: number, to: number) =>
    Array.from({ length: 12 }, (_, i) => {
      const suction = centimetresOfSuction(from * (to / from) ** (i / 11))
      return { suction, waterContent: peat.waterContent(suction) }
    })
  const found = (from: number, to: number) =>
    fitRetention({ form: formVanGenuchten1980, points: points(from, to) }).findings
  it('says how much of the curve at either end no point has seen', () => {
    // Shares of the span between residual and saturation that lie beyond the wettest and the driest point.
    const beyond = (suction: number) => (peat.waterContent(centimetresOfSuction(suction)) - 0.1) / 0.8
    expect(found(1, 1000)).toEqual([])
    expect(found(10, 1000)).toEqual([
      {
        code: 'saturation-extrapolated',
        level: 'caution',
        about: 'saturated',
        value: expect.closeTo(1 - beyond(10), 4),
        unit: '1',
      },
    ])
    expect(found(1, 60)).toEqual([
      {
        code: 'residual-extrapolated',
        level: 'caution',
        about: 'residual',
        value: expect.closeTo(beyond(60), 3),
        max: 60,
        unit: '1',
      },
    ])
  })
  it('wants three conductivities or none', () => {
    const conducting = (count: number) =>
      points(1, 1000).map((point, i) =>
        i < count ? { ...point, conductivity: 5 * (peat.relativeConductivity?.(point.suction) as number) } : point,
      )
    const fitted = (count: number) => fitRetention({ form: formVanGenuchten1980, points: conducting(count) as never })
    expectInputError(() => fitted(2), 'points')
    expect(fitted(12)).toMatchObject({
      saturatedConductivity: expect.closeTo(5, 3),
      rmseLogConductivity: expect.closeTo(0, 5),
    })
    expect(fitted(0).saturatedConductivity).toBeUndefined()
  })
})
