import fc from 'fast-check'
import {
  add,
  celsius,
  fahrenheitOfChange,
  inFahrenheit,
  inKelvin,
  kelvinsOfChange,
  litres,
  ratio,
  scale,
  shiftTemperature,
  shiftWaterContent,
  subtract,
  sum,
  temperatureDifference,
  type Volume,
  waterContent,
  waterContentChange,
  waterContentDifference,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

const volumes = fc.double({ min: 0, max: 1e9, noNaN: true }).map(litres)
const factors = fc.double({ min: 1e-6, max: 1e6, noNaN: true })

describe('arithmetic of amounts', () => {
  it('adds in any order and subtracts back', () => {
    fc.assert(
      fc.property(volumes, volumes, (a, b) => {
        expect(add(a, b)).toBe(add(b, a))
        expect(Math.abs(subtract(add(a, b), b) - a)).toBeLessThanOrEqual(2e-15 * (a + b))
      }),
    )
  })
  it('scales and takes the ratio back', () => {
    fc.assert(
      fc.property(factors.map(litres), factors, (a, factor) => {
        expect(Math.abs(ratio(scale(a, factor), a) / factor - 1)).toBeLessThan(1e-15)
      }),
    )
  })
  it('sums a list, and nothing to zero', () => {
    expect(sum([litres(1), litres(2), litres(3)])).toBe(6)
    expect(sum<Volume>([])).toBe(0)
  })
  it('refuses factors and quotients that are not finite', () => {
    expectDomainError(() => scale(litres(1), Number.NaN), { quantity: 'factor', min: -Infinity, max: Infinity })
    expectDomainError(() => scale(litres(1), Number.POSITIVE_INFINITY), { quantity: 'factor' })
    expectDomainError(() => ratio(litres(1), litres(0)), { quantity: 'divisor', min: -Infinity, max: Infinity })
    expectDomainError(() => ratio(litres(0), litres(0)), { quantity: 'divisor' })
  })
})

describe('points and differences', () => {
  it('moves a temperature and reads it on the other scale', () => {
    const warmer = shiftTemperature(celsius(20), fahrenheitOfChange(18))
    expect(warmer).toBe(30)
    expect(inFahrenheit(warmer)).toBe(86)
    expect(inKelvin(warmer)).toBeCloseTo(303.15, 12)
    expect(temperatureDifference(warmer, celsius(20))).toBe(10)
    expect(shiftTemperature(celsius(20), kelvinsOfChange(-5))).toBe(15)
  })
  it('moves a water content', () => {
    expect(shiftWaterContent(waterContent(0.5), waterContentChange(0.25))).toBe(0.75)
    expect(waterContentDifference(waterContent(0.75), waterContent(0.5))).toBe(0.25)
  })
})
