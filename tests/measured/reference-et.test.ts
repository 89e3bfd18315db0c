import { readFileSync } from 'node:fs'
import {
  atmosphericPressureFao56,
  celsius,
  dailyReferenceETAsce2005,
  dailyReferenceETFao56,
  dayOfDate,
  gramsPerKilogram,
  hectopascals,
  latitude,
  megajoulesPerSquareMetreDay,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  referenceETHargreaves1985,
  vapourPressureOfRatio,
} from 'porewater'
import { describe, expect, it } from 'vitest'

// 07: gridMET (Abatzoglou 2013, International Journal of Climatology 33:121-131), one point in Kansas, 2011 to 2020, with the provider's
//     reference evapotranspiration of grass and alfalfa.
// 08: Met Éireann, Dublin Airport, 2009 to October 2018 (CC BY 4.0), with the provider's Penman-Monteith evapotranspiration; no humidity.
const folder = process.env.POREWATER_DATA

interface Miss {
  readonly date: string
  readonly fao: number
  readonly short: number
  readonly tall: number
}

function rows(file: string): Record<string, string>[] {
  const [head = '', ...lines] = readFileSync(`${folder}/${file}`, 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']))
  })
}

const number = (row: Record<string, string>, name: string) => (row[name] === '' ? Number.NaN : Number(row[name]))
const bias = (misses: readonly number[]) => misses.reduce((sum, miss) => sum + miss, 0) / misses.length
const rms = (misses: readonly number[]) => Math.sqrt(bias(misses.map((miss) => miss * miss)))
const spread = (misses: readonly number[]) => rms(misses.map((miss) => miss - bias(misses)))
const say = (name: string, misses: readonly number[]) =>
  process.stdout.write(
    `${name}: ${misses.length} days, RMSE ${rms(misses).toFixed(4)}, bias ${bias(misses).toFixed(4)} mm/d\n`,
  )

function dayOf(row: Record<string, string>) {
  const [year, month, day] = (row.date ?? '').split('-').map(Number) as [number, number, number]
  return dayOfDate({ year, month, day })
}

describe.skipIf(!folder)('gridded weather of Kansas', () => {
  // The file has no elevation: 315 m is that of the town at this point (Olathe, Kansas; 300 m shifts the bias by -0.004 mm/d). The provider
  // made the vapour pressure from the specific humidity, not from the humidities of the file, which are those of other hours.
  const elevation = metresAboveSeaLevel(315)
  const misses = (): { complete: Miss[]; wet: Miss[]; dark: Miss[] } => {
    const found = { complete: [] as Miss[], wet: [] as Miss[], dark: [] as Miss[] }
    for (const row of rows('07_reference_et_gridded_kansas_daily/daily_2011_2020.csv')) {
      const date = row.date ?? ''
      const specific = number(row, 'specific_humidity_kg_kg')
      const weather = {
        latitude: latitude(38.8838),
        elevation,
        day: dayOf(row),
        maxTemperature: celsius(number(row, 'tmax_C')),
        minTemperature: celsius(number(row, 'tmin_C')),
        vapourPressure: vapourPressureOfRatio({
          ratio: gramsPerKilogram((1000 * specific) / (1 - specific)),
          pressure: atmosphericPressureFao56(elevation),
        }),
        solar: megajoulesPerSquareMetreDay(number(row, 'solar_radiation_MJ_m2_day')),
        wind: { speed: metresPerSecond(number(row, 'wind_speed_10m_m_s')), height: metres(10) },
      }
      const fao = dailyReferenceETFao56(weather)
      const asce = dailyReferenceETAsce2005(weather)
      const miss = {
        date,
        fao: fao.referenceET - number(row, 'published_eto_grass_mm'),
        short: asce.short - number(row, 'published_eto_grass_mm'),
        tall: asce.tall - number(row, 'published_etr_alfalfa_mm'),
      }
      if (date.startsWith('2016')) continue
      const wet = fao.findings.some((finding) => finding.code === 'air-above-saturation')
      found[wet ? 'wet' : weather.solar === 0 ? 'dark' : 'complete'].push(miss)
    }
    return found
  }
  it('agrees with the published grass and alfalfa values where the record is complete and has its digits (2011 to 2015)', () => {
    const { complete } = misses()
    const exact = complete.filter(({ date }) => date < '2016')
    expect(exact.length).toBeGreaterThan(1700)
    for (const name of ['fao', 'short', 'tall'] as const)
      say(
        `2011-2015 ${name}`,
        exact.map((miss) => miss[name]),
      )
    expect(rms(exact.map(({ fao }) => fao))).toBeLessThan(0.02)
    expect(Math.abs(bias(exact.map(({ fao }) => fao)))).toBeLessThan(0.005)
    // The provider uses the standardized equation, which differs from FAO-56 only where clouds are thick.
    expect(rms(exact.map(({ short }) => short))).toBeLessThan(0.003)
    expect(rms(exact.map(({ tall }) => tall))).toBeLessThan(0.005)
  })
  it('misses by the rounding of the print from 2017 on, when it has one digit (0.1/√12 = 0.029 mm)', () => {
    const rounded = misses().complete.filter(({ date }) => date > '2017')
    for (const name of ['fao', 'short', 'tall'] as const)
      say(
        `2017-2020 ${name}`,
        rounded.map((miss) => miss[name]),
      )
    expect(rms(rounded.map(({ short }) => short))).toBeGreaterThan(0.025)
    expect(rms(rounded.map(({ short }) => short))).toBeLessThan(0.031)
    expect(Math.abs(bias(rounded.map(({ fao }) => fao)))).toBeLessThan(0.005)
  })
  it('stays within 0.02 mm on all complete days outside 2016, beyond the rounding of the print', () => {
    const beyond = misses().complete.map(({ date, fao }) =>
      date < '2016' ? fao : Math.sign(fao) * Math.max(0, Math.abs(fao) - 0.05),
    )
    say('all but 2016, beyond the print, fao', beyond)
    expect(beyond.length).toBeGreaterThan(3200)
    expect(rms(beyond)).toBeLessThan(0.02)
    expect(Math.abs(bias(beyond))).toBeLessThan(0.005)
  })
  it('finds the days whose inputs contradict themselves: air above saturation, a day without light', () => {
    const { wet, dark } = misses()
    say(
      'air above saturation, fao',
      wet.map(({ fao }) => fao),
    )
    expect(wet.length).toBeGreaterThan(30)
    expect(wet.length).toBeLessThan(60)
    expect(dark).toHaveLength(2)
    // Our deficit goes below zero and is named; the provider stops at zero.
    expect(bias(wet.map(({ fao }) => fao))).toBeLessThan(-0.2)
  })
})

