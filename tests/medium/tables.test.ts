import fc from 'fast-check'
import {
  attempt,
  brooksCorey1964,
  campbell1974,
  explainMediumFinding,
  hours,
  inCentimetresPerDay,
  inCentimetresPerMinute,
  infiltrationGreenAmpt1911,
  inMillimetresPerHourOfConductivity,
  inPercent,
  mediumNotes,
  percent,
  porosityAfterSettling,
  soilFromTextureSaxtonRawls2006,
  substrateRanges,
  substratesPorometer2012,
  tableRow,
  texturesCarselParrish1988,
  texturesClappHornberger1978,
  texturesRawls1982,
  texturesRawls1983,
  topsoilsWosten2001,
  vanGenuchten1980,
  waterContentChange,
} from 'porewater'
import { sourceInFull } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

/** The name of a row as the tables write it. */
const codeOf = (name: string) => name.replace(/[^A-Za-z0-9]+/g, '-')

checkPublished('hydraulics', 'soils.carsel_parrish', ({ texture }) => {
  const row = tableRow(texturesCarselParrish1988, codeOf(texture))
  return {
    theta_r: row.residual,
    theta_s: row.saturated,
    alpha: row.alpha,
    n: row.n,
    ks: inCentimetresPerDay(row.saturatedConductivity),
  }
})
checkPublished('hydraulics', 'soils.clapp_hornberger', ({ texture }) => {
  const row = tableRow(texturesClappHornberger1978, codeOf(texture))
  return {
    b: row.b,
    psi_s: row.airEntry,
    theta_s: row.saturated,
    ks: inCentimetresPerMinute(row.saturatedConductivity),
  }
})
checkPublished('hydraulics', 'soils.rawls_brooks_corey', ({ texture }) => {
  const row = tableRow(texturesRawls1982, codeOf(texture))
  return {
    porosity: row.saturated,
    theta_r: row.residual,
    bubbling_geom: row.airEntry,
    lambda_geom: row.lambda,
    ks: row.saturatedConductivity,
  }
})
checkPublished('hydraulics', 'soils.green_ampt_table', ({ texture }) => {
  const row = tableRow(texturesRawls1983, codeOf(texture))
  return { porosity: row.porosity, suction: row.wettingFrontSuction, K: row.conductivity }
})
checkPublished('hydraulics', 'media.ncsu_published', ({ material, air_space, container_capacity }) => {
  const row = tableRow(substratesPorometer2012, codeOf(material))
  expect(inPercent(row.airSpace)).toBeCloseTo(air_space, 9)
  expect(row.containerCapacity * 100).toBeCloseTo(container_capacity, 9)
  return { total_porosity: inPercent(row.airSpace) + row.containerCapacity * 100 }
})

const soil = (given: Record<string, number>) =>
  soilFromTextureSaxtonRawls2006({
    sand: percent((given.sand as number) * 100),
    clay: percent((given.clay as number) * 100),
    organicMatter: percent(given.organic_matter as number),
  })
checkPublished('hydraulics', 'ptf.saxton_rawls', (given) => {
  const found = soil(given)
  return {
    theta_1500: found.at1500kPa,
    theta_33: found.at33kPa,
    theta_s: found.saturated,
    lambda: found.lambda,
    ks: inMillimetresPerHourOfConductivity(found.saturatedConductivity),
    air_entry: found.airEntryTension,
  }
})
checkPublished('hydraulics', 'ptf.saxton_rawls_table', (given) => {
  const found = soil(given)
  return {
    theta_1500: found.at1500kPa * 100,
    theta_33: found.at33kPa * 100,
    theta_s: found.saturated * 100,
    ks: inMillimetresPerHourOfConductivity(found.saturatedConductivity),
    density: found.bulkDensity,
  }
})

