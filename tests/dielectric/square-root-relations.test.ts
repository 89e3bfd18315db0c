import {
  type BulkDensity,
  type MassFraction,
  type Permittivity,
  type Porosity,
  permittivity,
  permittivityHerkelrath1991,
  permittivityJacobsenSchjonningSoil1993,
  permittivityLedieu1986,
  permittivityMalickiDensity1996,
  permittivityMalickiPorosity1996,
  permittivitySchaap1997,
  validityJacobsenSchjonningSoil1993,
  validityLedieu1986,
  validityMalickiDensity1996,
  validityMalickiPorosity1996,
  validityOf,
  type WaterContent,
  waterContentHerkelrath1991,
  waterContentJacobsenSchjonningSoil1993,
  waterContentLedieu1986,
  waterContentMalickiDensity1996,
  waterContentMalickiPorosity1996,
  waterContentSchaap1997,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'
import { itIsUndone, itRises } from '../support/round-trip.js'

const soil = (given: { rho_b: number; clay_pct: number; som_pct: number }) => ({
  bulkDensity: given.rho_b as BulkDensity,
  clay: (given.clay_pct / 100) as MassFraction,
  organicMatter: (given.som_pct / 100) as MassFraction,
})

checkPublished('dielectric', 'vwc.ledieu', ({ eps }) => ({ theta: waterContentLedieu1986(permittivity(eps)) }))
checkPublished('dielectric', 'vwc.sqrt_linear', ({ eps, a, b }) => ({
  theta: waterContentHerkelrath1991({ apparent: eps, slope: a, intercept: b }),
}))
checkPublished('dielectric', 'vwc.sqrt_power', ({ eps, a, b, c }) => ({
  theta: waterContentSchaap1997({ apparent: eps, slope: a, offset: b, exponent: c }),
}))
checkPublished('dielectric', 'vwc.malicki.density', ({ eps, rho_b }) => ({
  theta: waterContentMalickiDensity1996({ apparent: eps, bulkDensity: rho_b }),
}))
checkPublished('dielectric', 'vwc.malicki.porosity', ({ eps, porosity }) => ({
  theta: waterContentMalickiPorosity1996({ apparent: eps, porosity }),
}))
checkPublished('dielectric', 'vwc.jacobsen.soil', ({ eps, rho_b, clay_pct, som_pct }) => ({
  theta: waterContentJacobsenSchjonningSoil1993({ apparent: eps, ...soil({ rho_b, clay_pct, som_pct }) }),
}))

const FIRST_OF_LEDIEU = 2.386454823156588
/** Whether a reading has a water content between nothing and all of the volume. */
const answers = (relation: () => number) => {
  try {
    return relation() >= 0
  } catch {
    return false
  }
}

describe('round trips', () => {
  itIsUndone('Ledieu 1986', { e: [FIRST_OF_LEDIEU, 90] }, 'e', ({ e }) =>
    permittivityLedieu1986(waterContentLedieu1986(e as Permittivity)),
  )
  itIsUndone(
    'Herkelrath 1991',
    { e: [1, 90], slope: [0.05, 0.2], intercept: [-0.3, 0.1] },
    'e',
    (x) =>
      permittivityHerkelrath1991({
        ...x,
        waterContent: waterContentHerkelrath1991({ ...x, apparent: x.e as Permittivity }),
      }),
    0,
    (x) => answers(() => waterContentHerkelrath1991({ ...x, apparent: x.e as Permittivity })),
  )
  itIsUndone(
    'Schaap 1997',
    { e: [1, 90], slope: [0.1, 0.2], offset: [0, 0.15], exponent: [0.5, 2] },
    'e',
    (x) =>
      permittivitySchaap1997({ ...x, waterContent: waterContentSchaap1997({ ...x, apparent: x.e as Permittivity }) }),
    1,
    (x) => {
      const line = x.slope * Math.sqrt(x.e) - x.offset
      return line > 0.01 && line ** x.exponent < 1
    },
  )
  const byDensity = ({ e, d }: { e: number; d: number }) =>
    waterContentMalickiDensity1996({ apparent: e as Permittivity, bulkDensity: d as BulkDensity })
  itIsUndone(
    'Malicki 1996 by density',
    { e: [1, 90], d: [0.01, 2.65] },
    'e',
    (x) => permittivityMalickiDensity1996({ waterContent: byDensity(x), bulkDensity: x.d as BulkDensity }),
    0,
    (x) => answers(() => byDensity(x)),
  )
  const byPorosity = ({ e, p }: { e: number; p: number }) =>
    waterContentMalickiPorosity1996({ apparent: e as Permittivity, porosity: p as Porosity })
  itIsUndone(
    'Malicki 1996 by porosity',
    { e: [1, 90], p: [0, 1] },
    'e',
    (x) => permittivityMalickiPorosity1996({ waterContent: byPorosity(x), porosity: x.p as Porosity }),
    0,
    (x) => answers(() => byPorosity(x)),
  )
  itIsUndone(
    'Jacobsen and Schjønning 1993 with soil',
    { e: [1, 49], rho_b: [0.5, 2], clay_pct: [0, 60], som_pct: [0, 20] },
    'e',
    (x) => {
      const content = waterContentJacobsenSchjonningSoil1993({ apparent: x.e as Permittivity, ...soil(x) })
      return permittivityJacobsenSchjonningSoil1993({ waterContent: content, ...soil(x) })
    },
    0,
    (x) => answers(() => waterContentJacobsenSchjonningSoil1993({ apparent: x.e as Permittivity, ...soil(x) })),
  )
})

describe('monotone', () => {
  itRises('Ledieu 1986', FIRST_OF_LEDIEU, 90, (e) => waterContentLedieu1986(e as Permittivity))
  itRises('Malicki 1996 by density', 1, 63, (e) =>
    waterContentMalickiDensity1996({ apparent: e as Permittivity, bulkDensity: 0.1 as BulkDensity }),
  )
  itRises('Malicki 1996 by porosity', 1.1, 56, (e) =>
    waterContentMalickiPorosity1996({ apparent: e as Permittivity, porosity: 0.95 as Porosity }),
  )
})

describe('independent oracles', () => {
  it('square-root forms at square permittivities equal whole-number arithmetic', () => {
    for (let s = 2n; s <= 8n; s++) {
      const apparent = Number(s * s) as Permittivity
      expect(waterContentLedieu1986(apparent)).toBeCloseTo(Number(1138n * s - 1758n) / 1e4, 14)
      // Bulk density 0.5 g/cm³: (s - 0.819 - 0.084 - 0.03975) / 7.76
      expect(waterContentMalickiDensity1996({ apparent, bulkDensity: 0.5 as BulkDensity })).toBeCloseTo(
        Number(100000n * s - 94275n) / 776000,
        14,
      )
      // Porosity 0.5: (s - 3.47 + 3.11 - 0.955) / (7.01 + 3.445 - 1.9575)
      expect(waterContentMalickiPorosity1996({ apparent, porosity: 0.5 as Porosity })).toBeCloseTo(
        Number(10000n * s - 13150n) / 84975,
        14,
      )
    }
  })
  it('both forms of Malicki 1996 agree within 0.016 for mineral soils', () => {
    for (const density of [1, 1.2, 1.4, 1.7])
      for (const e of [5, 10, 20, 30]) {
        const apparent = permittivity(e)
        const byDensity = waterContentMalickiDensity1996({ apparent, bulkDensity: density as BulkDensity })
        const byPorosity = waterContentMalickiPorosity1996({ apparent, porosity: (1 - density / 2.65) as Porosity })
        expect(Math.abs(byDensity - byPorosity)).toBeLessThan(0.0165)
      }
  })
})

describe('edges', () => {
  it('Schaap 1997 is 0 where its line falls below zero', () => {
    expect(waterContentSchaap1997({ apparent: permittivity(1), slope: 0.1, offset: 0.15, exponent: 0.885 })).toBe(0)
  })
  it('an inverse says which water contents can be reached', () => {
    expectDomainError(
      () => permittivityHerkelrath1991({ waterContent: 1.5 as WaterContent, slope: 0.1, intercept: -0.1 }),
      {
        quantity: 'water content',
        min: 0,
      },
    )
    expectDomainError(() =>
      permittivitySchaap1997({ waterContent: 1.9 as WaterContent, slope: 0.133, offset: 0.146, exponent: 0.885 }),
    )
    expectDomainError(() =>
      permittivityMalickiDensity1996({ waterContent: 1.2 as WaterContent, bulkDensity: 1.4 as BulkDensity }),
    )
    expectDomainError(() =>
      permittivityMalickiPorosity1996({ waterContent: -0.3 as WaterContent, porosity: 0.5 as Porosity }),
    )
    expectDomainError(() =>
      permittivityJacobsenSchjonningSoil1993({
        waterContent: 1.55 as WaterContent,
        ...soil({ rho_b: 1.4, clay_pct: 10, som_pct: 2 }),
      }),
    )
  })
  it('an inverse names the water contents at permittivities of 1 and 90 (the printed equations of Malicki and others 1996)', () => {
    for (const density of [0.1, 0.4, 1.4, 2]) {
      const at = (e: number) =>
        (Math.sqrt(e) - 0.819 - 0.168 * density - 0.159 * density ** 2) / (7.17 + 1.18 * density)
      const inverse = (theta: number) => () =>
        permittivityMalickiDensity1996({ waterContent: theta as WaterContent, bulkDensity: density as BulkDensity })
      const refusal = { quantity: 'water content', min: expect.closeTo(at(1), 12), max: expect.closeTo(at(90), 12) }
      if (at(90) < 0.99) expectDomainError(inverse(at(90) + 0.001), refusal)
      if (at(1) > 0.01) expectDomainError(inverse(at(1) - 0.001), refusal)
      const wet = Math.min(at(89.9), 0.99)
      expect(at(inverse(wet)())).toBeCloseTo(wet, 12)
    }
  })
  it('says when a relation leaves the span that was measured', () => {
    expect(validityOf(validityLedieu1986, { apparent: 60 })).toHaveLength(1)
    expect(validityOf(validityMalickiDensity1996, { apparent: 30, bulkDensity: 0.08 })).toMatchObject([
      { about: 'bulkDensity' },
    ])
    expect(validityOf(validityMalickiPorosity1996, { apparent: 30, porosity: 0.97 })).toHaveLength(1)
    expect(validityOf(validityJacobsenSchjonningSoil1993, { apparent: 20 })).toEqual([])
  })
})
