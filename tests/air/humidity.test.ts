import { createRequire } from 'node:module'
import fc from 'fast-check'
import {
  absoluteHumidity,
  atmosphericPressureFao56,
  celsius,
  densityOfMoistAir,
  dewPointFao56,
  dewPointSonntag1990,
  elevationOfPressureFao56,
  frostPointSonntag1990,
  gramsPerKilogram,
  humidityRatio,
  inKilogramsPerKilogram,
  kelvinsOfChange,
  kilogramsPerKilogram,
  kilopascals,
  metresAboveSeaLevel,
  percent,
  type RelativeHumidity,
  relativeHumidityOfAir,
  saturationVapourPressureBuck1981,
  saturationVapourPressureFao56,
  saturationVapourPressureOverIceSonntag1990,
  saturationVapourPressureSonntag1990,
  saturationVapourPressureWagnerPruss2002,
  saturationVapourPressureWmo2008,
  type VapourPressure,
  validityBuck1981,
  validityOf,
  vapourPressureDeficitBand,
  vapourPressureDeficitOfAir,
  vapourPressureDeficitOfLeaf,
  vapourPressureFromDewPointFao56,
  vapourPressureFromMaxHumidityFao56,
  vapourPressureFromMeanHumidityFao56,
  vapourPressureFromMinTemperatureFao56,
  vapourPressureFromPsychrometerFao56,
  vapourPressureOfHumidity,
  vapourPressureOfRatio,
  wetBulbTemperature,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const psychrolib = createRequire(import.meta.url)('psychrolib')
psychrolib.SetUnitSystem(psychrolib.SI)

const VENTILATION = { 0.000662: 'aspirated', 0.0008: 'natural', 0.0012: 'indoors' } as const

checkPublished('evapotranspiration', 'ea_from_psychrometer', ({ z, tdry, twet, a_psy }) => ({
  ea: vapourPressureFromPsychrometerFao56({
    dryBulb: celsius(tdry),
    wetBulb: celsius(twet),
    pressure: atmosphericPressureFao56(metresAboveSeaLevel(z)),
    ventilation: VENTILATION[a_psy as keyof typeof VENTILATION],
  }),
}))
checkPublished('evapotranspiration', 'ea_from_rhmax', ({ tmin, rhmax }) => ({
  ea: vapourPressureFromMaxHumidityFao56({ minTemperature: celsius(tmin), maxHumidity: percent(rhmax) }),
}))
checkPublished('irrigation', 'air.es', ({ T }) => ({ es: saturationVapourPressureFao56(celsius(T)) }))
checkPublished('irrigation', 'air.vpd', ({ T, RH }) => ({
  VPD: vapourPressureDeficitOfAir({ temperature: celsius(T), relativeHumidity: percent(RH) }),
}))
checkPublished('irrigation', 'air.vpd_leaf', ({ T, RH, T_leaf }) => ({
  VPD: vapourPressureDeficitOfLeaf({
    temperature: celsius(T),
    relativeHumidity: percent(RH),
    leafTemperature: celsius(T_leaf),
  }),
}))
checkPublished('irrigation', 'air.vpd_band', ({ VPD }) => ({ class: vapourPressureDeficitBand(kilopascals(VPD)) }))
checkPublished('irrigation', 'pressure.elevation', ({ z }) => ({
  P: atmosphericPressureFao56(metresAboveSeaLevel(z)),
}))

const temperatures = fc.double({ min: 0, max: 50, noNaN: true }).map(celsius)
const humidities = fc.double({ min: 0.05, max: 1, noNaN: true })
const pressures = fc.double({ min: 70, max: 105, noNaN: true }).map((p) => kilopascals(p))

describe('saturation vapour pressure', () => {
  it('meets the triple point of water, 611.657 Pa, and the boiling point, 101.42 kPa (IAPWS SR1-86)', () => {
    expect(saturationVapourPressureWagnerPruss2002(celsius(0.01))).toBeCloseTo(0.611657, 6)
    expect(saturationVapourPressureSonntag1990(celsius(0.01))).toBeCloseTo(0.611657, 5)
    expect(saturationVapourPressureOverIceSonntag1990(celsius(0.01))).toBeCloseTo(0.611657, 4)
    // R7-97 (2012), Table 35: 0.00353658941 MPa at 300 K, from the equation of the industrial formulation.
    expect(Math.abs(saturationVapourPressureWagnerPruss2002(celsius(26.85)) / 3.53658941 - 1)).toBeLessThan(5e-5)
    expect(saturationVapourPressureWagnerPruss2002(celsius(373.946))).toBeCloseTo(22064, 0)
  })
  it('agrees with psychrolib (ASHRAE 2009, Hyland and Wexler 1983) as far as the formulations do', () => {
    const forms = [
      [saturationVapourPressureWagnerPruss2002, 0.0003],
      [saturationVapourPressureSonntag1990, 0.0003],
      // Curve ew1 was fitted to Wexler (1976); it is flattest near 20 °C.
      [saturationVapourPressureBuck1981, 0.0017],
      // Two-parameter curves: FAO-56 rounds its coefficients, WMO claims 0.3 %.
      [saturationVapourPressureFao56, 0.0012],
      [saturationVapourPressureWmo2008, 0.003],
    ] as const
    for (const [form, tolerance] of forms) {
      for (let t = 1; t <= 50; t++) {
        expect(Math.abs((form(celsius(t)) * 1000) / psychrolib.GetSatVapPres(t) - 1)).toBeLessThan(tolerance)
      }
    }
    for (let t = -60; t <= 0; t += 5) {
      const ice = saturationVapourPressureOverIceSonntag1990(celsius(t)) * 1000
      expect(Math.abs(ice / psychrolib.GetSatVapPres(t) - 1)).toBeLessThan(0.0015)
    }
  })
  it('rises with temperature in every form', () => {
    fc.assert(
      fc.property(temperatures, temperatures, (a, b) => {
        fc.pre(b - a > 1e-6)
        for (const form of [
          saturationVapourPressureFao56,
          saturationVapourPressureBuck1981,
          saturationVapourPressureSonntag1990,
          saturationVapourPressureWmo2008,
          saturationVapourPressureWagnerPruss2002,
        ])
          expect(form(a)).toBeLessThan(form(b))
      }),
    )
  })
  it('says where Buck fitted', () => {
    expect(validityOf(validityBuck1981, { temperature: 20 })).toEqual([])
    expect(validityOf(validityBuck1981, { temperature: 60 })).toHaveLength(1)
  })
})

describe('vapour pressure of the air', () => {
  it('gives the printed values of FAO-56, Examples 4, 5 and 20', () => {
    // Example 4: 1200 m, aspirated psychrometer, 25.6 and 19.5 °C: 1.91 kPa.
    const reading = {
      dryBulb: celsius(25.6),
      wetBulb: celsius(19.5),
      pressure: atmosphericPressureFao56(metresAboveSeaLevel(1200)),
      ventilation: 'aspirated',
    } as const
    expect(vapourPressureFromPsychrometerFao56(reading)).toBeCloseTo(1.91, 2)
    // Example 5: 18 and 25 °C, 82 and 54 %: 1.70 from both, 1.78 from the mean of 68 %.
    const mean = {
      maxTemperature: celsius(25),
      minTemperature: celsius(18),
      meanHumidity: percent<RelativeHumidity>(68),
    } as const
    expect(vapourPressureFromMeanHumidityFao56(mean)).toBeCloseTo(1.78, 2)
    // Example 20: lowest temperature 14.8 °C: 1.68 kPa.
    expect(vapourPressureFromMinTemperatureFao56({ minTemperature: celsius(14.8) })).toBeCloseTo(1.68, 2)
  })
  it('lowers the dew point of arid sites by what is asked', () => {
    const dry = vapourPressureFromMinTemperatureFao56({ minTemperature: celsius(15), aridity: kelvinsOfChange(2) })
    expect(dry).toBe(vapourPressureFromDewPointFao56(celsius(13)))
  })
  it('is undone by the dew point and by relative humidity', () => {
    fc.assert(
      fc.property(temperatures, humidities, (temperature, humidity) => {
        const vapourPressure = vapourPressureOfHumidity({ temperature, relativeHumidity: humidity as never })
        expect(relativeHumidityOfAir({ temperature, vapourPressure })).toBeCloseTo(humidity, 12)
        const dew = dewPointFao56(vapourPressure)
        expect(dew).toBeLessThanOrEqual(temperature + 1e-9)
        expect(vapourPressureFromDewPointFao56(dew) / vapourPressure).toBeCloseTo(1, 12)
      }),
    )
  })
  it('finds the dew point where psychrolib does, to the difference of the two curves', () => {
    for (let t = 5; t <= 40; t += 5) {
      for (const humidity of [0.3, 0.6, 0.9]) {
        const ours = dewPointFao56(
          vapourPressureOfHumidity({ temperature: celsius(t), relativeHumidity: humidity as never }),
        )
        const theirs = psychrolib.GetTDewPointFromRelHum(t, humidity)
        // Below freezing they ask for hoar frost, we for dew.
        if (theirs > 0) expect(Math.abs(ours - theirs)).toBeLessThan(0.02)
      }
    }
  })
  it('is lower by the deficit than at saturation, and the leaf sees more when it is warmer', () => {
    fc.assert(
      fc.property(temperatures, humidities, (temperature, h) => {
        const humidity = h as never
        const deficit = vapourPressureDeficitOfAir({ temperature, relativeHumidity: humidity })
        const sum = deficit + vapourPressureOfHumidity({ temperature, relativeHumidity: humidity })
        expect(sum / saturationVapourPressureFao56(temperature)).toBeCloseTo(1, 12)
        expect(
          vapourPressureDeficitOfLeaf({ temperature, relativeHumidity: humidity, leafTemperature: temperature }),
        ).toBeCloseTo(deficit, 12)
        const warm = celsius(temperature + 1)
        expect(
          vapourPressureDeficitOfLeaf({ temperature, relativeHumidity: humidity, leafTemperature: warm }),
        ).toBeGreaterThan(deficit)
      }),
    )
    const dewy = {
      temperature: celsius(20),
      relativeHumidity: percent<RelativeHumidity>(95),
      leafTemperature: celsius(17),
    } as const
    expect(vapourPressureDeficitOfLeaf(dewy)).toBeLessThan(0)
    expect(vapourPressureDeficitBand(0.2 as never)).toBe('acceptable')
    expect(vapourPressureDeficitBand(1.4 as never)).toBe('acceptable')
  })
})

describe('water in the air', () => {
  it('has the humidity ratio of psychrolib to 1e-5 when it is given the same vapour pressure', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 6, noNaN: true }), pressures, (vapour, pressure) => {
        const ours = humidityRatio({ vapourPressure: kilopascals(vapour), pressure })
        expect(ours / psychrolib.GetHumRatioFromVapPres(vapour * 1000, pressure * 1000)).toBeCloseTo(1, 5)
        expect(vapourPressureOfRatio({ ratio: ours, pressure }) / vapour).toBeCloseTo(1, 12)
      }),
    )
    expect(inKilogramsPerKilogram(gramsPerKilogram(12))).toBeCloseTo(0.012, 15)
  })
  it('has the density of saturated vapour of the steam tables: 17.30 g/m³ at 20 °C, 30.4 at 30 °C (IAPWS R6-95, ideal gas within 0.2 %)', () => {
    const at = (t: number) =>
      absoluteHumidity({
        temperature: celsius(t),
        vapourPressure: saturationVapourPressureWagnerPruss2002(celsius(t)),
      })
    expect(Math.abs(at(20) / 17.31 - 1)).toBeLessThan(0.002)
    expect(Math.abs(at(30) / 30.415 - 1)).toBeLessThan(0.002)
  })
  it('refuses vapour that leaves no air', () => {
    expectInputError(
      () => humidityRatio({ vapourPressure: kilopascals(50), pressure: kilopascals(50) }),
      'vapourPressure',
    )
    expectDomainError(() => vapourPressureOfRatio({ ratio: kilogramsPerKilogram(12), pressure: kilopascals(100) }), {
      quantity: 'humidity ratio',
    })
  })
})

