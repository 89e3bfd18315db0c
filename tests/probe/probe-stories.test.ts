import {
  calibrateTwoPoint,
  centimetres,
  checkPlacement,
  explainProbeFinding,
  fitCalibration,
  grams,
  type Length,
  litres,
  type PlacementContainer,
  rawReading,
  restoreCalibration,
  waterContent,
  waterOfSample,
  zoneMean,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

const sample = (reading: number, content: number) => ({
  reading: rawReading(reading),
  waterContent: waterContent(content),
})

describe('readings of two samples', () => {
  it('are refused one count apart, in whichever order', () => {
    for (const [dry, wet] of [
      [500, 501],
      [501, 500],
      [0.8, 0.801],
    ] as const)
      expectInputError(
        () => calibrateTwoPoint({ dry: sample(dry, 0.02), saturated: sample(wet, 0.78) }),
        'saturated.reading',
      )
  })
  it('that fall with water are told, for the samples may be swapped', () => {
    const swapped = calibrateTwoPoint({ dry: sample(1100, 0.02), saturated: sample(300, 0.78) })
    expect(swapped.findings).toMatchObject([{ code: 'reading-falls-with-water', level: 'caution' }])
    expect(calibrateTwoPoint({ dry: sample(300, 0.02), saturated: sample(1100, 0.78) }).findings).toEqual([])
  })
})

describe('a sample that was not read', () => {
  it('is refused by the number that a logger writes for it, whichever sample and form', () => {
    for (const none of [-999, -9999, -99_999, 65_535]) {
      expectInputError(() => calibrateTwoPoint({ dry: sample(438, 0.04), saturated: sample(none, 0.865) }), 'saturated')
      expectInputError(() => calibrateTwoPoint({ dry: sample(none, 0.04), saturated: sample(1185, 0.865) }), 'dry')
      const samples = [300, 500, none, 900, 1100].map((reading, i) => sample(reading, 0.1 + 0.15 * i))
      expectInputError(() => fitCalibration({ samples, form: 'line' }), /^samples\[2\]/)
    }
  })
})

describe('rods longer than the cube', () => {
  const cube: PlacementContainer = {
    shape: 'box',
    length: centimetres(10),
    width: centimetres(10),
    height: centimetres(6.5),
  }
  const upright = (from: number, to: number) =>
    checkPlacement({
      container: cube,
      probes: [
        {
          name: 'A',
          from: { x: 5 as Length, y: 5 as Length, depth: from as Length },
          to: { x: 5 as Length, y: 5 as Length, depth: to as Length },
        },
      ],
    }).conflicts
  it('are not to be raised into the air', () => {
    for (const to of [5.8, 7.5]) {
      const [found] = upright(0, to)
      expect(found).toMatchObject({ code: 'rods-too-long', to: 'bottom' })
      const move = found && explainProbeFinding(found).message
      expect(move).toMatch(/in air: insert them level/)
      expect(move).not.toMatch(/^raise/)
    }
  })
  it('are not to be raised and put deeper at once in a medium that is too low, nor moved to the middle where they stand', () => {
    const told = (container: PlacementContainer, x: number, y: number, depth: number) => {
      const at = (to: number) => ({ x: to as Length, y: y as Length, depth: depth as Length })
      const probes = [{ name: 'A', from: at(x), to: at(x + 5), radius: centimetres(0.3) }]
      return checkPlacement({ container, probes })
        .conflicts.map(explainProbeFinding)
        .map(({ message }) => message)
    }
    const slab = (width: number, height: number) =>
      ({ shape: 'box', length: centimetres(100), width: centimetres(width), height: centimetres(height) }) as const
    expect(told(slab(20, 3), 50, 10, 1.5)).toEqual([
      expect.stringMatching(/^the medium is 1.3 cm too shallow .* half way down/),
    ])
    expect(told(slab(4, 10), 50, 2, 5)).toEqual([
      expect.stringMatching(/^even in the middle A would be 0.3 cm too close/),
    ])
    // A row of rods across the slab is turned; one that is only too near to an end is moved.
    expect(told(slab(20, 10), 94, 10, 5)).toEqual(['move A 1.3 cm towards the middle'])
    expect(told(slab(20, 4.4), 50, 10, 2.2)).toEqual(['raise A by 0.1 cm'])
  })
  it('that can be raised still are', () => {
    expect(upright(2, 5)).toMatchObject([{ code: 'near-bottom' }])
    expect(upright(2, 5).map((found) => explainProbeFinding(found).message)).toEqual(['raise A by 0.5 cm'])
    expect(upright(0, 4)).toEqual([])
  })
})

describe('a placement that was written down wrong', () => {
  const container = { shape: 'cylinder', diameter: centimetres(20), height: centimetres(20) } as const
  const place = { x: centimetres(10), y: centimetres(10), depth: centimetres(10) }
  const check = (change: object) => () =>
    checkPlacement({ container, probes: [{ name: 'A', from: place }], ...change } as never)
  it('is refused by name: a count of objects instead of a list, an entry that was lost, a shape and a kind nobody knows', () => {
    expectInputError(check({ objects: 0 }), 'objects')
    expectInputError(check({ objects: [null] }), /^objects\[0\]$/)
    expectInputError(check({ probes: [null] }), /^probes\[0\]$/)
    expectInputError(check({ probes: [{ name: 'A' }] }), /^from$/)
    expectInputError(check({ container: { ...container, shape: 'round' } }), 'container.shape')
    expectInputError(check({ objects: [{ name: 'x', kind: 'driper', from: place }] }), /^objects\[0\]\.kind$/)
    expectInputError(check({ medium: 'pre formed' }), 'medium')
  })
})

describe('a zone of which probes are dead', () => {
  const zone = (...levels: readonly number[]) =>
    zoneMean({
      probes: levels.map((level, i) => ({ name: `P${i + 1}`, weight: 10, waterContent: waterContent(level) })),
    })
  it('has the mean of those that live: two zeros had made the sound probe the odd one, and 0.17 of 0.50', () => {
    const found = zone(0.5, 0, 0.0001)
    expect(found).toMatchObject({ mean: 0.5, median: 0.5, apart: [] })
    expect(found.coverage).toBeCloseTo(1 / 3, 12)
    expect(found.findings).toMatchObject([
      { code: 'reads-nothing', about: 'P2', value: 0, limit: 0.01 },
      { code: 'reads-nothing', about: 'P3', value: 0.0001 },
      { code: 'probes-missing', level: 'danger' },
    ])
    expect(found.findings.map((one) => explainProbeFinding(one).message)[0]).toMatch(/^P2 reads 0.000 m³\/m³, .*cable/)
  })
  it('is refused where all of them are: its mean had been 0 without a word', () => {
    expectInputError(() => zone(0, 0, 0), 'probes')
    expect(() => zone(0, 0, 0)).toThrow('all that report read less than 0.01 m³/m³')
    expect(zone(0.01, 0.01).findings).toEqual([])
  })
  it('is in dispute where one of two is lifted, and two against two', () => {
    for (const levels of [
      [0.5, 0.1],
      [0.5, 0.51, 0.1, 0.12],
    ]) {
      const { findings } = zone(...levels)
      expect(findings).toMatchObject([{ code: 'probes-disagree', level: 'danger', limit: 0.1 }])
      expect(findings.map((one) => explainProbeFinding(one).message)[0]).toMatch(/do not water by their mean/)
    }
    expect(zone(0.5, 0.44).findings).toEqual([])
    expect(zone(0.5, 0.51, 0.1).findings).toMatchObject([{ code: 'probe-apart', about: 'P3' }])
  })
  it('has each of its probes once', () => {
    const probe = (name: string) => ({ name, weight: 1, waterContent: waterContent(0.5) })
    expectInputError(() => zoneMean({ probes: [probe('A'), probe('B'), probe('A')] }), /^probes\[2\]\.name$/)
  })
})

describe('a calibration whose parts are of two probes', () => {
  const one = calibrateTwoPoint({ dry: sample(300, 0.02), saturated: sample(1100, 0.78) })
  const other = calibrateTwoPoint({ dry: sample(2, 0.02), saturated: sample(50, 0.7) })
  it('is refused: coefficients of another one had said 66 m³/m³', () => {
    const mixed = { ...one, coefficients: other.coefficients }
    expect(() => restoreCalibration(mixed)).toThrow(/samples: lie [\d.]+ m³\/m³ and more beside the curve/)
    expectInputError(() => restoreCalibration({ ...one, coefficients: [...one.coefficients].reverse() }), 'samples')
    expectInputError(() => restoreCalibration({ ...one, samples: other.samples }), 'samples')
  })
  it('is not one of which the samples scatter, or the coefficients were rounded', () => {
    const scattered = [sample(2, 0.04), sample(8, 0.3), sample(17, 0.26), sample(27, 0.6), sample(548, 0.8)]
    for (const form of ['line', 'square-root'] as const) {
      const fit = fitCalibration({ samples: scattered, form })
      expect(restoreCalibration(JSON.stringify(fit))).toEqual(fit)
    }
    const rounded = { ...one, coefficients: [-0.265, 0.00095] }
    expect(restoreCalibration(rounded)).toEqual(rounded)
  })
})

describe('two samples with hardly any water between them', () => {
  it('are told: per cent of per cent, or two that were both wet', () => {
    for (const [dry, wet] of [
      [0.0002, 0.0078],
      [0.5, 0.5001],
    ] as const) {
      const { findings } = calibrateTwoPoint({ dry: sample(300, dry), saturated: sample(1100, wet) })
      expect(findings).toMatchObject([{ code: 'little-water-between', level: 'caution', limit: 0.1 }])
      expect(findings.map((one) => explainProbeFinding(one).message)[0]).toMatch(/saturate the other/)
    }
    expect(calibrateTwoPoint({ dry: sample(300, 0.02), saturated: sample(1100, 0.32) }).findings).toEqual([])
  })
})

describe('a sample that is lighter than any foam', () => {
  const weighed = (volume: number, factor = 1) =>
    waterOfSample({
      wetMass: grams(251.3 * factor),
      dryMass: grams(86.4 * factor),
      tareMass: grams(52.1 * factor),
      volume: litres(volume),
    })
  it('is refused: millilitres taken for litres, or kilograms for grams, had held 0.0006 m³/m³ of water', () => {
    expectInputError(() => weighed(286), 'volume')
    expectInputError(() => weighed(0.286, 0.001), 'volume')
    expect(() => weighed(286)).toThrow('lighter than any foam')
    expect(weighed(0.286).bulkDensity).toBeCloseTo(0.12, 3)
  })
})
