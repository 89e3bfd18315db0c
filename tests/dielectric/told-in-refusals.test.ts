import {
  permittivityDobson1985,
  permittivitySchaap1997,
  permittivityWangSchmugge1980,
  waterContentJacobsenSchjonningSoil1993,
  waterContentMalickiPorosity1996,
  waterContentRoth1990,
  waterContentSchaap1997,
  waterContentWangSchmugge1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'

// Brands say nothing about values; plain numbers keep the cases readable.
type Relation = (reading: never) => number

/** What the refusal of a reading tells: its ends, and the first words of what to do. */
function toldBy(relation: Relation, reading: object): { min: number; max: number; hint: string } {
  try {
    relation(reading as never)
  } catch (error) {
    return error as { min: number; max: number; hint: string }
  }
  throw new Error('it was not refused')
}

const DRY = /less than no water/
const WET = /more water than there is room for/

/** The equations solved by hand for the permittivity at no water and at all that has room. */
const cases: [name: string, Relation, reading: object, ends: readonly [number, number], hint: RegExp][] = [
  [
    'Schaap, (θ^(1/c) + b)² / a²: 0.25 and 1.25 over 0.2, squared',
    waterContentSchaap1997,
    { apparent: 60, slope: 0.2, offset: 0.25, exponent: 0.5 },
    [1.5625, 39.0625],
    WET,
  ],
  [
    'Malicki by porosity 0.9: roots 3.47 - 6.22 · 0.9 + 3.82 · 0.81 when dry, below that of air, and 7.01 + 6.89 · 0.9 - 7.83 · 0.81 more',
    waterContentMalickiPorosity1996,
    { apparent: 80, porosity: 0.9 },
    [1, (0.9662 + 6.8687) ** 2],
    WET,
  ],
  [
    'Malicki by porosity 0.5: roots 3.47 - 3.11 + 0.955 when dry',
    waterContentMalickiPorosity1996,
    { apparent: 1.5, porosity: 0.5 },
    [1.315 ** 2, 90],
    DRY,
  ],
  [
    'Roth, half pores: roots 1.5 when dry and 0.5 · (√81 - 1) more',
    waterContentRoth1990,
    { apparent: 64, porosity: 0.5, solids: 4, water: 81, air: 1, exponent: 0.5 },
    [2.25, 30.25],
    WET,
  ],
]

describe('a reading that leaves no possible water content', () => {
  it.each(cases)('is refused with the permittivities that do: %s', (_, relation, reading, [min, max], hint) => {
    const told = toldBy(relation, reading)
    expect(told.min).toBeCloseTo(min, 9)
    expect(told.max).toBeCloseTo(max, 9)
    expect(told.hint).toMatch(hint)
  })

  // Jacobsen and Schjønning (1993), Eq. 3, as the documentation prints it.
  const inSoil = (e: number, density: number, clay: number, organic: number) =>
    -0.0341 + 0.0345 * e - 1.14e-3 * e ** 2 + 1.71e-5 * e ** 3 - 0.037 * density + 7.36e-4 * clay + 4.77e-3 * organic
  it('is refused by the soil form of Jacobsen and Schjønning from both sides', () => {
    const heavy = toldBy(waterContentJacobsenSchjonningSoil1993, {
      apparent: 1,
      bulkDensity: 2,
      clay: 0,
      organicMatter: 0,
    })
    expect(inSoil(heavy.min, 2, 0, 0)).toBeCloseTo(0, 9)
    expect(heavy.min).toBeGreaterThan(1)
    expect(heavy.max).toBe(49)
    expect(heavy.hint).toMatch(DRY)
    const peaty = toldBy(waterContentJacobsenSchjonningSoil1993, {
      apparent: 49,
      bulkDensity: 0.2,
      clay: 0.5,
      organicMatter: 0.5,
    })
    expect(peaty.min).toBe(1)
    expect(inSoil(peaty.max, 0.2, 50, 50)).toBeCloseTo(1, 9)
    expect(peaty.max).toBeLessThan(49)
    expect(peaty.hint).toMatch(WET)
  })

  it('is refused by Wang and Schmugge with what the soil shows dry below it, and full of water', () => {
    const soil = { sand: 0.3, clay: 0.3, bulkDensity: 1.325, water: 80 }
    const full = permittivityWangSchmugge1980({ ...soil, waterContent: 0.5 } as never)
    const told = toldBy(waterContentWangSchmugge1980, { ...soil, apparent: 80 })
    // Half air of 1 and half rock of 5.5.
    expect(told.min).toBeCloseTo(3.25, 9)
    expect(told.max).toBeCloseTo(full.permittivity, 9)
  })
})

describe('a water content that no permittivity shows', () => {
  it('is refused with those that one does, by Schaap: (0.05 √ε - 0.01) at 1 and at 90', () => {
    const told = toldBy(permittivitySchaap1997, { waterContent: 0.6, slope: 0.05, offset: 0.01, exponent: 1 })
    expect(told.min).toBeCloseTo(0.04, 9)
    expect(told.max).toBeCloseTo(0.05 * Math.sqrt(90) - 0.01, 9)
  })
})

describe('shares of sand and clay', () => {
  const dobson = { waterContent: 0.2, bulkDensity: 1.4, frequency: 5e9, temperature: 20 }
  const wang = { waterContent: 0.2, bulkDensity: 1.4, water: 80 }
  it.each([
    ['Dobson', permittivityDobson1985, dobson],
    ['Wang and Schmugge', permittivityWangSchmugge1980, wang],
  ] as const)('may come to the whole, as thirds do, and not to more: %s', (_, relation, soil) => {
    const at = (sand: number, clay: number) => (relation as (soil: never) => unknown)({ ...soil, sand, clay } as never)
    expect(() => at(0.4, 0.6)).not.toThrow()
    expect(() => at(0.7, 0.3)).not.toThrow()
    expect(() => at(0.4, 0.6 + 1e-6)).toThrow('together they exceed the whole')
  })
})
