import fc from 'fast-check'
import {
  atmosphericPressureFao56,
  celsius,
  type DailyWeather,
  dailyReferenceETAsce2005,
  dailyReferenceETFao56,
  dayOfYear,
  explainDemandFinding,
  extraterrestrialRadiationFao56,
  type HourlyWeather,
  hourlyReferenceETAsce2005,
  hourlyReferenceETFao56,
  hourlySeriesAsce2005,
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
  millimetresPerDay,
  monthlyReferenceETFao56,
  type PanEvaporation,
  panCoefficientInGrass,
  panCoefficientOnBareGround,
  percent,
  referenceETFromPan,
  referenceETHargreaves1985,
  referenceETPriestleyTaylor1972,
  solarHourFao56,
  validityOf,
  validityPanCoefficient,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const FILE = 'evapotranspiration'
const site = (given: Record<string, number>) => ({
  latitude: latitude(given.lat_deg as number),
  elevation: metresAboveSeaLevel(given.z as number),
  day: dayOfYear(given.J as number),
})
const windAt = (speed: number, height = 2) => ({ speed: metresPerSecond(speed), height: metres(height) })

checkPublished(FILE, 'eto_missing_data', (given) => {
  const day = dailyReferenceETFao56({
    ...site(given),
    maxTemperature: celsius(given.tmax),
    minTemperature: celsius(given.tmin),
    wind: windAt(given.u2),
    exposure: given.krs === 0.19 ? 'coastal' : 'interior',
  })
  const denominator = day.slope + day.psychrometricConstant * (1 + 0.34 * day.windSpeed)
  return {
    delta: day.slope,
    gamma: day.psychrometricConstant,
    weight_rad: day.slope / denominator,
    weight_aero: day.psychrometricConstant / denominator,
    c900: (900 / (day.meanTemperature + 273)) * day.windSpeed,
    ea: day.actual,
    es: day.saturation,
    vpd: day.deficit,
    Ra: day.extraterrestrial,
    Rs: day.solar,
    Rso: day.clearSky,
    Rns: day.netShortwave,
    Rnl: day.netLongwave,
    Rn: day.netRadiation,
    ETo_rad: day.radiationPart,
    ETo_aero: day.aerodynamicPart,
    ETo: day.referenceET,
  }
})

const hourOf = (given: Record<string, number>) => ({
  ...site(given),
  longitude: longitude(-(given.Lm as number)),
  zoneLongitude: longitude(-(given.Lz as number)),
  middle: hours(given.t_mid as number),
  temperature: celsius(given.t as number),
  solar: megajoulesPerSquareMetreHour(given.Rs as number),
})

checkPublished(FILE, 'eto_hourly', (given) => {
  const weather = { ...hourOf(given), relativeHumidity: percent(given.rh), wind: windAt(given.u2) } as HourlyWeather
  const hour = hourlyReferenceETFao56(weather)
  const sun = solarHourFao56(weather)
  return {
    phi: sun.latitude,
    delta: hour.slope,
    gamma: hour.psychrometricConstant,
    e0: hour.saturation,
    ea: hour.actual,
    vpd: hour.deficit,
    dr: sun.inverseDistance,
    dec: sun.declination,
    b: sun.seasonAngle,
    Sc: sun.seasonalCorrection / 3600,
    omega: sun.middleAngle,
    omega1: sun.startAngle,
    omega2: sun.endAngle,
    Ra: hour.extraterrestrial,
    Rso: hour.clearSky,
    Rs_over_Rso: hour.relativeShortwave,
    Rns: hour.netShortwave,
    sigT4: 2.043e-10 * (given.t + 273.16) ** 4,
    Rnl: hour.netLongwave,
    Rn: hour.netRadiation,
    G: hour.soilHeat,
    ETo_rad: hour.radiationPart,
    ETo_aero: hour.aerodynamicPart,
    ETo: hour.referenceET,
  }
})

checkPublished(FILE, 'asce_daily', (given) => {
  const day = dailyReferenceETAsce2005({
    ...site(given),
    maxTemperature: celsius(given.tmax),
    minTemperature: celsius(given.tmin),
    vapourPressure: kilopascals(given.ea),
    solar: megajoulesPerSquareMetreDay(given.Rs),
    wind: windAt(given.u, given.zw),
  })
  return {
    Ra: day.extraterrestrial,
    Rso: day.clearSky,
    Rnl: day.netLongwave,
    Rn: day.netRadiation,
    ETos: day.short,
    ETrs: day.tall,
  }
})
checkPublished(FILE, 'asce_hourly', (given) => {
  const hour = hourlyReferenceETAsce2005({
    ...hourOf(given),
    vapourPressure: kilopascals(given.ea),
    wind: windAt(given.u, given.zw),
  })
  return {
    Ra: hour.extraterrestrial,
    Rnl: hour.netLongwave,
    Rn: hour.netRadiation,
    ETos: hour.short,
    ETrs: hour.tall,
  }
})
checkPublished(FILE, 'hargreaves', (given) => ({
  ETo: referenceETHargreaves1985({
    maxTemperature: celsius(given.tmax),
    minTemperature: celsius(given.tmin),
    extraterrestrial: extraterrestrialRadiationFao56({ latitude: latitude(given.lat_deg), day: dayOfYear(given.J) }),
  }),
}))
checkPublished(FILE, 'priestley_taylor', (given) => ({
  ET: referenceETPriestleyTaylor1972({
    netRadiation: megajoulesPerSquareMetreDay(given.Rn),
    soilHeat: megajoulesPerSquareMetreDay(given.G),
    temperature: celsius(given.t),
    pressure: atmosphericPressureFao56(metresAboveSeaLevel(given.z)),
    coefficient: given.alpha,
  }),
}))
checkPublished(FILE, 'pan_eto', ({ E, Kp }) => {
  const Epan = (E as number[]).reduce((sum, e) => sum + e, 0) / E.length
  return { Epan, ETo: referenceETFromPan({ evaporation: millimetresPerDay<PanEvaporation>(Epan), coefficient: Kp }) }
})

const uccle: DailyWeather = {
  latitude: latitude(50.8),
  elevation: metresAboveSeaLevel(100),
  day: dayOfYear(187),
  maxTemperature: celsius(21.5),
  minTemperature: celsius(12.3),
  maxHumidity: percent(84),
  minHumidity: percent(63),
  sunshine: hours(9.25),
  wind: windAt(2.078),
}

describe('a day with what is known', () => {
  it('assumes nothing where everything is given', () => {
    const day = dailyReferenceETFao56(uccle)
    expect(day.referenceET).toBeCloseTo(3.88, 2)
    expect(day.assumedInputs).toEqual([])
    expect(day.findings).toEqual([])
    expect(day.radiationPart + day.aerodynamicPart).toBeCloseTo(day.referenceET, 12)
  })
  it('names all that it assumes, with the value that it took', () => {
    const { latitude, elevation, day, maxTemperature: highest, minTemperature: lowest } = uccle
    const bare = dailyReferenceETFao56({ latitude, elevation, day, maxTemperature: highest, minTemperature: lowest })
    expect(bare.assumedInputs.map((finding) => finding.code)).toEqual([
      'assumed-humidity',
      'assumed-radiation',
      'assumed-wind',
    ])
    expect(bare.assumedInputs[0]?.value).toBe(bare.actual)
    expect(bare.assumedInputs[1]?.value).toBe(bare.solar)
    expect(bare.assumedInputs[2]?.value).toBe(bare.windSpeed)
    expect(bare.assumedInputs.map((finding) => explainDemandFinding(finding).message)).toEqual([
      expect.stringMatching(/^no humidity is given: the dew point is taken 0 K below .* makes \d\.\d\d kPa$/),
      expect.stringMatching(/^neither radiation nor sunshine is given: \d+\.\d MJ\/m²\/d .* called interior/),
      'no wind is given: 2 m/s at 2 m is assumed',
    ])
    expectInputError(() => explainDemandFinding({ ...bare.assumedInputs[2], code: 'rain' } as never), 'finding')
    const dry = dailyReferenceETFao56({
      latitude,
      elevation,
      day,
      maxTemperature: highest,
      minTemperature: lowest,
      aridity: kelvinsOfChange(2),
    })
    expect(dry.referenceET).toBeGreaterThan(bare.referenceET)
    const coast = dailyReferenceETFao56({
      latitude,
      elevation,
      day,
      maxTemperature: highest,
      minTemperature: lowest,
      exposure: 'coastal',
    })
    expect(coast.solar / bare.solar).toBeCloseTo(0.19 / 0.16, 12)
    const island = dailyReferenceETFao56({
      latitude,
      elevation,
      day,
      maxTemperature: highest,
      minTemperature: lowest,
      exposure: 'island',
    })
    expect(island.solar).toBeCloseTo(0.7 * island.extraterrestrial - 4, 12)
    expectInputError(
      () =>
        dailyReferenceETFao56({
          latitude,
          elevation,
          day,
          maxTemperature: highest,
          minTemperature: lowest,
          exposure: 'desert' as never,
        }),
      'exposure',
    )
  })
  it('takes humidity in the order of FAO-56, and guards also what it does not take', () => {
    const all = {
      ...uccle,
      vapourPressure: kilopascals<never>(1.4),
      dewPoint: celsius(11),
      meanHumidity: percent<never>(70),
    }
    expect(dailyReferenceETFao56(all).actual).toBe(1.4)
    const { vapourPressure, ...dew } = all
    expect(dailyReferenceETFao56(dew).actual).toBeCloseTo(1.313, 3)
    const { dewPoint, ...pair } = dew
    expect(dailyReferenceETFao56(pair).actual).toBeCloseTo(1.409, 3)
    const { minHumidity, ...night } = pair
    expect(dailyReferenceETFao56(night).actual).toBeCloseTo(0.84 * 1.431, 3)
    const { maxHumidity, ...mean } = night
    expect(dailyReferenceETFao56(mean).actual).toBeCloseTo(0.7 * 1.997, 3)
    expectDomainError(() => dailyReferenceETFao56({ ...all, meanHumidity: 70 as never }), {
      quantity: 'relative humidity',
    })
    expectDomainError(() => dailyReferenceETFao56({ ...all, dewPoint: Number.NaN as never }))
    expectInputError(() => dailyReferenceETFao56({ ...uccle, maxTemperature: celsius(5) }), 'minTemperature')
  })
  it('rises with radiation and with dry air, in both methods', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 2, max: 25, noNaN: true }),
        fc.double({ min: 2, max: 25, noNaN: true }),
        fc.double({ min: 0.3, max: 1.9, noNaN: true }),
        fc.double({ min: 0.3, max: 1.9, noNaN: true }),
        (r1, r2, e1, e2) => {
          fc.pre(r2 - r1 > 0.01 && e2 - e1 > 0.01)
          const of = (r: number, e: number) => ({
            ...uccle,
            solar: megajoulesPerSquareMetreDay(r),
            vapourPressure: kilopascals<never>(e),
          })
          for (const et of [
            (day: DailyWeather) => dailyReferenceETFao56(day).referenceET,
            (day: DailyWeather) => dailyReferenceETAsce2005(day).short,
            (day: DailyWeather) => dailyReferenceETAsce2005(day).tall,
          ]) {
            // More radiation also means fewer clouds, but the surface always gains.
            expect(et(of(r2, e1))).toBeGreaterThan(et(of(r1, e1)))
          }
          // Humid air also keeps longwave radiation in; with wind the dryness wins.
          expect(dailyReferenceETAsce2005(of(r1, e1)).tall).toBeGreaterThan(dailyReferenceETAsce2005(of(r1, e2)).tall)
        },
      ),
    )
  })
  it('is almost the same by FAO-56 and by ASCE for grass (ASCE-EWRI 2005: same daily equation)', () => {
    const fao = dailyReferenceETFao56(uccle).referenceET
    expect(dailyReferenceETAsce2005(uccle).short / fao).toBeCloseTo(1, 3)
    expect(dailyReferenceETAsce2005(uccle).tall).toBeGreaterThan(fao)
  })
  it('answers in the polar night and says what it assumed there', () => {
    const night = { ...uccle, latitude: latitude(80), day: dayOfYear(355), sunshine: hours(0) }
    for (const day of [dailyReferenceETFao56(night), dailyReferenceETAsce2005(night)]) {
      expect(day.extraterrestrial).toBe(0)
      expect(day.solar).toBe(0)
      expect(day.findings).toMatchObject([{ code: 'no-sun' }])
    }
  })
  it('doubts air above saturation and radiation above that of a clear sky', () => {
    const wet = dailyReferenceETFao56({
      ...uccle,
      vapourPressure: kilopascals(2.5),
      solar: megajoulesPerSquareMetreDay(38),
    })
    expect(wet.findings.map((finding) => finding.code)).toEqual(['brighter-than-clear-sky', 'air-above-saturation'])
    expect(wet.findings[0]).toMatchObject({ value: 38, limit: wet.clearSky, unit: 'MJ/m²/d' })
    expect(wet.findings.map((finding) => explainDemandFinding(finding).message)).toEqual([
      expect.stringMatching(/^the solar radiation of 38 MJ\/m²\/d is above that of a clear sky, 30\.\d MJ/),
      expect.stringMatching(/above saturation \(a deficit of -0\.\d+ kPa\)/),
    ])
  })
  it('doubts a July day without radiation, and not the darkest of days', () => {
    const { sunshine, ...place } = uccle
    const lit = (solar: number) =>
      dailyReferenceETFao56({ ...place, solar: megajoulesPerSquareMetreDay(solar) }).findings
    expect(lit(0)).toMatchObject([{ code: 'darker-than-overcast', level: 'caution', value: 0 }])
    expect(lit(1.5)).toEqual([])
    expect(
      dailyReferenceETAsce2005({ ...place, solar: megajoulesPerSquareMetreDay(0) }).findings.map(({ code }) => code),
    ).toEqual(['darker-than-overcast'])
  })
})

