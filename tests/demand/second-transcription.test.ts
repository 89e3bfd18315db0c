import fc from 'fast-check'
import {
  celsius,
  dailyReferenceETAsce2005,
  dayOfYear,
  type HourlyReferenceETAsce,
  hourlyReferenceETAsce2005,
  hourlyReferenceETFao56,
  hours,
  kilopascals,
  latitude,
  leafAreaFromCover,
  leafResistanceStanghellini1987,
  longitude,
  megajoulesPerSquareMetreDay,
  megajoulesPerSquareMetreHour,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  panCoefficientInGrass,
  panCoefficientOnBareGround,
  percent,
  referenceETPriestleyTaylor1972,
  transpirationStanghellini1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { agreesWithin } from '../support/agrees.js'
import { between } from '../support/round-trip.js'

const agrees = agreesWithin(1e-12)

/**
 * The relations once more, with constants transcribed apart from those of the package, out of public code that cites the same works: a
 * slip in any last digit differs far beyond rounding.
 */
describe('transpiration under glass, transcribed a second time', () => {
  // Public code of greenhouse climate models: 82, 4.3, 0.54, 6.1e-7 and 1.1e-11, 4.3e-6 and 5.2e-6 per Pa², 2.3e-2 and 0.5e-2, 24.5 and 33.6.
  const day = (light: number, t: number, co2: number, pa: number) =>
    ((82 * (light + 4.3)) / (light + 0.54)) *
    (1 + 2.3e-2 * (t - 24.5) ** 2) *
    Math.min(1 + 6.1e-7 * (co2 - 200) ** 2, 1.5) *
    Math.min(1 + 4.3e-6 * pa ** 2, 3.8)
  const night = (t: number, co2: number, pa: number) =>
    658.5 *
    (1 + 0.5e-2 * (t - 33.6) ** 2) *
    Math.min(1 + 1.1e-11 * (co2 - 200) ** 2, 1.5) *
    Math.min(1 + 5.2e-6 * pa ** 2, 3.8)
  const ours = (light: number, t: number, co2: number, pa: number, dark: boolean) =>
    leafResistanceStanghellini1987({
      radiationOnLeaf: light,
      leafTemperature: t,
      carbonDioxide: co2,
      deficit: pa / 1000,
      night: dark,
    } as never)
  it('resistance of the leaf by day and at night', () => {
    fc.assert(
      fc.property(between(0, 500), between(5, 40), between(200, 2000), between(0, 3000), (light, t, co2, pa) => {
        agrees(ours(light, t, co2, pa, false), day(light, t, co2, pa))
        agrees(ours(light, t, co2, pa, true), night(t, co2, pa))
      }),
    )
    // The ends: dry air closes stomata no more than 3.8 times, carbon dioxide no more than 1.5 times by day.
    agrees(ours(100, 24.5, 200, 3000, false) / ours(100, 24.5, 200, 0, false), 3.8)
    agrees(ours(0, 33.6, 200, 3000, true) / ours(0, 33.6, 200, 0, true), 3.8)
    agrees(ours(100, 24.5, 2000, 0, false) / ours(100, 24.5, 200, 0, false), 1.5)
    agrees(ours(0, 33.6, 2000, 0, true), 658.5 * (1 + 1.1e-11 * 1800 ** 2), 1e-14)
  })
  it('Penman and Monteith over both sides of the leaves, with the heat of air 1013 J/kg/K and 2.45 MJ/kg of FAO 56', () => {
    fc.assert(
      fc.property(between(10, 600), between(5, 35), between(0.1, 0.8), between(50, 1000), (net, t, dry, rs) => {
        const es = 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
        const epsilon = (4098 * es) / (t + 237.3) ** 2 / (0.665e-3 * 101.325)
        const rho = (101_325 - 378 * (es - dry)) / (287.05 * (t + 273.15))
        const drive = ((2 * 3 * rho * 1013) / 275 / (0.665e-3 * 101.325)) * dry
        const latent = (epsilon * net + drive) / (1 + epsilon + rs / 275)
        const got = transpirationStanghellini1987({
          netRadiation: net,
          temperature: t,
          deficit: dry,
          leafArea: 3,
          leafResistance: rs,
        } as never)
        agrees(got.latentHeat, latent)
        agrees(got.transpiration, (latent * 3600) / 2_450_000)
      }),
    )
  })
})

describe('pans, transcribed a second time', () => {
  // FAO 56, Table 7, Class A pan, as an R package prints it and as remembered behind the sixth term.
  it('in grass and on bare ground', () => {
    fc.assert(
      fc.property(between(1, 8), between(30, 84), between(1, 1000), (u, rh, f) => {
        const pan = { windSpeed: u, meanHumidity: rh / 100, fetch: 100 * f } as never
        const [far, run] = [Math.log(f), Math.log(86.4 * u)]
        const grass = 0.108 - 0.0286 * u + 0.0422 * far + 0.1434 * Math.log(rh) - 0.000631 * far ** 2 * Math.log(rh)
        expect(panCoefficientInGrass(pan)).toBeCloseTo(grass, 12)
        const ground =
          0.61 +
          0.00341 * rh -
          0.000162 * u * rh -
          0.00000959 * u * f +
          0.00327 * u * far -
          0.00289 * u * run -
          0.0106 * run * far +
          0.00063 * far ** 2 * run
        expect(panCoefficientOnBareGround(pan)).toBeCloseTo(ground, 12)
      }),
    )
  })
})

describe('hourly grass reference, FAO 56 Eq. 53, transcribed a second time', () => {
  // Air of the hour from 14 to 15 of Example 19, N'Diaye in Senegal: 38 °C, 52 %, 3.3 m/s; with 2.450 MJ/m² of sun, and from 2 to 3.
  const hour = (surface: '70' | '50-and-200', middle: number, solar: number) =>
    hourlyReferenceETFao56({
      latitude: latitude(16.22),
      longitude: longitude(-16.25),
      zoneLongitude: longitude(-15),
      elevation: metresAboveSeaLevel(8),
      day: dayOfYear(274),
      middle: hours(middle),
      temperature: celsius(38),
      relativeHumidity: percent(52),
      wind: { speed: metresPerSecond(3.3), height: metres(2) },
      solar: megajoulesPerSquareMetreHour(solar),
      surfaceResistance: surface,
    })
  it('37 on top, and below 0.34, or 0.24 by day and 0.96 at night', () => {
    for (const [middle, solar, dayNight] of [
      [14.5, 2.45, 0.24],
      [2.5, 0, 0.96],
    ] as const) {
      const [plain, split] = [hour('70', middle, solar), hour('50-and-200', middle, solar)]
      const below = (c: number) => plain.slope + plain.psychrometricConstant * (1 + c * plain.windSpeed)
      const above = ((plain.psychrometricConstant * 37) / (38 + 273)) * plain.windSpeed * plain.deficit
      agrees(plain.aerodynamicPart, above / below(0.34))
      agrees(split.aerodynamicPart, above / below(dayNight))
    }
  })
})

describe('standardized reference, ASCE-EWRI 2005, transcribed a second time', () => {
  // Public code that cites Eq. 1 to 45 and Table 1: 37 and 66 by the hour, 900 and 1600 by the day; 4.901e-9 and 2.042e-10; 273.16 where it
  // radiates, 273 in Eq. 1; the cloudiness of a ratio between 0.3 and 1.
  const site = { latitude: latitude(40.41), elevation: metresAboveSeaLevel(1462.4), day: dayOfYear(183) }
  const cloudiness = (ratio: number) => 1.35 * Math.max(0.3, Math.min(ratio, 1)) - 0.35
  const away = (ea: number) => 0.34 - 0.14 * Math.sqrt(ea)
  type Steps = Pick<HourlyReferenceETAsce, 'slope' | 'psychrometricConstant' | 'windSpeed' | 'deficit'>
  const reference = (steps: Steps, t: number, energy: number, top: number, below: number) =>
    (0.408 * steps.slope * energy +
      ((steps.psychrometricConstant * top) / (t + 273)) * steps.windSpeed * steps.deficit) /
    (steps.slope + steps.psychrometricConstant * (1 + below * steps.windSpeed))
  it.each([
    ['high sun', 12.5, 3.1],
    ['half a sun', 12.5, 1.5],
    ['clouds', 12.5, 0.5],
    ['night', 1.5, 0],
  ])('an hour: %s', (_, middle, solar) => {
    const hour = hourlyReferenceETAsce2005({
      ...site,
      longitude: longitude(-104.78),
      zoneLongitude: longitude(-105),
      middle: hours(middle),
      temperature: celsius(17),
      vapourPressure: kilopascals(1.1),
      solar: megajoulesPerSquareMetreHour(solar),
      wind: { speed: metresPerSecond(3.3), height: metres(3) },
      relativeShortwaveBeforeSunset: 0.9,
    })
    const ratio = solar === 0 ? 0.9 : solar / hour.clearSky
    const net = 0.77 * solar - 2.042e-10 * (17 + 273.16) ** 4 * away(1.1) * cloudiness(ratio)
    const lit = net > 0
    expect(lit).toBe(solar > 0.3)
    agrees(hour.netRadiation, net)
    agrees(hour.short, reference(hour, 17, net * (lit ? 0.9 : 0.5), 37, lit ? 0.24 : 0.96))
    agrees(hour.tall, reference(hour, 17, net * (lit ? 0.96 : 0.8), 66, lit ? 0.25 : 1.7))
  })
  it('a day', () => {
    const day = dailyReferenceETAsce2005({
      ...site,
      maxTemperature: celsius(32.4),
      minTemperature: celsius(10.9),
      vapourPressure: kilopascals(1.27),
      solar: megajoulesPerSquareMetreDay(22.4),
      wind: { speed: metresPerSecond(1.94), height: metres(3) },
    })
    const black = (4.901e-9 * ((32.4 + 273.16) ** 4 + (10.9 + 273.16) ** 4)) / 2
    const net = 0.77 * 22.4 - black * away(1.27) * cloudiness(22.4 / day.clearSky)
    agrees(day.netRadiation, net)
    agrees(day.short, reference(day, 21.65, net, 900, 0.34))
    agrees(day.tall, reference(day, 21.65, net, 1600, 0.38))
  })
})

describe('defaults that are published', () => {
  it('1.26 of Priestley and Taylor (1972)', () => {
    const input = { netRadiation: 13.28, temperature: 16.9, pressure: 100.1 } as never
    const given = { netRadiation: 13.28, temperature: 16.9, pressure: 100.1, coefficient: 1.26 } as never
    expect(referenceETPriestleyTaylor1972(input)).toBe(referenceETPriestleyTaylor1972(given))
  })
  it('0.7 of FAO 56, Eq. 97, for leaves and their cover', () => {
    expect(leafAreaFromCover({ cover: percent(75) })).toBeCloseTo(Math.log(4) / 0.7, 12)
  })
})
