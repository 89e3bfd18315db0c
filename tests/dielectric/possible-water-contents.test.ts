import fc from 'fast-check'
import {
  permittivityDobson1985,
  permittivityWangSchmugge1980,
  validityMalickiDensity1996,
  validityOf,
  waterContentFourPhase,
  waterContentHerkelrath1991,
  waterContentJacobsenSchjonningSoil1993,
  waterContentMalickiDensity1996,
  waterContentMalickiPorosity1996,
  waterContentPaltineanuStarr1997,
  waterContentRoth1990,
  waterContentSchaap1997,
  waterContentWangSchmugge1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

// Brands say nothing about values; plain numbers keep the table readable.
type Relation = (reading: never) => number
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const apparent = between(1, 90)
const phases = { porosity: between(0, 1), solids: between(1, 20), water: between(60, 90), exponent: between(0.2, 1) }

const relations: [name: string, Relation, Record<string, fc.Arbitrary<number>>][] = [
  ['Malicki by density', waterContentMalickiDensity1996, { apparent, bulkDensity: between(0.05, 2.65) }],
  ['Malicki by porosity', waterContentMalickiPorosity1996, { apparent, porosity: between(0, 1) }],
  ['Herkelrath', waterContentHerkelrath1991, { apparent, slope: between(0.01, 1), intercept: between(-1, 1) }],
  [
    'Schaap',
    waterContentSchaap1997,
    { apparent, slope: between(0.05, 0.5), offset: between(0, 0.5), exponent: between(0.5, 2) },
  ],
  ['Roth 1990', waterContentRoth1990, { apparent, ...phases, air: fc.constant(1) }],
  [
    'four phases',
    waterContentFourPhase,
    { apparent, ...phases, air: fc.constant(1), boundWaterContent: between(0, 0.3), boundWater: between(3, 40) },
  ],
  [
    'Jacobsen and Schjønning in soil',
    waterContentJacobsenSchjonningSoil1993,
    { apparent: between(1, 49), bulkDensity: between(0.2, 2), clay: between(0, 0.5), organicMatter: between(0, 0.5) },
  ],
  [
    'Paltineanu and Starr',
    waterContentPaltineanuStarr1997,
    { scaled: between(0, 1.5), factor: between(0.1, 2), exponent: between(1, 3) },
  ],
  [
    'Wang and Schmugge',
    waterContentWangSchmugge1980,
    { apparent, sand: between(0, 0.5), clay: between(0, 0.5), bulkDensity: between(0.2, 2.6), water: between(60, 90) },
  ],
]

const givesWater = (relation: () => number): boolean => {
  try {
    return relation() > 0
  } catch {
    return false
  }
}

describe.each(relations)('the water content by %s', (_, relation, inputs) => {
  it('lies between nothing and all of the room, or is refused with the permittivities between which it would', () => {
    let refused = 0
    let answered = 0
    fc.assert(
      fc.property(fc.record(inputs), (reading) => {
        const { porosity = 1 } = reading as { porosity?: number }
        const full = relation === waterContentMalickiPorosity1996 ? 1 : porosity
        try {
          const content = relation(reading as never)
          answered++
          expect(content).toBeGreaterThanOrEqual(0)
          expect(content).toBeLessThanOrEqual(full)
        } catch (error) {
          const refusal = error as { code: string; argument: string; value: number; min: number; max: number }
          const { code, argument, value, min, max } = refusal
          if (code === undefined) throw error
          refused++
          if (code === 'outside-domain') {
            expect(value < min || value > max).toBe(true)
            // The permittivities that a refusal names are right: inside them there is water, beyond them no answer or none.
            const waterAt = (end: number) => givesWater(() => relation({ ...reading, [argument]: end } as never))
            // Where there is hardly any room, rounding decides.
            if (max - min > 0.01) {
              const step = 1e-4 * (max - min)
              expect([min - step, min + step, max - step, max + step].map(waterAt)).toEqual([false, true, true, false])
            }
          }
        }
      }),
      { numRuns: 400 },
    )
    expect(answered).toBeGreaterThan(0)
    expect(refused).toBeGreaterThan(0)
  })
})

describe('limits of the relations of Malicki and others (1996) and Dobson and others (1985)', () => {
  it('names the density of the densest of the 62 media: porosity 0.33 of particles of 2.65 g/cm³', () => {
    expect(validityOf(validityMalickiDensity1996, { bulkDensity: 1.77 })).toEqual([])
    expect(validityOf(validityMalickiDensity1996, { bulkDensity: 1.9 })).toHaveLength(1)
  })
  it('refuses a wet peat of more water than volume with the last permittivity that has an answer', () => {
    expectDomainError(() => waterContentMalickiDensity1996({ apparent: 80, bulkDensity: 0.1 } as never), {
      quantity: 'apparent permittivity',
      value: 80,
      min: 1,
    })
  })
  it('tells the step between the two fits of Dobson from 1.3 to 1.4 GHz, and nothing elsewhere', () => {
    const soil = { waterContent: 0.35, sand: 0.4, clay: 0.2, bulkDensity: 1.4, temperature: 20 }
    const at = (frequency: number) => permittivityDobson1985({ ...soil, frequency } as never)
    const [below, above] = [at(1.4e9 * (1 - 1e-9)), at(1.4e9)]
    const step = below.permittivity - above.permittivity
    expect(step).toBeGreaterThan(1.5)
    for (const near of [below, above, at(1.3e9)])
      expect(near.findings).toMatchObject([{ code: 'between-fits', level: 'caution', unit: '1' }])
    expect(above.findings[0]?.value).toBeCloseTo(step, 6)
    for (const far of [at(1e9), at(1.29e9), at(1.41e9), at(5e9)]) expect(far.findings).toEqual([])
  })
  it('undoes Wang and Schmugge up to the porosity', () => {
    const soil = { sand: 0.4, clay: 0.2, bulkDensity: 1.4, water: 79.5 }
    const porosity = 1 - 1.4 / 2.65
    for (const content of [0, 0.1, 0.3, porosity]) {
      const { permittivity } = permittivityWangSchmugge1980({ ...soil, waterContent: content } as never)
      expect(waterContentWangSchmugge1980({ ...soil, apparent: permittivity } as never)).toBeCloseTo(content, 12)
    }
  })
})