describe('tables', () => {
  const tables = {
    texturesCarselParrish1988,
    texturesClappHornberger1978,
    texturesRawls1982,
    texturesRawls1983,
    topsoilsWosten2001,
    substratesPorometer2012,
  }
  it('say of every row where it comes from and how it is known', () => {
    for (const table of Object.values(tables)) {
      for (const row of Object.values(table)) {
        expect(sourceInFull(row.source)).toMatch(/^\p{L}.* \(\d{4}\), /u)
        expect(['read', 'confirmed', 'not-confirmed']).toContain(row.known)
      }
    }
    for (const row of Object.values(substrateRanges).flat()) {
      expect(sourceInFull(row.source)).toMatch(/^\p{L}.* \(\d{4}\), /u)
      expect(row.low).toBeLessThanOrEqual(row.high)
    }
    for (const note of mediumNotes) expect(explainMediumFinding(note).source).toMatch(/\w/)
  })
  it('of Rawls (1983) give the effective porosity that Green and Ampt need (Chow, Maidment and Mays 1988, Table 4.3.1)', () => {
    const printed: Record<string, number> = {
      sand: 0.417,
      'loamy-sand': 0.401,
      'sandy-loam': 0.412,
      loam: 0.434,
      'silt-loam': 0.486,
      'sandy-clay-loam': 0.33,
      'clay-loam': 0.309,
      'silty-clay-loam': 0.432,
      'sandy-clay': 0.321,
      'silty-clay': 0.423,
      clay: 0.385,
    }
    const effective = Object.entries(texturesRawls1983).map(([name, row]) => [name, row.effectivePorosity])
    expect(Object.fromEntries(effective)).toEqual(printed)
    for (const row of Object.values(texturesRawls1983)) expect(row.effectivePorosity).toBeLessThan(row.porosity)
    // A front that fills the whole porosity of a clay loam goes in with 21 % more water in an hour than one that fills what it can.
    const soil = texturesRawls1983['clay-loam']
    const front = { conductivity: soil.conductivity, frontSuction: soil.wettingFrontSuction, time: hours(1) }
    const into = (rise: number) => infiltrationGreenAmpt1911({ ...front, rise: waterContentChange(rise) }).infiltrated
    expect(into(soil.porosity) / into(soil.effectivePorosity)).toBeCloseTo(1.21, 2)
  })
  it('have the spans of coir dust that the abstracts of Evans and others (1996) and of Abad and others (2005) tell, read again', () => {
    const spans = (name: 'coir-dust-of-five-sources' | 'coir-dust-of-thirteen-sources') =>
      Object.fromEntries(substrateRanges[name].map((row) => [row.quantity, [row.low, row.high, row.unit]]))
    expect(spans('coir-dust-of-five-sources')).toEqual({
      'bulk-density': [0.04, 0.08, 'g/cm³'],
      'air-space': [9.5, 12.6, '%'],
      'container-capacity': [73.0, 80.0, '%'],
      'total-porosity': [85.5, 89.5, '%'],
      solids: [10.5, 14.5, '%'],
      'water-per-dry-mass': [750, 1100, '%'],
    })
    // "Above 94 %" has no other upper end than the whole volume, "less than 1 %" no other lower one than nothing.
    expect(spans('coir-dust-of-thirteen-sources')).toEqual({
      'total-porosity': [94, 100, '%'],
      'air-capacity': [24, 89, '%'],
      'easily-available-water': [0, 36, '%'],
      'total-water-holding-capacity': [137, 786, 'mL/L'],
    })
  })
  it('have the spans that nurseries are recommended (Yeager and others 2007; from memory of the guide)', () => {
    const rows = substrateRanges['recommended-nursery-medium'].map((row) => [
      row.quantity,
      [row.low, row.high, row.unit],
    ])
    expect(Object.fromEntries(rows)).toEqual({
      'total-porosity': [50, 85, '%'],
      'air-space': [10, 30, '%'],
      'container-capacity': [45, 65, '%'],
      'available-water': [25, 35, '%'],
      'unavailable-water': [25, 35, '%'],
      'bulk-density': [0.19, 0.7, 'g/cm³'],
    })
  })
  it('have the densities of solids that the sentence about odd ones tells (Fonteno 1990, abstract: 0.35 to 2.1 g/cm³)', () => {
    const [{ low, high, unit }] = substrateRanges['horticultural-materials']
    expect([low, high, unit]).toEqual([0.35, 2.1, 'g/cm³'])
    const odd = { code: 'odd-solids', level: 'caution', value: 3, min: 0.35, max: 2.7, unit } as const
    expect(explainMediumFinding(odd).message).toContain(`materials have ${low} to ${high} `)
  })
  it('keep the hysteresis of peat and of pine bark apart (Naasz and others 2008: 21 and 10 %)', () => {
    expect(substrateRanges['width-of-the-hysteresis-loop']).toMatchObject([
      { quantity: 'peat', low: 21, high: 21 },
      { quantity: 'pine-bark', low: 10, high: 10 },
    ])
  })
  it('have the number of classes of their print', () => {
    expect(Object.values(tables).map((table) => Object.keys(table).length)).toEqual([12, 11, 11, 11, 13, 4])
  })
  it('go straight into their models and give falling curves', () => {
    const models = [
      ...Object.values(texturesCarselParrish1988).map(vanGenuchten1980),
      ...Object.values(topsoilsWosten2001).map(vanGenuchten1980),
      ...Object.values(texturesClappHornberger1978).map(campbell1974),
      ...Object.values(texturesRawls1982).map((row) => brooksCorey1964(row)),
    ]
    for (const model of models) {
      expect(model.waterContent(330 as never)).toBeLessThan(model.saturated)
      expect(model.waterContent(15000 as never)).toBeLessThan(model.waterContent(330 as never))
    }
  })
  it('agree with each other on the porosity of a class where two papers share their soils', () => {
    for (const [name, row] of Object.entries(texturesRawls1982)) {
      expect(tableRow(texturesRawls1983, name).porosity).toBe(row.saturated)
    }
  })
  it('refuse a name that they do not have', () => {
    expectInputError(() => tableRow(texturesCarselParrish1988, 'gravel'), 'name')
    expectInputError(() => tableRow(texturesCarselParrish1988, 'toString'), 'name')
  })
})