describe('dew and frost on the curve of Sonntag', () => {
  it('are the true inverses of the two curves', () => {
    fc.assert(
      fc.property(fc.double({ min: -60, max: 99, noNaN: true }), (t) => {
        expect(dewPointSonntag1990(saturationVapourPressureSonntag1990(celsius(t)))).toBeCloseTo(t, 9)
        if (t <= 0)
          expect(frostPointSonntag1990(saturationVapourPressureOverIceSonntag1990(celsius(t)))).toBeCloseTo(t, 9)
      }),
    )
  })
  it('find the points of psychrolib: dew within 0.005 K, hoar frost within 0.02 K', () => {
    for (let t = -20; t <= 40; t += 4) {
      const vapour = kilopascals<VapourPressure>(psychrolib.GetVapPresFromRelHum(t, 0.6) / 1000)
      const theirs = psychrolib.GetTDewPointFromVapPres(t, vapour * 1000)
      const ours = vapour < 0.611 ? frostPointSonntag1990(vapour) : dewPointSonntag1990(vapour)
      expect(Math.abs(ours - theirs)).toBeLessThan(vapour < 0.611 ? 0.02 : 0.005)
      if (vapour < 0.611) expect(frostPointSonntag1990(vapour)).toBeGreaterThan(dewPointSonntag1990(vapour))
    }
    expectDomainError(() => frostPointSonntag1990(kilopascals(1)), { quantity: 'vapour pressure over ice' })
  })
})

