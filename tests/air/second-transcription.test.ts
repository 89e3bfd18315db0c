import fc from 'fast-check'
import {
  dailyLightIntegralOfSeries,
  dayOfInstant,
  densityOfMoistAir,
  humidityRatio,
  instant,
  latentHeatFao56,
  netLongwaveRadiationHourFao56,
  type Pressure,
  radiationSum,
  saturationVapourPressureBuck1981,
  saturationVapourPressureOverIceSonntag1990,
  saturationVapourPressureSonntag1990,
  saturationVapourPressureWagnerPruss2002,
  saturationVapourPressureWmo2008,
  type Temperature,
  type VapourPressure,
  validityBuck1981,
  vapourPressureDeficitBand,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { HOUR_FACTOR } from '../../src/air/solar-hour-fao56.js'
import { agreesWithin } from '../support/agrees.js'
import { between } from '../support/round-trip.js'

const agrees = agreesWithin(1e-13)

/** The same relation of the temperature at its ends and between them. */
function same(min: number, max: number, ours: (t: Temperature) => number, theirs: (t: number) => number): void {
  for (const t of [min, (min + max) / 2, max]) agrees(ours(t as Temperature), theirs(t))
  fc.assert(fc.property(between(min, max), (t) => agrees(ours(t as Temperature), theirs(t))))
}

/**
 * The relations once more, with constants transcribed apart from those of the package, out of public code that cites the same works: a
 * slip in any last digit differs far beyond rounding.
 */
describe('vapour pressures, transcribed a second time', () => {
  it('Sonntag (1990) over water and over ice, in Pa as climate models have them', () => {
    const water = (k: number) =>
      100 * Math.exp(-6096.9385 / k + 16.635794 - 0.02711193 * k + 0.00001673952 * k ** 2 + 2.433502 * Math.log(k))
    same(-100, 100, saturationVapourPressureSonntag1990, (t) => water(t + 273.15) / 1000)
    const ice = (k: number) =>
      100 * Math.exp(-6024.5282 / k + 24.7219 + 0.010613868 * k - 0.000013198825 * k ** 2 - 0.49382577 * Math.log(k))
    same(-100, 0, saturationVapourPressureOverIceSonntag1990, (t) => ice(t + 273.15) / 1000)
  })
  it('Wagner and Pruss (2002), Eq. 2.5, in MPa', () => {
    const a = [-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502]
    const powers = [1, 1.5, 3, 3.5, 4, 7.5]
    const pressure = (k: number) => {
      const theta = 1 - k / 647.096
      return 22.064 * Math.exp((647.096 / k) * a.reduce((sum, one, i) => sum + one * theta ** powers[i]!, 0))
    }
    same(0, 373.9, saturationVapourPressureWagnerPruss2002, (t) => 1000 * pressure(t + 273.15))
  })
  it('Buck (1981), curve ew1, from -20 to 50 °C [span from memory]', () => {
    expect(validityBuck1981.inputs.temperature).toMatchObject({ min: -20, max: 50 })
  })
  it('Buck (1981), curve ew1, and the World Meteorological Organization (2008), in hPa', () => {
    same(-60, 100, saturationVapourPressureBuck1981, (t) => 0.61121 * Math.exp((17.502 * t) / (240.97 + t)))
    same(-60, 100, saturationVapourPressureWmo2008, (t) => 0.6112 * Math.exp((17.62 * t) / (243.12 + t)))
  })
})

describe('constants of air from their definitions', () => {
  // SI Brochure (2019): k and N_A are exact; molar masses in g/mol as cited at the functions.
  const GAS = 1.380649e-23 * 6.02214076e23
  it('gas constants of dry air and of vapour in the density of moist air', () => {
    const density = (vapour: number) =>
      densityOfMoistAir({
        temperature: 20 as Temperature,
        vapourPressure: vapour as VapourPressure,
        pressure: 100 as Pressure,
      })
    expect(density(0) / (100_000 / ((1000 * GAS) / 28.966) / 293.15)).toBeCloseTo(1, 9)
    expect(density(100) / (100_000 / ((1000 * GAS) / 18.015268) / 293.15)).toBeCloseTo(1, 9)
  })
  it('0.621945 in the humidity ratio of ASHRAE (2009), 18.015268 over 28.966', () => {
    const ratio = humidityRatio({ vapourPressure: 50 as VapourPressure, pressure: 100 as Pressure })
    expect(ratio).toBeCloseTo(18.015268 / 28.966, 6)
  })
  it('latent heat after Harrison (1963), 2.361 kJ/kg less for each degree, as FAO 56 prints it', () => {
    same(-60, 100, latentHeatFao56, (t) => (2501 - 2.361 * t) / 1000)
  })
  it('the hour of longwave radiation has the kelvins of FAO 56, Eq. 39: °C + 273.16', () => {
    const at = (t: number) =>
      netLongwaveRadiationHourFao56({
        temperature: t as Temperature,
        actualVapourPressure: 1 as VapourPressure,
        relativeShortwave: 1,
      })
    expect(at(40) / at(0)).toBeCloseTo((313.16 / 273.16) ** 4, 12)
    // Stefan-Boltzmann for an hour as Example 19 prints it: 2.043e-10 MJ/K⁴/m²/h.
    expect(at(0)).toBeCloseTo(2.043e-10 * 273.16 ** 4 * (0.34 - 0.14) * (1.35 - 0.35), 12)
  })
  it('the factor of an hour of the sun is 12 · 60/π of 0.0820 MJ/m²/min: FAO 56, Eq. 28', () => {
    expect(HOUR_FACTOR).toBeCloseTo((12 * 60 * 0.082) / Math.PI, 12)
  })
})

describe('ends that are told', () => {
  it('a gap of two hours is filled and a longer one is not, for energy and for photons', () => {
    for (const [step, covered] of [
      [7200, 7200],
      [7200.5, 0],
    ] as const) {
      const times = [0, step]
      expect(radiationSum({ times, irradiance: [1, 1] }).covered).toBe(covered)
      expect(dailyLightIntegralOfSeries({ times, photonFlux: [1, 1] }).covered).toBe(covered)
    }
  })
  it('a light integral takes the readings of 24 hours and no more', () => {
    const series = (end: number) => ({ times: [0, end], photonFlux: [1, 1] })
    expect(dailyLightIntegralOfSeries(series(86_400)).uncovered).toBe(86_400)
    expect(() => dailyLightIntegralOfSeries(series(86_400.5))).toThrow('more than a day')
  })
  it('a deficit of 1.4 kPa is acceptable, one above is excessive: Konopacki and others (2018), abstract', () => {
    expect(vapourPressureDeficitBand(1.4 as never)).toBe('acceptable')
    expect(vapourPressureDeficitBand(1.4001 as never)).toBe('excessive')
    expect(vapourPressureDeficitBand(0.2 as never)).toBe('acceptable')
    expect(vapourPressureDeficitBand(0.1999 as never)).toBe('too-low')
  })
  it('the first and last day of every year, by the calendar of JavaScript', () => {
    for (let year = 1; year <= 9999; year += 7) {
      const first = new Date(0).setUTCFullYear(year, 0, 1) / 1000
      const last = new Date(0).setUTCFullYear(year, 11, 31) / 1000
      expect(dayOfInstant(instant(first)), String(year)).toBe(1)
      expect(dayOfInstant(instant(last)), String(year)).toBe((last - first) / 86_400 + 1)
    }
  })
})
