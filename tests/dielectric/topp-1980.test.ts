import fc from 'fast-check'
import {
  permittivity,
  permittivityTopp1980,
  validityOf,
  validityTopp1980,
  waterContent,
  waterContentTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'

checkPublished('dielectric', 'vwc.topp', ({ eps }) => ({ theta: waterContentTopp1980(permittivity(eps)) }))
checkPublished('dielectric', 'vwc.topp.solve', ({ theta }) => ({ eps: permittivityTopp1980(waterContent(theta)) }))

const [first, last] = [1.880711916479125, 81.44688230309151]
const permittivities = fc.double({ min: first, max: last, noNaN: true }).map(permittivity)

describe('Topp 1980', () => {
  it('equals whole-number arithmetic on its coefficients (independent of the code, not of the coefficients)', () => {
    for (let e = 2n; e <= 81n; e++) {
      const tenMillionths = -530000n + 292000n * e - 5500n * e * e + 43n * e * e * e
      expect(waterContentTopp1980(permittivity(Number(e)))).toBeCloseTo(Number(tenMillionths) / 1e7, 13)
    }
  })
  it('is undone by its inverse to 1e-12', () => {
    fc.assert(
      fc.property(permittivities, (e) => {
        expect(Math.abs(permittivityTopp1980(waterContentTopp1980(e)) / e - 1)).toBeLessThan(1e-12)
      }),
    )
  })
  it('rises with permittivity', () => {
    fc.assert(
      fc.property(permittivities, permittivities, (a, b) => {
        fc.pre(a < b)
        expect(waterContentTopp1980(a)).toBeLessThanOrEqual(waterContentTopp1980(b))
      }),
    )
  })
  it('goes from no water to nothing but water, and its inverse stays inside', () => {
    expect(waterContentTopp1980(permittivityTopp1980(waterContent(0)))).toBeCloseTo(0, 12)
    expect(waterContentTopp1980(permittivityTopp1980(waterContent(1)))).toBeCloseTo(1, 12)
    expect(waterContentTopp1980(permittivity(first))).toBeGreaterThanOrEqual(0)
    expect(waterContentTopp1980(permittivity(last))).toBeLessThanOrEqual(1)
  })
  it('says when it leaves the span that was measured', () => {
    expect(validityOf(validityTopp1980, { apparent: 20 })).toEqual([])
    expect(validityOf(validityTopp1980, { apparent: 55 })).toMatchObject([
      { code: 'outside-validity', about: 'apparent', value: 55 },
    ])
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => waterContentTopp1980(0.5 as never), {
      quantity: 'apparent permittivity',
      value: 0.5,
      min: first,
      max: last,
    })
    expectDomainError(() => waterContentTopp1980(permittivity(90)), { quantity: 'apparent permittivity', value: 90 })
    expectDomainError(() => waterContentTopp1980(Number.NaN as never), { quantity: 'apparent permittivity' })
    expectDomainError(() => permittivityTopp1980(2 as never), { quantity: 'water content', max: 1 })
  })
})
