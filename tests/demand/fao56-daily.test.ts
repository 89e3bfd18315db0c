import fc from 'fast-check'
import {
  celsius,
  cropCoefficient,
  cropET,
  dailyReferenceETFao56,
  dayLengthFao56,
  dayOfYear,
  extraterrestrialRadiationFao56,
  hours,
  inHours,
  inSquareMetres,
  kilometresPerHour,
  kilopascals,
  kilopascalsPerKelvin,
  latitude,
  megajoulesPerSquareMetreDay,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  millimetresPerDay,
  percent,
  plantsPerSquareMetre,
  referenceETFao56,
  solarRadiationFromSunshineFao56,
  squareMetres,
  waterUsePerPlant,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('evapotranspiration', 'solar_radiation_from_sunshine', ({ lat_deg, J, n_month, days, n }) => {
  const place = { latitude: latitude(lat_deg), day: dayOfYear(J) }
  const extraterrestrial = extraterrestrialRadiationFao56(place)
  const dayLength = dayLengthFao56(place)
  const daily = n ?? n_month / days
  const Rs = solarRadiationFromSunshineFao56({ sunshine: hours(daily), dayLength, extraterrestrial })
  return { Ra: extraterrestrial, N: inHours(dayLength), n: daily, Rs, Rs_mm: 0.408 * Rs }
})

checkPublished('evapotranspiration', 'eto_daily', (given) => {
  const place = { latitude: latitude(given.lat_deg), day: dayOfYear(given.J) }
  const extraterrestrial = extraterrestrialRadiationFao56(place)
  const dayLength = dayLengthFao56(place)
  const solar = solarRadiationFromSunshineFao56({ sunshine: hours(given.n), dayLength, extraterrestrial })
  const day = dailyReferenceETFao56({
    ...place,
    elevation: metresAboveSeaLevel(given.z),
    maxTemperature: celsius(given.tmax),
    minTemperature: celsius(given.tmin),
    maxHumidity: percent(given.rhmax),
    minHumidity: percent(given.rhmin),
    solar,
    wind:
      given.u2 === undefined
        ? { speed: kilometresPerHour(given.uz_kmh), height: metres(given.zw) }
        : { speed: metresPerSecond(given.u2), height: metres(2) },
  })
  const denominator = day.slope + day.psychrometricConstant * (1 + 0.34 * day.windSpeed)
  const c900 = (900 / (day.meanTemperature + 273)) * day.windSpeed
  return {
    u2: day.windSpeed,
    P: day.pressure,
    gamma: day.psychrometricConstant,
    delta: day.slope,
    weight_rad: day.slope / denominator,
    weight_aero: day.psychrometricConstant / denominator,
    c900,
    es: day.saturation,
    ea: day.actual,
    vpd: day.deficit,
    Ra: day.extraterrestrial,
    N: inHours(dayLength),
    Rs: solar,
    Rso: day.clearSky,
    Rns: day.netShortwave,
    sigT4max: 4.903e-9 * (given.tmax + 273.16) ** 4,
    sigT4min: 4.903e-9 * (given.tmin + 273.16) ** 4,
    Rnl: day.netLongwave,
    Rn: day.netRadiation,
    G: 0,
    ETo_rad: (0.408 * day.slope * day.netRadiation) / denominator,
    ETo_aero: (day.psychrometricConstant * c900 * day.deficit) / denominator,
    ETo: day.referenceET,
  }
})

const terms = {
  netRadiation: megajoulesPerSquareMetreDay(13),
  meanTemperature: celsius(17),
  windSpeed: metresPerSecond(2),
  deficit: kilopascals(0.6),
  slope: kilopascalsPerKelvin(0.122),
  psychrometricConstant: kilopascalsPerKelvin(0.0666),
} as never as Parameters<typeof referenceETFao56>[0]

describe('FAO Penman-Monteith', () => {
  const positive = (max: number) => fc.double({ min: 0, max, noNaN: true })
  it('rises with radiation and with the dryness of the air, other things equal', () => {
    fc.assert(
      fc.property(positive(30), positive(30), positive(6), positive(6), positive(8), (r1, r2, d1, d2, wind) => {
        const of = (r: number, d: number) =>
          referenceETFao56({
            ...terms,
            netRadiation: r as never,
            deficit: d as never,
            windSpeed: metresPerSecond(wind),
          })
        expect(of(Math.max(r1, r2), d1)).toBeGreaterThanOrEqual(of(Math.min(r1, r2), d1))
        expect(of(r1, Math.max(d1, d2))).toBeGreaterThanOrEqual(of(r1, Math.min(d1, d2)))
      }),
    )
  })
  it('is the equilibrium rate without wind: energy shared by slope and psychrometric constant', () => {
    fc.assert(
      fc.property(positive(30), (r) => {
        const still = referenceETFao56({ ...terms, netRadiation: r as never, windSpeed: metresPerSecond(0) })
        expect(still).toBeCloseTo((0.408 * 0.122 * r) / (0.122 + 0.0666), 12)
      }),
    )
  })
  it('never needs more energy than the net radiation gives in saturated air', () => {
    fc.assert(
      fc.property(positive(30), positive(8), (r, wind) => {
        expect(
          referenceETFao56({
            ...terms,
            netRadiation: r as never,
            deficit: kilopascals(0),
            windSpeed: metresPerSecond(wind),
          }),
        ).toBeLessThanOrEqual(0.408 * r + 1e-12)
      }),
    )
  })
  it('says when the sun does not rise and when it shines brighter than a clear sky', () => {
    const day = {
      latitude: latitude(75),
      elevation: metresAboveSeaLevel(10),
      day: dayOfYear(355),
      maxTemperature: celsius(-5),
      minTemperature: celsius(-15),
      maxHumidity: percent(90),
      minHumidity: percent(70),
      solar: megajoulesPerSquareMetreDay(0),
      wind: { speed: metresPerSecond(3), height: metres(10) },
    } as never as Parameters<typeof dailyReferenceETFao56>[0]
    expect(dailyReferenceETFao56(day)).toMatchObject({
      referenceET: expect.any(Number),
      findings: [{ code: 'no-sun' }],
    })
    expect(Number.isFinite(dailyReferenceETFao56(day).referenceET)).toBe(true)
    const bright = dailyReferenceETFao56({ ...day, latitude: latitude(50), solar: megajoulesPerSquareMetreDay(20) })
    expect(bright.findings).toMatchObject([{ code: 'brighter-than-clear-sky', value: 20 }])
  })
  it('refuses more sunshine than day', () => {
    expectInputError(
      () =>
        solarRadiationFromSunshineFao56({
          sunshine: hours(13),
          dayLength: hours(10),
          extraterrestrial: megajoulesPerSquareMetreDay(25),
        }),
      'sunshine',
    )
  })
})

describe('from grass to a plant', () => {
  it('conserves water: depth times area is litres times plants', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        fc.double({ min: 0.1, max: 50, noNaN: true }),
        (et, kc, density) => {
          const crop = cropET({ referenceET: millimetresPerDay(et), cropCoefficient: cropCoefficient(kc) })
          const plant = waterUsePerPlant({ cropET: crop, plantDensity: plantsPerSquareMetre(density) })
          const area = inSquareMetres(squareMetres(1))
          expect(plant * density * area).toBeCloseTo(et * kc, 9)
        },
      ),
    )
  })
  it('refuses a density of zero and a negative evapotranspiration', () => {
    expectDomainError(() => waterUsePerPlant({ cropET: millimetresPerDay(4), plantDensity: 0 as never }), {
      quantity: 'plant density',
    })
    expectDomainError(
      () => waterUsePerPlant({ cropET: millimetresPerDay(-1), plantDensity: plantsPerSquareMetre(2) }),
      { quantity: 'crop evapotranspiration' },
    )
  })
})
