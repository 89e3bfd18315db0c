import fc from 'fast-check'
import {
  centimetresOfSuction,
  easilyAvailableWater,
  fraction,
  logLogisticRetention,
  outsideIdealSubstrate,
  perCentimetre,
  percent,
  type RetentionModel,
  vanGenuchten1980,
  waterBetweenSuctions,
  waterBufferingCapacity,
  waterClassesDeBoodt1972,
  waterClassesOfMedium,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const vanGenuchten = (theta_r: number, theta_s: number, alpha: number, n: number) =>
  vanGenuchten1980({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    alpha: perCentimetre(alpha),
    n,
  })
const sampleOf = (pores: number, at10: number, at50: number, at100: number) => ({
  totalPoreSpace: percent(pores) as never,
  at10: waterContent(at10),
  at50: waterContent(at50),
  at100: waterContent(at100),
})

checkPublished('hydraulics', 'media.de_boodt', ({ theta_0, theta_10, theta_50, theta_100, ...curve }) => {
  const classes =
    theta_10 === undefined
      ? waterClassesOfMedium({ medium: curveOf(curve) })
      : waterClassesDeBoodt1972(sampleOf(100 * theta_0, theta_10, theta_50, theta_100))
  return {
    total_pore_space: 100 * classes.totalPoreSpace,
    air_capacity: 100 * classes.airCapacity,
    easily_available_water: 100 * classes.easilyAvailableWater,
    water_buffering_capacity: 100 * classes.waterBufferingCapacity,
    available_water: 100 * classes.availableWater,
    less_available_water: 100 * classes.lessAvailableWater,
    inside_ideal_ranges: outsideIdealSubstrate(classes).length === 0,
  }
})

// biome-ignore lint/suspicious/noExplicitAny: rows hold the numbers of several models
function curveOf({ theta_r, theta_s, alpha, n, theta_low, theta_high, suction_half, slope }: any): RetentionModel {
  if (alpha !== undefined) return vanGenuchten(theta_r, theta_s, alpha, n)
  return logLogisticRetention({
    residual: waterContent(theta_low),
    saturated: waterContent(theta_high),
    halfSuction: centimetresOfSuction(suction_half),
    slope,
  })
}

describe('air and water classes', () => {
  const medium = vanGenuchten(0.18, 0.92, 0.15, 1.7)

  it('add up to the pore space', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 1.1, max: 5, noNaN: true }),
        fc.double({ min: 0.9, max: 1, noNaN: true }),
        (alpha, n, porosity) => {
          const curve = vanGenuchten(0.1, 0.9, alpha, n)
          const classes = waterClassesOfMedium({ medium: curve, porosity: fraction(porosity) })
          expect(classes.easilyAvailableWater).toBe(easilyAvailableWater(curve))
          expect(classes.waterBufferingCapacity).toBe(waterBufferingCapacity(curve))
          const available = classes.easilyAvailableWater + classes.waterBufferingCapacity
          expect(classes.availableWater).toBeCloseTo(available, 15)
          expect(classes.airCapacity + available + classes.lessAvailableWater).toBeCloseTo(porosity, 14)
          expect(classes.totalPoreSpace).toBe(porosity)
        },
      ),
    )
  })
  it('have an ideal range: pores from 85 %, air and easily available water 20 to 30 %, a buffer of 4 to 10 %', () => {
    // De Boodt and Verdonck (1972), as textbooks on growing media quote them; from memory.
    const ideal = { totalPoreSpace: 0.9, airCapacity: 0.25, easilyAvailableWater: 0.25, waterBufferingCapacity: 0.07 }
    const outside = (one: object) => outsideIdealSubstrate({ ...ideal, ...one } as never).map(({ about }) => about)
    for (const [about, min, max] of [
      ['totalPoreSpace', 0.85, 1],
      ['airCapacity', 0.2, 0.3],
      ['easilyAvailableWater', 0.2, 0.3],
      ['waterBufferingCapacity', 0.04, 0.1],
    ] as const) {
      expect([outside({ [about]: min }), outside({ [about]: max })]).toEqual([[], []])
      expect(outside({ [about]: min - 1e-4 })).toEqual([about])
      if (max < 1) expect(outside({ [about]: max + 1e-4 })).toEqual([about])
    }
  })
  it('are compared with an ideal substrate, ends included', () => {
    expect(outsideIdealSubstrate(waterClassesDeBoodt1972(sampleOf(85, 0.65, 0.35, 0.31)))).toEqual([])
    expect(outsideIdealSubstrate(waterClassesDeBoodt1972(sampleOf(60, 0.55, 0.45, 0.3)))).toMatchObject([
      { about: 'totalPoreSpace', level: 'note', value: 0.6 },
      { about: 'airCapacity' },
      { about: 'easilyAvailableWater' },
      { about: 'waterBufferingCapacity', code: 'outside-ideal-substrate' },
    ])
  })
  it('refuse what has no meaning', () => {
    const [low, high] = [centimetresOfSuction(10), centimetresOfSuction(50)]
    expect(waterBetweenSuctions({ medium, from: low, to: high })).toBe(easilyAvailableWater(medium))
    expect(waterBetweenSuctions({ medium, from: low, to: low })).toBe(0)
    expectInputError(() => waterBetweenSuctions({ medium, from: high, to: low }), 'from, to')
    expectDomainError(() => waterBetweenSuctions({ medium, from: -1 as never, to: low }), { quantity: 'suction' })
    expectInputError(() => waterClassesOfMedium({ medium, porosity: fraction(0.9) }), 'porosity')
    expectDomainError(() => waterClassesOfMedium({ medium, porosity: 0 as never }), { quantity: 'porosity' })
    for (const [at10, at50, at100] of [
      [0.95, 0.4, 0.3],
      [0.4, 0.5, 0.3],
      [0.6, 0.4, 0.5],
    ] as const)
      expectInputError(() => waterClassesDeBoodt1972(sampleOf(90, at10, at50, at100)), 'at10, at50, at100')
    const sample = sampleOf(90, 0.6, 0.4, 0.3)
    expectDomainError(() => waterClassesDeBoodt1972({ ...sample, totalPoreSpace: 0 as never }), {
      argument: 'totalPoreSpace',
    })
    expectDomainError(() => waterClassesDeBoodt1972({ ...sample, at50: Number.NaN as never }), {
      quantity: 'water content',
    })
  })
})