describe('a month', () => {
  it('is that of FAO-56, Example 17: Bangkok in April, 5.72 mm a day', () => {
    const april = monthlyReferenceETFao56({
      latitude: latitude(13.733333),
      elevation: metresAboveSeaLevel(2),
      month: 4,
      maxTemperature: celsius(34.8),
      minTemperature: celsius(25.6),
      before: celsius(29.2),
      vapourPressure: kilopascals(2.85),
      sunshine: hours(8.5),
      wind: windAt(2),
    })
    expect(april.soilHeat).toBeCloseTo(0.14, 10)
    expect(april.netRadiation).toBeCloseTo(14.33, 1)
    expect(april.referenceET).toBeCloseTo(5.72, 2)
    expect(april.assumedInputs).toEqual([])
  })
  it('says when the neighbours are not known, and uses both where they are', () => {
    const { day, ...july } = uccle
    const alone = monthlyReferenceETFao56({ ...july, month: 7 })
    expect(alone.assumedInputs).toMatchObject([{ code: 'assumed-soil-heat' }])
    const known = monthlyReferenceETFao56({ ...july, month: 7, before: celsius(15), after: celsius(17) })
    expect(known.soilHeat).toBeCloseTo(0.14, 12)
  })
})

const dakar: HourlyWeather = {
  latitude: latitude(16.216667),
  longitude: longitude(-16.25),
  zoneLongitude: longitude(-15),
  elevation: metresAboveSeaLevel(8),
  day: dayOfYear(274),
  middle: hours(2.5),
  temperature: celsius(28),
  relativeHumidity: percent(90),
  solar: megajoulesPerSquareMetreHour(0),
  wind: windAt(1.9),
}

