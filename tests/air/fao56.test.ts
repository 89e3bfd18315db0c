import fc from 'fast-check'
import {
  actualVapourPressureFao56,
  atmosphericPressureFao56,
  celsius,
  centimetres,
  clearSkyRadiationFao56,
  dayLengthFao56,
  dayOfYear,
  dewPointFao56,
  extraterrestrialRadiationFao56,
  inHours,
  kilopascals,
  latitude,
  meanSaturationVapourPressureFao56,
  megajoulesPerSquareMetreDay,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  netLongwaveRadiationFao56,
  netShortwaveRadiationFao56,
  percent,
  psychrometricConstantFao56,
  saturationVapourPressureFao56,
  slopeOfSaturationVapourPressureFao56,
  solarGeometryFao56,
  vapourPressureDeficit,
  windSpeedAtTwoMetresFao56,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const FILE = 'evapotranspiration'
checkPublished(FILE, 'pressure', ({ z }) => ({ P: atmosphericPressureFao56(metresAboveSeaLevel(z)) }))
checkPublished(FILE, 'psychrometric_constant', ({ z }) => ({
  gamma: psychrometricConstantFao56(atmosphericPressureFao56(metresAboveSeaLevel(z))),
}))
checkPublished(FILE, 'saturation_vapour_pressure', ({ t }) => ({ e0: saturationVapourPressureFao56(celsius(t)) }))
checkPublished(FILE, 'slope_vapour_pressure', ({ t }) => ({ delta: slopeOfSaturationVapourPressureFao56(celsius(t)) }))
checkPublished(FILE, 'mean_saturation_vapour_pressure', ({ tmax, tmin }) => ({
  e0_max: saturationVapourPressureFao56(celsius(tmax)),
  e0_min: saturationVapourPressureFao56(celsius(tmin)),
  es: meanSaturationVapourPressureFao56({ maxTemperature: celsius(tmax), minTemperature: celsius(tmin) }),
  e0_of_mean: saturationVapourPressureFao56(celsius((tmax + tmin) / 2)),
}))
const humidityDay = ({ tmin, tmax, rhmax, rhmin }: Record<string, number>) => ({
  maxTemperature: celsius(tmax as number),
  minTemperature: celsius(tmin as number),
  maxHumidity: percent(rhmax as number),
  minHumidity: percent(rhmin as number),
})
checkPublished(FILE, 'ea_from_rh', (given) => ({ ea: actualVapourPressureFao56(humidityDay(given) as never) }))
checkPublished(FILE, 'vapour_pressure_deficit', (given) => {
  const day = humidityDay(given) as never
  return {
    vpd: vapourPressureDeficit({
      saturation: meanSaturationVapourPressureFao56(day),
      actual: actualVapourPressureFao56(day),
    }),
  }
})
checkPublished(FILE, 'ea_from_dewpoint', ({ tdew }) => ({ ea: saturationVapourPressureFao56(celsius(tdew)) }))
checkPublished(FILE, 'dewpoint_from_ea', ({ ea }) => ({ tdew: dewPointFao56(kilopascals(ea)) }))
checkPublished(FILE, 'latitude_to_radians', ({ deg, min }) => {
  const decimal = deg + (Math.sign(deg) * min) / 60
  return { decimal, phi: solarGeometryFao56({ latitude: latitude(decimal), day: dayOfYear(1) }).latitude }
})
checkPublished(FILE, 'extraterrestrial_radiation', ({ lat_deg, J }) => {
  const place = { latitude: latitude(lat_deg), day: dayOfYear(J) }
  const { latitude: phi, inverseDistance: dr, declination: dec, sunsetHourAngle: ws } = solarGeometryFao56(place)
  const Ra = extraterrestrialRadiationFao56(place)
  return {
    phi,
    dr,
    dec,
    ws,
    sinsin: Math.sin(phi) * Math.sin(dec),
    coscos: Math.cos(phi) * Math.cos(dec),
    Ra,
    Ra_mm: 0.408 * Ra,
  }
})
checkPublished(FILE, 'daylight_hours', ({ lat_deg, J }) => ({
  N: inHours(dayLengthFao56({ latitude: latitude(lat_deg), day: dayOfYear(J) })),
}))
checkPublished(FILE, 'net_longwave', ({ tmax, tmin, ea, Rs, Ra }) => {
  const clearSky = clearSkyRadiationFao56({
    extraterrestrial: megajoulesPerSquareMetreDay(Ra),
    elevation: metresAboveSeaLevel(0),
  })
  const relativeShortwave = Rs / clearSky
  return {
    sigT4max: 4.903e-9 * (tmax + 273.16) ** 4,
    sigT4min: 4.903e-9 * (tmin + 273.16) ** 4,
    humidity_factor: 0.34 - 0.14 * Math.sqrt(ea),
    Rs_over_Rso: relativeShortwave,
    cloud_factor: 1.35 * relativeShortwave - 0.35,
    Rnl: netLongwaveRadiationFao56({
      maxTemperature: celsius(tmax),
      minTemperature: celsius(tmin),
      actualVapourPressure: kilopascals(ea),
      relativeShortwave,
    }),
  }
})
checkPublished(FILE, 'net_radiation', ({ Rs, Rnl }) => {
  const Rns = netShortwaveRadiationFao56({ solar: megajoulesPerSquareMetreDay(Rs) })
  return { Rns, Rn: Rns - Rnl }
})
checkPublished(FILE, 'wind_profile', ({ z, uz }) => {
  const factor = windSpeedAtTwoMetresFao56({ speed: metresPerSecond(1), height: metres(z) })
  return { factor, u2: factor * (uz ?? 1) }
})

const temperatures = fc.double({ min: -40, max: 60, noNaN: true }).map(celsius)
const latitudes = fc.double({ min: -90, max: 90, noNaN: true })
const days = fc.integer({ min: 1, max: 365 }).map(dayOfYear)

describe('humid air', () => {
  it('has a saturation pressure that rises with temperature, with the slope of Eq. 13', () => {
    fc.assert(
      fc.property(temperatures, (t) => {
        const [low, high] = [celsius(t - 0.001), celsius(t + 0.001)]
        const difference = (saturationVapourPressureFao56(high) - saturationVapourPressureFao56(low)) / 0.002
        expect(difference).toBeGreaterThan(0)
        // 4098 is 17.27 x 237.3 = 4098.17 rounded, hence the 1e-4.
        expect(Math.abs(difference / slopeOfSaturationVapourPressureFao56(t) - 1)).toBeLessThan(1e-4)
      }),
    )
  })
  it('has a dew point that undoes the saturation pressure', () => {
    fc.assert(
      fc.property(temperatures, (t) => {
        expect(Math.abs(dewPointFao56(saturationVapourPressureFao56(t)) - t)).toBeLessThan(1e-11)
      }),
    )
  })
  it('refuses swapped pairs and impossible humidity', () => {
    const day = {
      maxTemperature: celsius(25),
      minTemperature: celsius(18),
      maxHumidity: percent(82),
      minHumidity: percent(54),
    } as const
    expectInputError(
      () => meanSaturationVapourPressureFao56({ maxTemperature: celsius(10), minTemperature: celsius(20) }),
      'minTemperature',
    )
    expectInputError(
      () => actualVapourPressureFao56({ ...day, maxHumidity: percent(10), minHumidity: percent(54) }),
      'minHumidity',
    )
    expectInputError(
      () =>
        actualVapourPressureFao56({
          maxTemperature: celsius(10),
          minTemperature: celsius(18),
          maxHumidity: percent(82),
          minHumidity: percent(54),
        }),
      'minTemperature',
    )
    expectDomainError(
      () =>
        actualVapourPressureFao56({
          maxTemperature: celsius(25),
          minTemperature: celsius(18),
          maxHumidity: 82 as never,
          minHumidity: percent(54),
        }),
      { quantity: 'relative humidity' },
    )
    expectDomainError(() => windSpeedAtTwoMetresFao56({ speed: metresPerSecond(2), height: centimetres(7) }), {
      quantity: 'height of the anemometer',
    })
  })
})

describe('the sun', () => {
  it('gives both hemispheres days that sum to 24 hours', () => {
    fc.assert(
      fc.property(latitudes, days, (phi, day) => {
        const north = inHours(dayLengthFao56({ latitude: latitude(phi), day }))
        const south = inHours(dayLengthFao56({ latitude: latitude(-phi), day }))
        expect(north + south).toBeCloseTo(24, 9)
      }),
    )
  })
  it('never sets in the polar summer and never rises in the polar winter', () => {
    expect(inHours(dayLengthFao56({ latitude: latitude(80), day: dayOfYear(172) }))).toBe(24)
    expect(inHours(dayLengthFao56({ latitude: latitude(-80), day: dayOfYear(172) }))).toBe(0)
    expect(extraterrestrialRadiationFao56({ latitude: latitude(-80), day: dayOfYear(172) })).toBe(0)
    expect(extraterrestrialRadiationFao56({ latitude: latitude(80), day: dayOfYear(172) })).toBeGreaterThan(40)
  })
  it('gives radiation that is finite and not negative everywhere', () => {
    fc.assert(
      fc.property(latitudes, days, (phi, day) => {
        const radiation = extraterrestrialRadiationFao56({ latitude: latitude(phi), day })
        expect(radiation).toBeGreaterThanOrEqual(0)
        expect(radiation).toBeLessThan(50)
      }),
    )
  })
})