describe.skipIf(!folder)('Dublin Airport, without humidity', () => {
  it('says what the estimate of humidity costs', () => {
    const fao: number[] = []
    const hargreaves: number[] = []
    let published = 0
    for (const row of rows('08_reference_et_ireland_daily/dublin_airport_2009_2018.csv')) {
      const given = number(row, 'published_pe_penman_monteith_mm')
      const names = ['tmax_C', 'tmin_C', 'air_pressure_hPa', 'solar_radiation_MJ_m2_day', 'wind_speed_10m_m_s']
      if ([given, ...names.map((name) => number(row, name))].some(Number.isNaN)) continue
      if (number(row, 'tmin_C') > number(row, 'tmax_C')) continue
      const day = dailyReferenceETFao56({
        latitude: latitude(53.423),
        elevation: metresAboveSeaLevel(71),
        day: dayOf(row),
        maxTemperature: celsius(number(row, 'tmax_C')),
        minTemperature: celsius(number(row, 'tmin_C')),
        pressure: hectopascals(number(row, 'air_pressure_hPa')),
        solar: megajoulesPerSquareMetreDay(number(row, 'solar_radiation_MJ_m2_day')),
        wind: { speed: metresPerSecond(number(row, 'wind_speed_10m_m_s')), height: metres(10) },
      })
      expect(day.assumedInputs).toMatchObject([{ code: 'assumed-humidity' }])
      fao.push(day.referenceET - given)
      const { extraterrestrial } = day
      const temperatures = {
        maxTemperature: celsius(number(row, 'tmax_C')),
        minTemperature: celsius(number(row, 'tmin_C')),
      }
      hargreaves.push(referenceETHargreaves1985({ ...temperatures, extraterrestrial }) - given)
      published += given
    }
    say('Dublin, humidity estimated', fao)
    say('Dublin, temperatures only', hargreaves)
    process.stdout.write(
      `published mean ${(published / fao.length).toFixed(3)} mm/d, spread of ours ${spread(fao).toFixed(4)}\n`,
    )
    expect(fao.length).toBeGreaterThan(3000)
    // With the dew point 1.5 K above the lowest temperature the bias would vanish in every month: at this windy coast the air is moister
    // than the estimate, which was made for green inland sites.
    expect(rms(fao)).toBeLessThan(0.55)
    expect(bias(fao)).toBeGreaterThan(0.3)
    expect(bias(fao)).toBeLessThan(0.45)
    expect(rms(fao)).toBeLessThan(rms(hargreaves))
  })
})
