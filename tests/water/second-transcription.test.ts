import fc from 'fast-check'
import {
  oxygenSaturationBensonKrause1984,
  type Pressure,
  type Salinity,
  type Temperature,
  type WaterDensity,
  waterDensityJonesHarris1992,
  waterDensityKell1975,
  waterPermittivityIapwsR8,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { agreesWithin } from '../support/agrees.js'
import { between } from '../support/round-trip.js'

/**
 * The relations once more, with constants transcribed apart from those of the package, out of public code that cites the same works (the
 * works themselves were not seen): a slip in any last digit differs far beyond rounding.
 */
const SAME = 2e-14

const agrees = agreesWithin(SAME)

describe('density of water, transcribed a second time', () => {
  it('Jones and Harris (1992), Journal of Research of NIST 97, 335-340, air-free', () => {
    fc.assert(
      fc.property(between(0, 40), (t) => {
        const powers = [999.85308, 6.32693e-2 * t, -8.523829e-3 * t ** 2, 6.943248e-5 * t ** 3, -3.821216e-7 * t ** 4]
        agrees(waterDensityJonesHarris1992(t as Temperature), powers.reduce((a, b) => a + b) / 1000)
      }),
    )
  })
  it('Kell (1975), Journal of Chemical and Engineering Data 20, 97-105, eq. 16', () => {
    fc.assert(
      fc.property(between(0, 100), (t) => {
        const above =
          999.83952 +
          16.945176 * t -
          7.9870401e-3 * t ** 2 -
          46.170461e-6 * t ** 3 +
          105.56302e-9 * t ** 4 -
          280.54253e-12 * t ** 5
        agrees(waterDensityKell1975(t as Temperature), above / (1 + 16.87985e-3 * t) / 1000)
      }),
    )
  })
})

describe('oxygen in water, transcribed a second time', () => {
  it('Benson and Krause (1984), Limnology and Oceanography 29, 620-632, as APHA 4500-O has it', () => {
    fc.assert(
      fc.property(between(0, 40), between(0.5, 1.1), between(0, 40), (t, atm, salinity) => {
        const k = t + 273.15
        const fresh = -139.34411 + 1.575701e5 / k - 6.642308e7 / k ** 2 + 1.2438e10 / k ** 3 - 8.621949e11 / k ** 4
        const salt = salinity * (0.017674 - 10.754 / k + 2140.7 / k ** 2)
        const vapour = Math.exp(11.8571 - 3840.7 / k - 216961 / k ** 2)
        const theta = 0.000975 - 1.426e-5 * t + 6.436e-8 * t ** 2
        const pressed = ((atm - vapour) * (1 - theta * atm)) / ((1 - vapour) * (1 - theta))
        const ours = oxygenSaturationBensonKrause1984({
          temperature: t as Temperature,
          pressure: (atm * 101.325) as Pressure,
          salinity: salinity as Salinity,
        })
        // Terms of a hundred cancel in the exponent.
        expect(Math.abs(ours / (Math.exp(fresh - salt) * pressed) - 1)).toBeLessThan(1e-12)
      }),
    )
  })
})

describe('permittivity of water, transcribed a second time', () => {
  // IAPWS R8-97: coefficients, exponents of density, exponents of temperature.
  const TERMS = [
    [0.978224486826, 1, 0.25],
    [-0.957771379375, 1, 1],
    [0.237511794148, 1, 2.5],
    [0.714692244396, 2, 1.5],
    [-0.298217036956, 3, 1.5],
    [-0.108863472196, 3, 2.5],
    [0.0949327488264, 4, 2],
    [-0.00980469816509, 5, 2],
    [1.6516763497e-5, 6, 5],
    [9.37359795772e-5, 7, 0.5],
    [-1.2317921872e-10, 10, 10],
  ] as const
  const permittivity = (t: number, density: number) => {
    const kelvin = t + 273.15
    const delta = (1000 * density) / 322
    const tau = 647.096 / kelvin
    let g = 1 + 0.00196096504426 * delta * (kelvin / 228 - 1) ** -1.2
    for (const [n, i, j] of TERMS) g += n * delta ** i * tau ** j
    // Permittivity of the vacuum from the defined speed of light and magnetic constant of 1983.
    const vacuum = 1 / (4e-7 * Math.PI * 299_792_458 ** 2)
    const molar = (6.0221367e23 * 1000 * density) / 0.018015268
    const a = (molar * 6.138e-30 ** 2 * g) / (vacuum * 1.380658e-23 * kelvin)
    const b = (molar * 1.636e-40) / (3 * vacuum)
    return (1 + a + 5 * b + Math.sqrt(9 + 2 * a + 18 * b + a * a + 10 * a * b + 9 * b * b)) / (4 - 4 * b)
  }
  const ours = (t: number, density: number) =>
    waterPermittivityIapwsR8({ temperature: t as Temperature, density: density as WaterDensity })
  it('IAPWS R8-97', () => {
    // The smallest coefficients show only where water is dense and cold.
    agrees(ours(-35, 1.25), permittivity(-35, 1.25))
    agrees(ours(-10, 1.2), permittivity(-10, 1.2))
    fc.assert(
      fc.property(between(-35, 600), between(0.01, 1.25), (t, density) =>
        agrees(ours(t, density), permittivity(t, density)),
      ),
    )
  })
})