describe('density of moist air', () => {
  it('is that of psychrolib to 0.02 %, and less in moist air', () => {
    fc.assert(
      fc.property(temperatures, humidities, pressures, (temperature, h, pressure) => {
        const vapourPressure = vapourPressureOfHumidity({ temperature, relativeHumidity: h as never })
        const ours = densityOfMoistAir({ temperature, vapourPressure, pressure })
        const ratio = psychrolib.GetHumRatioFromVapPres(vapourPressure * 1000, pressure * 1000)
        const theirs = psychrolib.GetMoistAirDensity(temperature, ratio, pressure * 1000)
        expect(Math.abs(ours / theirs - 1)).toBeLessThan(2e-4)
        const drier = kilopascals<VapourPressure>(vapourPressure / 2)
        expect(densityOfMoistAir({ temperature, vapourPressure: drier, pressure })).toBeGreaterThan(ours)
      }),
    )
    expectInputError(
      () => densityOfMoistAir({ temperature: celsius(90), vapourPressure: kilopascals(60), pressure: kilopascals(50) }),
      'vapourPressure',
    )
    // All vapour: an ideal gas of 18.015268 g/mol, with the gas constant of the SI (8.31446261815324 J/(mol K)).
    const steam = densityOfMoistAir({
      temperature: celsius(90),
      vapourPressure: kilopascals(50),
      pressure: kilopascals(50),
    })
    expect(steam).toBeCloseTo((50000 * 0.018015268) / (8.31446261815324 * 363.15), 9)
  })
})

