import {
  campbell1974,
  fitRetention,
  formCampbell1974,
  formVanGenuchten1980,
  haverkamp1977,
  type SuctionHead,
  vanGenuchten1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { limitFindings } from '../../src/medium/limits/limit-findings.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const fitted = (request: object) => fitRetention(request as never)
const peat = vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha: 0.1, n: 1.6 } as never)
const points = [1, 5, 10, 20, 50].map((s) => ({ suction: s, waterContent: peat.waterContent(s as SuctionHead) }))
const [first, second, third, fourth] = points

describe('a fit', () => {
  it('of four numbers and their errors needs five suctions, one fewer for each that is fixed', () => {
    const form = formVanGenuchten1980
    const four = points.slice(0, 4)
    expect(() => fitted({ form, points: four })).toThrow(
      /4 different suctions cannot tell 4 parameters.*measure at 5 suctions/,
    )
    expect(() => fitted({ form, points: [...four, fourth] })).toThrow('4 different suctions cannot tell 4 parameters')
    expect(fitted({ form, points }).parameters).toHaveLength(4)
    expect(fitted({ form, points: four, saturated: 0.9 }).rmse).toBeLessThan(1e-6)
    expect(() => fitted({ form, points: [first, second, third], saturated: 0.9 })).toThrow('cannot tell 3 parameters')
    expect(fitted({ form, points: [first, second, third], saturated: 0.9, residual: 0.1 }).rmse).toBeLessThan(1e-6)
  })
  it('of a power law finds the conductivity that Campbell (1974) gives: K = Ks (θ/θs)^(2b + 3), without a connection of pores', () => {
    const power = campbell1974({ saturated: 0.5, airEntry: 4, b: 3 } as never)
    const measured = [1, 2, 6, 12, 25, 50, 120].map((s) => {
      const content = power.waterContent(s as SuctionHead)
      return { suction: s, waterContent: content, conductivity: 7 * (content / 0.5) ** 9 }
    })
    const found = fitted({ form: formCampbell1974, points: measured })
    expect(found.saturatedConductivity).toBeCloseTo(7, 4)
    expect(found.rmse).toBeLessThan(1e-6)
    expect(found.parameters.find(({ name }) => name === 'saturatedConductivity')).toMatchObject({ unit: 'cm/h' })
  })
  it('says which of its numbers ended at their limit, and nothing of one that was fixed', () => {
    // Drained no further than to 5 cm, the points show no residual, and a residual of zero is the least there is.
    const wet = [0.5, 1, 2, 3, 4, 5].map((s) => ({ suction: s, waterContent: 0.9 - 0.02 * s ** 1.4 }))
    const found = fitted({ form: formVanGenuchten1980, points: wet })
    const free = found.parameters.filter(({ standardError, fixed }) => standardError === undefined && !fixed)
    expect(free.length).toBeGreaterThan(0)
    const told = found.findings.filter(({ code }) => code === 'at-limit')
    expect(told).toEqual(
      free.map(({ name, value, unit }) => ({ code: 'at-limit', level: 'note', about: name, value, unit })),
    )
    const fixed = fitted({ form: formVanGenuchten1980, points, saturated: 0.9, residual: 0.1 })
    expect(fixed.findings.filter(({ code }) => code === 'at-limit')).toEqual([])
  })
  it('is refused where the water content does not fall, or only at one suction above zero', () => {
    const form = formVanGenuchten1980
    const level = points.map(({ suction }) => ({ suction, waterContent: 0.4 }))
    const single = [0, 0, 0, 0, 9].map((suction, i) => ({ suction, waterContent: 0.9 - 0.1 * i }))
    for (const list of [level, single])
      expect(() => fitted({ form, points: list })).toThrow('they do not show how the water content falls with suction')
  })
})

describe('a power law of Haverkamp and others (1977)', () => {
  const numbers = { residual: 0.075, saturated: 0.287, alpha: 1.611e6, beta: 3.96, conductivityA: 1.175e6 }
  it.each([
    ['alpha', 'cm^β'],
    ['conductivityA', 'cm^γ'],
  ])('names the unit of a coefficient that it refuses: %s in %s', (name, unit) => {
    expect(() => haverkamp1977({ ...numbers, conductivityGamma: 4.74, [name]: -1 } as never)).toThrow(unit)
  })
})

describe('limits of a container', () => {
  const said = (full: number, refill: number, bottomSuctionAtRefill: number, air: number, more: object = {}) =>
    limitFindings(
      { container: { height: 10 }, minAir: 0.1, ...more } as never,
      { fullPoint: { waterContent: full }, refillPoint: { waterContent: refill }, bottomSuctionAtRefill } as never,
      air,
    ).map(({ code }) => code)
  it('leave no room where they are one, nor air below what is asked, nor buffer above a suction of 100 cm', () => {
    expect(said(0.6, 0.5, 90, 0.1)).toEqual(['drying-curve'])
    expect(said(0.6, 0.6, 90, 0.1)).toEqual(['no-room', 'drying-curve'])
    expect(said(0.6, 0.5, 90.1, 0.1)).toEqual(['beyond-buffer', 'drying-curve'])
    expect(said(0.6, 0.5, 90, 0.099)).toEqual(['air-below-min', 'drying-curve'])
    expect(said(0.6, 0.5, 90, 0.099, { minAir: undefined })).toEqual(['drying-curve'])
  })
  it('say where they come from: a share of a field soil, and a lower limit that was assumed', () => {
    expect(said(0.6, 0.5, 90, 0.2, { depletion: 0.3 })).toEqual([
      'field-soil-guide',
      'lower-limit-assumed',
      'drying-curve',
    ])
    expect(said(0.6, 0.5, 90, 0.2, { depletion: 0.3, lowerLimit: 80 })).toEqual(['field-soil-guide', 'drying-curve'])
  })
})
