import fc from 'fast-check'
import {
  celsius,
  clearSkyRadiationFao56,
  dayLengthFao56,
  dayOfDate,
  dayOfInstant,
  dayOfYear,
  days,
  evaporationOfDailyEnergy,
  extraterrestrialRadiationFao56,
  extraterrestrialRadiationHourFao56,
  hours,
  instant,
  kelvinsOfChange,
  kilopascals,
  latitude,
  longitude,
  megajoulesPerSquareMetreDay,
  megajoulesPerSquareMetreHour,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  minutes,
  netLongwaveRadiationFao56,
  netLongwaveRadiationHourFao56,
  netShortwaveRadiationFao56,
  soilHeatHourFao56,
  soilHeatOfCurrentMonthFao56,
  soilHeatOfMonthFao56,
  soilHeatOfWarmingFao56,
  solarHourFao56,
  solarRadiationFromSunshineFao56,
  solarRadiationFromTemperatureFao56,
  solarRadiationOnIslandFao56,
  sunshineFromSolarRadiationFao56,
  windSpeedAtHeightFao56,
  windSpeedAtTwoMetresFao56,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('evapotranspiration', 'day_of_year', ({ month, day }) => ({ J: dayOfDate({ month, day }) }))
/** FAO-56, Eq. 39, as the longwave loss of a day over a black surface: the printed Table 2.8 is its first factor. */
checkPublished('evapotranspiration', 'stefan_boltzmann', ({ t }) => {
  // Without vapour and under a clear sky the loss is the black-body term times 0.34.
  const day = {
    maxTemperature: celsius(t),
    minTemperature: celsius(t),
    actualVapourPressure: kilopascals<never>(0),
    relativeShortwave: 1,
  }
  return { sigT4: netLongwaveRadiationFao56(day) / 0.34 }
})
checkPublished('evapotranspiration', 'soil_heat_flux_backward', ({ t_month, t_prev }) => ({
  G: soilHeatOfCurrentMonthFao56({ before: celsius(t_prev), current: celsius(t_month) }),
}))
const fromTemperature = (given: Record<string, number>) => {
  const place = { latitude: latitude(given.lat_deg as number), day: dayOfYear(given.J as number) }
  const extraterrestrial = extraterrestrialRadiationFao56(place)
  const temperatures = { maxTemperature: celsius(given.tmax as number), minTemperature: celsius(given.tmin as number) }
  const solar = solarRadiationFromTemperatureFao56({
    ...temperatures,
    extraterrestrial,
    adjustment: given.krs as number,
  })
  return { extraterrestrial, temperatures, solar }
}
checkPublished('evapotranspiration', 'solar_radiation_from_temperature', (given) => {
  const { extraterrestrial, solar } = fromTemperature(given)
  return { Ra: extraterrestrial, Rs: solar, Rs_mm: evaporationOfDailyEnergy({ energy: solar }) }
})
checkPublished('evapotranspiration', 'net_radiation_missing_data', (given) => {
  const { extraterrestrial, temperatures, solar } = fromTemperature(given)
  // The example gives no elevation; its clear-sky radiation is 0.75 of the extraterrestrial one.
  const clearSky = clearSkyRadiationFao56({ extraterrestrial, elevation: metresAboveSeaLevel(0) })
  const Rns = netShortwaveRadiationFao56({ solar })
  const Rnl = netLongwaveRadiationFao56({
    ...temperatures,
    actualVapourPressure: kilopascals(given.ea),
    relativeShortwave: solar / clearSky,
  })
  const Rn = Rns - Rnl
  const Rn_mm = evaporationOfDailyEnergy({ energy: megajoulesPerSquareMetreDay(Rn) })
  return { Ra: extraterrestrial, Rs: solar, Rso: clearSky, Rns, Rnl, Rn, Rn_mm }
})
checkPublished('evapotranspiration', 'solar_radiation_island', ({ Ra, b }) => ({
  Rs: solarRadiationOnIslandFao56({
    extraterrestrial: megajoulesPerSquareMetreDay(Ra),
    base: megajoulesPerSquareMetreDay(b),
  }),
}))

const latitudes = fc.double({ min: -90, max: 90, noNaN: true }).map(latitude)
const yearDays = fc.integer({ min: 1, max: 365 }).map(dayOfYear)

describe('day of the year', () => {
  it('agrees with the calendar of the engine for 800 years (independent oracle)', () => {
    for (let day = -150000; day < 150000; day += 37) {
      const date = new Date(day * 86400000)
      const start = Date.UTC(date.getUTCFullYear(), 0, 1)
      const expected = (day * 86400000 - start) / 86400000 + 1
      expect(dayOfInstant(instant(day * 86400 + 3600))).toBe(expected)
      const at = { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() }
      expect(dayOfDate(at)).toBe(expected)
    }
  })
  it('knows leap years and refuses days that are not there', () => {
    expect(dayOfDate({ year: 2000, month: 12, day: 31 })).toBe(366)
    expect(dayOfDate({ year: 1900, month: 12, day: 31 })).toBe(365)
    expect(dayOfDate({ year: 2024, month: 2, day: 29 })).toBe(60)
    expectInputError(() => dayOfDate({ year: 2023, month: 2, day: 29 }), 'day')
    expectInputError(() => dayOfDate({ month: 4, day: 31 }), 'day')
    expectDomainError(() => dayOfDate({ month: 13, day: 1 }), { quantity: 'month' })
  })
})

describe('the sun', () => {
  it('is up as long in one hemisphere as it is down in the other', () => {
    fc.assert(
      fc.property(latitudes, yearDays, (north, day) => {
        const here = dayLengthFao56({ latitude: north, day })
        const there = dayLengthFao56({ latitude: latitude(-north), day })
        expect(here + there).toBeCloseTo(86400, 4)
      }),
    )
  })
  it('gives no radiation in the polar night, and all day in the polar day', () => {
    const night = { latitude: latitude(80), day: dayOfYear(355) }
    expect(dayLengthFao56(night)).toBe(0)
    expect(extraterrestrialRadiationFao56(night)).toBe(0)
    const day = { latitude: latitude(80), day: dayOfYear(172) }
    expect(dayLengthFao56(day)).toBe(86400)
    for (let hour = 0; hour < 24; hour++) {
      const place = { ...day, longitude: longitude(0), zoneLongitude: longitude(0), middle: hours(hour + 0.5) }
      expect(extraterrestrialRadiationHourFao56(place)).toBeGreaterThan(0)
      expect(extraterrestrialRadiationHourFao56({ ...place, day: night.day })).toBe(0)
    }
    // A polar day goes on over midnight: 24 periods that begin at any minute give what the day gives.
    for (const from of [0, 7, 30, 53]) {
      let sum = 0
      for (let hour = 0; hour < 24; hour++) {
        const middle = minutes((60 * hour + from) % 1440)
        sum += extraterrestrialRadiationHourFao56({
          ...day,
          longitude: longitude(0),
          zoneLongitude: longitude(0),
          middle,
        })
      }
      expect(sum, `${from} min`).toBeCloseTo(extraterrestrialRadiationFao56(day), 8)
    }
  })
  it('gives in the hours of a day what it gives in the day', () => {
    fc.assert(
      fc.property(latitudes, yearDays, fc.double({ min: -180, max: 180, noNaN: true }), (place, day, east) => {
        let sum = 0
        for (let half = 0; half < 48; half++) {
          sum += extraterrestrialRadiationHourFao56({
            latitude: place,
            longitude: longitude(east),
            zoneLongitude: longitude(15 * Math.round(east / 15)),
            day,
            middle: minutes(30 * half + 15),
            duration: minutes(30),
          })
        }
        expect(sum).toBeCloseTo(extraterrestrialRadiationFao56({ latitude: place, day }), 8)
      }),
      { numRuns: 60 },
    )
  })
  it('stands highest at solar noon', () => {
    const noon = solarHourFao56({
      latitude: latitude(40),
      longitude: longitude(0),
      zoneLongitude: longitude(0),
      day: dayOfYear(172),
      middle: hours(12),
    })
    // At the solstice: 90° less the latitude plus 23.44°; the seasonal correction is below two minutes.
    expect((noon.sunElevation * 180) / Math.PI).toBeCloseTo(73.4, 0)
    expect(Math.abs(noon.seasonalCorrection)).toBeLessThan(120)
  })
})

describe('solar radiation where it is not measured', () => {
  it('from sunshine is undone by its inverse', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        const extraterrestrial = megajoulesPerSquareMetreDay(30)
        const dayLength = hours(12)
        const sunshine = hours(12 * share)
        const solar = solarRadiationFromSunshineFao56({ sunshine, dayLength, extraterrestrial })
        expect(sunshineFromSolarRadiationFao56({ solar, extraterrestrial, dayLength })).toBeCloseTo(sunshine, 8)
      }),
    )
  })
  it('takes the coefficients of a site that was calibrated', () => {
    const day = { sunshine: hours(6), dayLength: hours(12), extraterrestrial: megajoulesPerSquareMetreDay(30) }
    expect(solarRadiationFromSunshineFao56({ ...day, overcastShare: 0.2, sunshineShare: 0.6 })).toBeCloseTo(15, 12)
    expectDomainError(() => solarRadiationFromSunshineFao56({ ...day, overcastShare: 25 }), { min: 0, max: 0.6 })
  })
  it('is never below zero on an island, and refuses swapped temperatures', () => {
    expect(solarRadiationOnIslandFao56({ extraterrestrial: megajoulesPerSquareMetreDay(2) })).toBe(0)
    expectInputError(
      () =>
        solarRadiationFromTemperatureFao56({
          maxTemperature: celsius(10),
          minTemperature: celsius(20),
          extraterrestrial: megajoulesPerSquareMetreDay(30),
          adjustment: 0.16,
        }),
      'minTemperature',
    )
  })
})

