import { readFileSync } from 'node:fs'
import { fitDailyUse, joulesPerSquareCentimetre, useByRadiationSum } from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Daily water use under cover against two real records, first 70 % of the days fitted and the last 30 % kept back.
 * `03_greenhouse_tomato_lysimeter_daily`: Buck, Kubota and Jensen (2008), HortTechnology 18:460-466; use is feed less drain, L for a plant.
 * `02_greenhouse_cucumber_daily_and_climate`: Hemming and others (2019), Sensors 19:1807; use is irrigation less drain, L/m².
 */
const folder = process.env.POREWATER_DATA
type Row = Record<string, string>
const table = (name: string): Row[] => {
  const [head = '', ...lines] = readFileSync(`${folder}/${name}.csv`, 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i], cell])))
}
const number = (cell: string | undefined) => (cell === undefined || cell === '' ? Number.NaN : Number(cell))

/** Mean of a column for each day that has at least `least` readings of both columns. */
function dayMeans(
  rows: readonly Row[],
  columns: readonly [string, string],
  least: number,
): Map<string, [number, number]> {
  const sums = new Map<string, [number, number, number]>()
  for (const row of rows) {
    const [a, b] = [number(row[columns[0]]), number(row[columns[1]])]
    if (Number.isNaN(a) || Number.isNaN(b)) continue
    const day = (row.time_local as string).slice(0, 10)
    const sum = sums.get(day) ?? [0, 0, 0]
    sums.set(day, [sum[0] + a, sum[1] + Math.max(0, b), sum[2] + 1])
  }
  return new Map([...sums].filter(([, s]) => s[2] >= least).map(([day, s]) => [day, [s[0] / s[2], s[1] / s[2]]]))
}

function report(
  name: string,
  days: readonly (readonly [use: number, sum: number, hours: number])[],
  defaultUse: number,
) {
  const column = (k: 0 | 1 | 2) => Float64Array.from(days, (day) => day[k])
  const fit = fitDailyUse({ use: column(0), radiationSum: column(1), deficitHours: column(2) })
  const kept = days.slice(days.length - fit.testDays)
  const misses = kept.map(
    ([use, sum]) =>
      useByRadiationSum({ radiationSum: joulesPerSquareCentimetre(sum), usePerJoule: defaultUse }).use - use,
  )
  const rootMean = Math.sqrt(misses.reduce((total, miss) => total + miss * miss, 0) / misses.length)
  console.info(name, { days: days.length, defaultUse, defaultTestError: rootMean, ...fit })
  return { fit, defaultTestError: rootMean }
}

describe.skipIf(!folder)('daily use of tomato on lysimeters', () => {
  it('is no better with coefficients of the summer than by the default rule, and the fit says so', () => {
    const use = new Map<string, number[]>()
    for (const row of table('03_greenhouse_tomato_lysimeter_daily/lysimeter_daily_high_and_low_ec')) {
      const uptake = number(row.uptake_L_plant_day)
      if (row.treatment !== 'low_ec' || Number.isNaN(uptake)) continue
      use.set(row.date as string, [...(use.get(row.date as string) ?? []), uptake])
    }
    const climate = dayMeans(
      table('03_greenhouse_tomato_lysimeter_daily/inside_climate_15min'),
      ['ppfd_umol_m2_s', 'vpd_kPa'],
      90,
    )
    const days = [...use].flatMap(([date, uptakes]) => {
      const air = climate.get(date)
      if (air === undefined || uptakes.length < 2) return []
      // 4.57 µmol a joule of photosynthetic light, 45 % of global radiation; 1e4 J/m² a J/cm².
      const sum = (air[0] * 86400) / 4.57 / 0.45 / 1e4
      return [[uptakes.reduce((a, b) => a + b, 0) / uptakes.length, sum, air[1] * 24] as const]
    })
    const { fit, defaultTestError } = report('lysimeter tomato, low EC', days, 1.7)
    expect(fit.testError).toBeLessThan(1)
    expect(fit.testError).toBeGreaterThan(defaultTestError)
    expect(fit.usable).toBe(false)
  })
})

describe.skipIf(!folder)('daily use of cucumber on slabs', () => {
  it.each([3, 4])('is predicted in compartment %i', (compartment) => {
    const at = (name: string) => table(`02_greenhouse_cucumber_daily_and_climate/${name}`)
    const inside = dayMeans(
      at(`inside_climate_5min_compartment_${compartment}`).map((row) => {
        const t = number(row.air_temperature_C)
        const saturation = 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
        const vpd = saturation * (1 - number(row.relative_humidity_pct) / 100)
        return { time_local: row.time_local as string, vpd: String(vpd), lamps: row.lamps_pct as string }
      }),
      ['lamps', 'vpd'],
      270,
    )
    const outside = dayMeans(at('outside_weather_5min'), ['outside_temperature_C', 'global_radiation_W_m2'], 270)
    const days = at(`irrigation_drain_daily_compartment_${compartment}`).flatMap((row) => {
      const [air, sun] = [inside.get(row.date as string), outside.get(row.date as string)]
      const use = number(row.irrigation_L_m2) - number(row.drain_L_m2)
      // The first ten days wet the slabs; drain begins on 23 August.
      if (air === undefined || sun === undefined || !(use >= 0) || (row.date as string) < '2018-09-01') return []
      return [[use, (sun[1] * 86400) / 1e4, air[1] * 24] as const]
    })
    const { fit } = report(`cucumber, compartment ${compartment}`, days, 1.7)
    expect(fit.fittedDays).toBeGreaterThan(30)
    expect(Number.isFinite(fit.testError)).toBe(true)
  })
})