describe('an hour', () => {
  it('of the night is that of FAO-56, Example 19: 0.00 mm from 2 to 3 h, with 0.8 from before sunset', () => {
    const night = hourlyReferenceETFao56({ ...dakar, relativeShortwaveBeforeSunset: 0.8 })
    expect(night.netLongwave).toBeCloseTo(0.1, 2)
    expect(night.netRadiation).toBeCloseTo(-0.1, 2)
    expect(night.soilHeat).toBeCloseTo(-0.05, 2)
    expect(night.referenceET).toBeCloseTo(0, 2)
    expect(night.assumedInputs).toEqual([])
    expect(hourlyReferenceETFao56(dakar).assumedInputs).toMatchObject([{ code: 'assumed-cloudiness', value: 0.7 }])
    expect(hourlyReferenceETAsce2005(dakar).assumedInputs).toMatchObject([{ code: 'assumed-cloudiness', value: 0.7 }])
  })
  it('doubts the sun at half past two, more than a clear sky, none at noon, and vapour above saturation', () => {
    const noon = { ...dakar, middle: hours(12.5), temperature: celsius(34) }
    for (const method of [hourlyReferenceETFao56, hourlyReferenceETAsce2005]) {
      const codes = (weather: HourlyWeather) => method(weather).findings.map(({ code }) => code)
      const lit = (solar: number) => codes({ ...noon, solar: megajoulesPerSquareMetreHour(solar) })
      expect(codes(dakar)).toEqual([])
      expect(codes({ ...dakar, solar: megajoulesPerSquareMetreHour(1) })).toEqual(['light-without-sun'])
      expect(lit(1.76 * method(noon).clearSky)).toEqual(['brighter-than-clear-sky'])
      expect(lit(method(noon).clearSky)).toEqual([])
      expect(lit(0)).toEqual(['darker-than-overcast'])
      expect(codes({ ...dakar, vapourPressure: kilopascals(4) })).toEqual(['air-above-saturation'])
    }
  })
  it('doubts a zone longitude of the wrong sign, and no zone in use that is only wide', () => {
    const afternoon = { ...dakar, middle: hours(14.5), solar: megajoulesPerSquareMetreHour(2.45) }
    const zoned = (site: number, zone: number) =>
      hourlyReferenceETFao56({ ...afternoon, longitude: longitude(site), zoneLongitude: longitude(zone) }).findings
    expect(zoned(-16.25, 15)).toMatchObject([{ code: 'zone-far-from-site', value: 31.25, limit: 25, unit: '°' }])
    expect(explainDemandFinding(zoned(-16.25, 15)[0] as never).message).toContain('31.3° from the site')
    // Standard time in Galicia, in Iceland, and on both sides of the date line.
    for (const [site, zone] of [
      [-16.25, -15],
      [-9.3, 15],
      [-22, 0],
      [-175, -165],
      [-172, 180],
    ] as const)
      expect(zoned(site, zone).filter(({ code }) => code === 'zone-far-from-site')).toEqual([])
    expectInputError(() => explainDemandFinding({ code: 'fog' } as never), 'finding')
  })
  it('takes 50 and 200 s/m by day and night on wish (Allen and others 2006; ASCE-EWRI 2005 has the same for its short surface)', () => {
    const noon = {
      ...dakar,
      middle: hours(14.5),
      solar: megajoulesPerSquareMetreHour(2.45),
      relativeShortwaveBeforeSunset: 0.8,
    }
    for (const weather of [noon, { ...dakar, relativeShortwaveBeforeSunset: 0.8 }]) {
      const wished = hourlyReferenceETFao56({ ...weather, surfaceResistance: '50-and-200' }).referenceET
      expect(Math.abs(wished - hourlyReferenceETAsce2005(weather).short)).toBeLessThan(0.002)
      expect(hourlyReferenceETFao56({ ...weather, surfaceResistance: '70' })).toEqual(hourlyReferenceETFao56(weather))
    }
    expect(hourlyReferenceETFao56({ ...noon, surfaceResistance: '50-and-200' }).referenceET).toBeGreaterThan(
      hourlyReferenceETFao56(noon).referenceET,
    )
    expectInputError(() => hourlyReferenceETFao56({ ...noon, surfaceResistance: '60' as never }), 'surfaceResistance')
  })
  it('needs a humidity of some kind', () => {
    const { relativeHumidity: humidity, ...dry } = dakar
    expectInputError(() => hourlyReferenceETFao56(dry), 'relativeHumidity')
    expect(hourlyReferenceETAsce2005({ ...dry, dewPoint: celsius(20) }).actual).toBeCloseTo(2.338, 3)
  })
})