describe('wet bulb', () => {
  it('solves the equation of the psychrometer, and lies between dew point and air', () => {
    fc.assert(
      fc.property(temperatures, humidities, pressures, (temperature, h, pressure) => {
        const humidity = h as never
        const wetBulb = wetBulbTemperature({ temperature, relativeHumidity: humidity, pressure })
        const back = vapourPressureFromPsychrometerFao56({
          dryBulb: temperature,
          wetBulb: Math.min(wetBulb, temperature) as never,
          pressure,
          ventilation: 'aspirated',
        })
        const vapour = vapourPressureOfHumidity({ temperature, relativeHumidity: humidity })
        expect(Math.abs(back - vapour)).toBeLessThan(1e-11)
        expect(wetBulb).toBeGreaterThanOrEqual(dewPointFao56(vapour) - 1e-9)
        expect(wetBulb).toBeLessThanOrEqual(temperature)
      }),
    )
  })
  it('lies within 0.15 K of the thermodynamic wet bulb of psychrolib, which is another definition', () => {
    for (let t = 10; t <= 40; t += 5) {
      for (const humidity of [0.3, 0.6, 0.9]) {
        const pressure = kilopascals(101.325)
        const ours = wetBulbTemperature({ temperature: celsius(t), relativeHumidity: humidity as never, pressure })
        const theirs = psychrolib.GetTWetBulbFromRelHum(t, humidity, 101325)
        if (theirs > 0) expect(Math.abs(ours - theirs)).toBeLessThan(0.15)
      }
    }
  })
  // FAO-56 (1998), Eq. 11, 15 and 16, written out again: e°(wet) less a P (T - wet) is the vapour pressure of the air.
  it.each([
    ['aspirated', 0.000662],
    ['natural', 0.0008],
    ['indoors', 0.0012],
  ] as const)('solves the equation to the end of dry and cold air: %s', (ventilation, coefficient) => {
    const saturated = (t: number) => 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
    for (const t of [-60, -59, -40, -10, 0, 25, 60, 100])
      for (const humidity of [0, 0.01, 0.5, 1])
        for (const pressure of [60, 101.3]) {
          const air = {
            temperature: celsius(t),
            relativeHumidity: humidity as RelativeHumidity,
            pressure: kilopascals(pressure),
          }
          const wet = wetBulbTemperature({ ...air, ventilation } as never)
          const back = saturated(wet) - coefficient * pressure * (t - wet)
          expect(Math.abs(back - humidity * saturated(t)), `${t} °C, ${humidity}`).toBeLessThan(
            1e-9 * (1 + saturated(t)),
          )
          if (ventilation === 'aspirated') expect(wetBulbTemperature(air as never)).toBe(wet)
        }
  })
  it('answers in the driest and coldest air of its range', () => {
    for (const t of [-60, 0, 100]) {
      const air = {
        temperature: celsius(t),
        relativeHumidity: percent<RelativeHumidity>(0),
        pressure: kilopascals(101.3),
      }
      expect(wetBulbTemperature(air)).toBeLessThan(t)
      expect(wetBulbTemperature({ ...air, relativeHumidity: percent(100) })).toBeCloseTo(t, 9)
    }
  })
  it('refuses an unknown ventilation, and a wet bulb above the dry one', () => {
    expectInputError(
      () =>
        wetBulbTemperature({
          temperature: celsius(20),
          relativeHumidity: percent(50),
          pressure: kilopascals(100),
          ventilation: 'gale' as never,
        }),
      'ventilation',
    )
    const reading = {
      dryBulb: celsius(20),
      wetBulb: celsius(21),
      pressure: kilopascals(100),
      ventilation: 'natural',
    } as const
    expectInputError(() => vapourPressureFromPsychrometerFao56(reading), 'wetBulb')
    expectInputError(
      () => vapourPressureFromPsychrometerFao56({ ...reading, wetBulb: celsius(15), ventilation: '' as never }),
      'ventilation',
    )
  })
})

describe('elevation of a pressure', () => {
  it('undoes the pressure of an elevation', () => {
    fc.assert(
      fc.property(fc.double({ min: -400, max: 8500, noNaN: true }), (z) => {
        expect(elevationOfPressureFao56(atmosphericPressureFao56(metresAboveSeaLevel(z)))).toBeCloseTo(z, 6)
      }),
    )
    expectDomainError(() => elevationOfPressureFao56(kilopascals(1013) as never), { quantity: 'atmospheric pressure' })
    expectDomainError(() =>
      relativeHumidityOfAir({ temperature: celsius(20), vapourPressure: Number.NaN as VapourPressure }),
    )
  })
})