describe('Saxton and Rawls 2006', () => {
  it('keeps the order of its contents wherever it answers inside its validity', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.02, max: 0.6, noNaN: true }),
        fc.double({ min: 0.5, max: 5, noNaN: true }),
        (s, clay, organic_matter) => {
          // In the corners of the texture triangle the regressions contradict themselves; there it refuses to answer.
          const answer = attempt(() => soil({ sand: s * (1 - clay), clay, organic_matter }))
          if (!answer.ok) {
            expect(answer.error.code).toBe('bad-input')
            return
          }
          const found = answer.value
          expect(found.at1500kPa).toBeLessThan(found.at33kPa)
          expect(found.at33kPa).toBeLessThan(found.saturated)
          expect(found.bulkDensity).toBeCloseTo(2.65 * (1 - found.saturated), 12)
        },
      ),
    )
  })
  it('says when it leaves its soils, and when air enters at once', () => {
    expect(soil({ sand: 0.1, clay: 0.65, organic_matter: 2 }).findings).toMatchObject([
      { code: 'outside-validity', about: 'clay' },
    ])
    expect(soil({ sand: 0.88, clay: 0.05, organic_matter: 2.5 }).findings).toMatchObject([{ code: 'no-air-entry' }])
    expect(soil({ sand: 0.42, clay: 0.18, organic_matter: 1 }).findings).toEqual([])
  })
  it('refuses what no soil can be', () => {
    expectInputError(() => soil({ sand: 0.7, clay: 0.4, organic_matter: 2 }), 'clay')
    expectInputError(() => soil({ sand: 0.2, clay: 0.2, organic_matter: 90 }), 'texture')
    expectDomainError(
      () => soilFromTextureSaxtonRawls2006({ sand: Number.NaN as never, clay: percent(1), organicMatter: percent(1) }),
      { quantity: 'sand' },
    )
  })
})

describe('settling', () => {
  it('conserves the solids', () => {
    fc.assert(
      fc.property(fc.double({ min: 50, max: 99, noNaN: true }), fc.double({ min: 0, max: 40, noNaN: true }), (p, x) => {
        const after = porosityAfterSettling({ porosity: percent(p), settling: percent(x) })
        expect((1 - after) * (1 - x / 100)).toBeCloseTo(1 - p / 100, 12)
        expect(after).toBeLessThanOrEqual(p / 100 + 1e-12)
      }),
    )
  })
  it('refuses to press solids together', () => {
    expectInputError(() => porosityAfterSettling({ porosity: percent(30), settling: percent(50) }), 'settling')
    expectDomainError(() => porosityAfterSettling({ porosity: percent(90), settling: 1 as never }), {
      quantity: 'settling',
    })
  })
})