describe('a pan', () => {
  // FAO-56, Table 5 [cells from memory]: wind in m/s, fetch in m, then mean humidity low, medium and high. The classes of wind are below 2,
  // 2 to 5, 5 to 8 and above 8 m/s, those of humidity below 40, 40 to 70 and above 70 %; the equations were fitted to the middles.
  const fetches = [1, 10, 100, 1000]
  it.each([
    [1, [0.55, 0.65, 0.75], [0.65, 0.75, 0.85], [0.7, 0.8, 0.85], [0.75, 0.85, 0.85]],
    [3.5, [0.5, 0.6, 0.65], [0.6, 0.7, 0.75], [0.65, 0.75, 0.8], [0.7, 0.8, 0.8]],
    [6.5, [0.45, 0.5, 0.6], [0.55, 0.6, 0.65], [0.6, 0.65, 0.7], [0.65, 0.7, 0.75]],
    [8, [0.4, 0.45, 0.5], [0.45, 0.55, 0.6], [0.5, 0.6, 0.65], [0.55, 0.6, 0.65]],
  ])('in grass has the coefficients of FAO-56, Table 5 within 0.06: wind of %f m/s', (wind, ...rows) => {
    expectCellsWithin(panCoefficientInGrass, wind, rows)
  })
  it.each([
    [1, [0.7, 0.8, 0.85], [0.6, 0.7, 0.8], [0.55, 0.65, 0.75], [0.5, 0.6, 0.7]],
    [3.5, [0.65, 0.75, 0.8], [0.55, 0.65, 0.7], [0.5, 0.6, 0.65], [0.45, 0.55, 0.6]],
    [6.5, [0.6, 0.65, 0.7], [0.5, 0.55, 0.65], [0.45, 0.5, 0.6], [0.4, 0.45, 0.55]],
    [8, [0.5, 0.6, 0.65], [0.45, 0.5, 0.55], [0.4, 0.45, 0.5], [0.35, 0.4, 0.45]],
  ])('on bare ground has the coefficients of FAO-56, Table 5 within 0.06: wind of %f m/s', (wind, ...rows) => {
    expectCellsWithin(panCoefficientOnBareGround, wind, rows)
  })
  function expectCellsWithin(coefficient: typeof panCoefficientInGrass, wind: number, rows: number[][]): void {
    for (const [i, row] of rows.entries())
      for (const [j, humidity] of [30, 57, 84].entries()) {
        const pan = {
          windSpeed: metresPerSecond(wind),
          meanHumidity: percent<never>(humidity),
          fetch: metres(fetches[i]!),
        }
        expect(Math.abs(coefficient(pan) - row[j]!), `${fetches[i]} m, ${humidity} %`).toBeLessThan(0.06)
      }
  }
  it('has coefficients within 0.1 of FAO-56, Table 5 (light wind, humidity above 70 %, 100 m of fetch: 0.85 green, 0.75 dry [from memory])', () => {
    const pan = { windSpeed: metresPerSecond(1.5), meanHumidity: percent<never>(75), fetch: metres(100) }
    expect(Math.abs(panCoefficientInGrass(pan) - 0.85)).toBeLessThan(0.1)
    expect(Math.abs(panCoefficientOnBareGround(pan) - 0.75)).toBeLessThan(0.1)
    // More green around it, the more the pan looks like grass; more dry ground, the less.
    expect(panCoefficientInGrass({ ...pan, fetch: metres(1000) })).toBeGreaterThan(
      panCoefficientInGrass({ ...pan, fetch: metres(1) }),
    )
    expect(panCoefficientOnBareGround({ ...pan, fetch: metres(1000) })).toBeLessThan(
      panCoefficientOnBareGround({ ...pan, fetch: metres(1) }),
    )
    // The classes of the table end at 30 and 84 %, at 1 m and 1 km; below 1 m/s and above 8 m/s nothing was fitted.
    const outside = (input: Record<string, number>) => validityOf(validityPanCoefficient, input).length
    for (const [name, min, max] of [
      ['windSpeed', 1, 8],
      ['meanHumidity', 0.3, 0.84],
      ['fetch', 100, 100000],
    ] as const) {
      expect(
        [min, max, 0.99 * min, 1.01 * max].map((value) => outside({ [name]: value })),
        name,
      ).toEqual([0, 0, 1, 1])
    }
  })
})