describe('heat of hours and months', () => {
  it('is that of FAO-56, Example 13: 0.33 MJ/m² a day in April', () => {
    expect(soilHeatOfMonthFao56({ before: celsius(14.1), after: celsius(18.8) })).toBeCloseTo(0.33, 2)
  })
  it('of warming soil is that of the monthly form for the depths that it stands for (FAO-56: 0.14 is 2.1 MJ/m³/K over 2 m in 30 days)', () => {
    const warming = { change: kelvinsOfChange(2), time: days(30), depth: metres(2) }
    expect(soilHeatOfWarmingFao56(warming)).toBeCloseTo(
      soilHeatOfCurrentMonthFao56({ before: celsius(14), current: celsius(16) }),
      12,
    )
    expect(soilHeatOfWarmingFao56({ ...warming, change: kelvinsOfChange(-2) })).toBeLessThan(0)
  })
  it('goes into the ground by day and comes out at night', () => {
    expect(soilHeatHourFao56({ netRadiation: megajoulesPerSquareMetreHour(1.749), daylight: true })).toBeCloseTo(
      0.175,
      3,
    )
    expect(soilHeatHourFao56({ netRadiation: megajoulesPerSquareMetreHour(-0.1), daylight: false })).toBeCloseTo(
      -0.05,
      12,
    )
  })
  it('of 24 equal hours is that of the day', () => {
    const hour = { temperature: celsius(20), actualVapourPressure: kilopascals<never>(1.5), relativeShortwave: 0.7 }
    const day = {
      maxTemperature: celsius(20),
      minTemperature: celsius(20),
      actualVapourPressure: kilopascals<never>(1.5),
      relativeShortwave: 0.7,
    }
    // The printed constants of hour and day, 2.043e-10 and 4.903e-9, agree to 1e-4.
    expect((24 * netLongwaveRadiationHourFao56(hour)) / netLongwaveRadiationFao56(day)).toBeCloseTo(1, 3)
    expectDomainError(() => netLongwaveRadiationHourFao56({ ...hour, relativeShortwave: -0.1 }))
  })
})

describe('wind at another height', () => {
  it('is undone by the reduction to two metres', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0.5, max: 50, noNaN: true }),
        (u, z) => {
          const speed = windSpeedAtHeightFao56({ speedAtTwoMetres: metresPerSecond(u), height: metres(z) })
          expect(windSpeedAtTwoMetresFao56({ speed, height: metres(z) })).toBeCloseTo(u, 10)
        },
      ),
    )
  })
})
