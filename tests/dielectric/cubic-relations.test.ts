import * as porewater from 'porewater'
import {
  permittivity,
  permittivityTopp1980,
  permittivityToppReverse1980,
  validityOf,
  waterContent,
  waterContentSlopeTopp1980,
  waterContentTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'
import { itIsUndone, itRises } from '../support/round-trip.js'

type Convert = (x: number) => number
const named = porewater as unknown as Record<string, Convert & porewater.Validity>

/**
 * Name, published rows, first and last permittivity (where the relation gives no water, all water, or was not meant to be used), and the
 * published coefficients times `unit` as whole numbers.
 */
const relations: [
  name: string,
  file: string,
  topic: string | undefined,
  first: number,
  last: number,
  unit: bigint,
  whole: bigint[],
][] = [
  [
    'RothMineral1992',
    'dielectric',
    'vwc.roth1992.mineral',
    1.7546581904603111,
    41.3814295645861,
    10_000_000n,
    [-728000n, 448000n, -19500n, 361n],
  ],
  [
    'RothOrganic1992',
    'dielectric',
    'vwc.roth1992.organic',
    1,
    76.77311158318973,
    100_000_000n,
    [-2330000n, 2850000n, -43100n, 304n],
  ],
  [
    'JacobsenSchjonning1993',
    'dielectric',
    'vwc.jacobsen',
    2.172653811056508,
    49,
    1_000_000n,
    [-70100n, 34700n, -1160n, 18n],
  ],
  [
    'KellnerLundin2001',
    'dielectric',
    'vwc.peat.kellner',
    1,
    77.1343337001804,
    10_000_000n,
    [390000n, 317000n, -4500n, 26n],
  ],
  ['Pepin1992', 'dielectric', 'vwc.peat.pepin', 1, 76.96829223442624, 1_000_000n, [85000n, 19200n, -95n, 0n]],
  [
    'MyllysSimojoki1996',
    'dielectric',
    'vwc.peat.myllys',
    1.8206620534848712,
    80.81900064591517,
    100_000_000n,
    [-7330000n, 4170000n, -80100n, 556n],
  ],
  // No published rows: the coefficients were seen in one open restatement only.
  ['Nagare2011', 'dielectric', undefined, 1, 81.32334225328995, 10_000_000n, [-189000n, 320000n, -4590n, 27n]],
]

describe.each(relations)('%s', (name, file, topic, first, last, unit, whole) => {
  const there = named[`waterContent${name}`] as Convert
  const back = named[`permittivity${name}`] as Convert
  if (topic) checkPublished(file, topic, ({ eps }) => ({ theta: there(eps) }))
  it('equals whole-number arithmetic on its coefficients (independent of the code, not of the coefficients)', () => {
    for (let e = BigInt(Math.ceil(first)); e <= BigInt(Math.floor(last)); e++) {
      const sum = whole.reduce((total, c, power) => total + c * e ** BigInt(power), 0n)
      expect(there(Number(e))).toBeCloseTo(Number(sum) / Number(unit), 13)
    }
  })
  itIsUndone('it', { e: [first, last] }, 'e', ({ e }) => back(there(e)))
  itRises('it', first, last, there)
  it('says when it leaves the span that was measured', () => {
    const validity = named[`validity${name}`] as porewater.Validity
    expect(validity.of).toBe(`waterContent${name}`)
    expect(validityOf(validity, { apparent: 20 })).toEqual([])
    expect(validityOf(validity, { apparent: 1 })).toHaveLength(1)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => there(first - 0.01), { quantity: 'apparent permittivity', min: first, max: last })
    expectDomainError(() => there(last + 0.01), { quantity: 'apparent permittivity', min: first, max: last })
    expectDomainError(() => there(Number.NaN), { quantity: 'apparent permittivity' })
    expectDomainError(() => back(-0.1), { quantity: 'water content' })
    expectDomainError(() => back(1.001), { quantity: 'water content' })
  })
  it('gives no less than no water, and no more water than volume', () => {
    for (const e of [first, last]) {
      expect(there(e)).toBeGreaterThanOrEqual(0)
      expect(there(e)).toBeLessThanOrEqual(1)
    }
    if (first > 1) expect(there(first)).toBeCloseTo(0, 12)
    if (last !== 49) expect(there(last)).toBeCloseTo(1, 12)
  })
})

describe('the reverse regression of Topp 1980', () => {
  checkPublished('dielectric', 'vwc.topp.inverse_poly', ({ theta }) => ({
    eps: permittivityToppReverse1980(waterContent(theta)),
  }))
  // This tests the arithmetic only. The coefficients are those of public code that cites the paper; the paper itself was not seen.
  it('equals whole-number arithmetic on the coefficients that public code gives', () => {
    for (let h = 0n; h <= 100n; h++) {
      const tenMillionths = 30300000n + 930000n * h + 146000n * h ** 2n - 767n * h ** 3n
      expect(permittivityToppReverse1980(waterContent(Number(h) / 100))).toBeCloseTo(Number(tenMillionths) / 1e7, 11)
    }
  })
  it('is not the inverse: it misses by 7 units at 0.55', () => {
    const content = waterContent(0.55)
    expect(permittivityTopp1980(content) - permittivityToppReverse1980(content)).toBeCloseTo(7.3, 1)
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => permittivityToppReverse1980(1.01 as never), { quantity: 'water content', max: 1 })
  })
})

describe('the slope of Topp 1980', () => {
  checkPublished('dielectric', 'vwc.topp.sensitivity', ({ eps }) => ({
    dtheta_deps: waterContentSlopeTopp1980(permittivity(eps)),
  }))
  it('is the limit of the difference quotient (independent oracle)', () => {
    for (const e of [2, 5, 20, 43, 80]) {
      const rise = waterContentTopp1980(permittivity(e + 1e-4)) - waterContentTopp1980(permittivity(e - 1e-4))
      expect(waterContentSlopeTopp1980(permittivity(e))).toBeCloseTo(rise / 2e-4, 9)
    }
  })
})