describe('a series of hours', () => {
  const place = { latitude: latitude(40.41), longitude: longitude(-104.78), elevation: metresAboveSeaLevel(1462.4) }
  const n = 24 * 40
  const start = Date.UTC(2025, 5, 1, 7) / 1000
  const weather = () => ({
    site: { ...place, windHeight: metres(3) },
    start: instant(start),
    temperature: Float64Array.from({ length: n }, (_, i) => 18 - 9 * Math.cos(((i - 3) / 12) * Math.PI)),
    vapourPressure: Float64Array.from({ length: n }, (_, i) => 1.1 + 0.2 * Math.sin(i / 50)),
    solar: Float64Array.from({ length: n }, (_, i) => Math.max(0, 2.4 * Math.sin((((i % 24) - 5) / 14) * Math.PI))),
    wind: Float64Array.from({ length: n }, (_, i) => 2 + Math.sin(i / 7)),
    short: new Float64Array(n),
    tall: new Float64Array(n),
  })
  it('gives what single hours give (the same method by its steps)', () => {
    const series = weather()
    hourlySeriesAsce2005(series)
    let before: number | undefined
    for (let i = 0; i < n; i++) {
      // Mountain standard time is seven hours behind; the site lies 0.22 degrees east of its meridian.
      const local = start - 7 * 3600 + i * 3600
      const hour = hourlyReferenceETAsce2005({
        ...place,
        zoneLongitude: longitude(-105),
        day: dayOfYear(152 + Math.floor(i / 24)),
        middle: hours(((local % 86400) + 1800) / 3600),
        temperature: celsius(series.temperature[i]!),
        vapourPressure: kilopascals(series.vapourPressure[i]!),
        solar: megajoulesPerSquareMetreHour(series.solar[i]!),
        wind: windAt(series.wind[i]!, 3),
        ...(before === undefined ? {} : { relativeShortwaveBeforeSunset: Math.min(before, 1.5) }),
      })
      expect(series.short[i]).toBeCloseTo(hour.short, 10)
      expect(series.tall[i]).toBeCloseTo(hour.tall, 10)
      if (
        hour.clearSky > 0 &&
        hour.assumedInputs.length === 0 &&
        hour.relativeShortwave === series.solar[i]! / hour.clearSky
      )
        before = hour.relativeShortwave
    }
  })
  it('keeps gaps and bad rows in place, and counts them by reason', () => {
    const series = weather()
    series.temperature[5] = Number.NaN
    series.wind[6] = -1
    series.solar[7] = 2000
    series.solar[8] = 2000
    series.solar[30] = -0.01
    series.vapourPressure[9] = Number.NaN
    series.wind[9] = 500
    const clean = weather()
    hourlySeriesAsce2005(clean)
    const counts = hourlySeriesAsce2005(series)
    expect(counts).toMatchObject({ rows: n, converted: n - 5, missing: 2, refused: 3, belowZero: 1 })
    expect(counts.refusals).toMatchObject([
      { about: 'wind speed below its range', count: 1, first: 6 },
      { about: 'solar radiation above its range', count: 2, first: 7 },
    ])
    for (let i = 0; i < n; i++) expect(Number.isNaN(series.short[i])).toBe(i >= 5 && i <= 9)
    expect(series.short[n - 1]).toBe(clean.short[n - 1])
    expect(counts.cloudinessAssumed).toBeGreaterThan(0)
  })
  it('counts doubtful hours as single hours find them', () => {
    const before = hourlySeriesAsce2005(weather())
    const series = weather()
    // The series starts at midnight of the site: 2 h 30 of the first day, noon of the second, and a wet hour.
    series.solar[2] = 1
    series.solar[36] = 5.5
    series.vapourPressure[61] = 9
    expect(hourlySeriesAsce2005(series)).toMatchObject({
      lightWithoutSun: before.lightWithoutSun + 1,
      brighterThanClearSky: before.brighterThanClearSky + 1,
      aboveSaturation: before.aboveSaturation + 1,
      converted: n,
    })
  })
  it('refuses lists that do not belong together', () => {
    expectInputError(() => hourlySeriesAsce2005({ ...weather(), wind: new Float64Array(3) }), 'wind')
    expectInputError(() => hourlySeriesAsce2005({ ...weather(), tall: new Float64Array(3) }), 'tall')
    expectDomainError(() => hourlySeriesAsce2005({ ...weather(), start: (start * 1000) as never }), {
      quantity: 'instant',
      argument: 'start',
    })
  })
})
