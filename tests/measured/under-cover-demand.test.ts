import { readFileSync } from 'node:fs'
import {
  fitDailyUse,
  forecastByFollowingLevel,
  forecastBySlidingFit,
  joulesPerSquareCentimetre,
  waterUseFromRadiationSum,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Daily water use under cover against real records. The last 30 % of the days are kept back; the form of the model and the pace of its
 * level come from the first 70 %.
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
const meanOf = (values: readonly number[]) => values.reduce((a, b) => a + b, 0) / values.length

/** Mean of two columns for each day that has at least `least` readings of both. */
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

/** One number for each day of the calendar from the first to the last day; NaN where the record has none. */
interface Days {
  readonly use: Float64Array
  readonly radiation: Float64Array
  readonly dryness: Float64Array
  readonly replicates: readonly (readonly number[])[]
}

function onCalendar(days: ReadonlyMap<string, { use: number[]; sum: number; hours: number }>): Days {
  const dates = [...days.keys()].sort()
  const first = Date.parse(dates[0]!)
  const length = (Date.parse(dates.at(-1) as string) - first) / 86400000 + 1
  const blank = () => new Float64Array(length).fill(Number.NaN)
  const [use, radiation, dryness] = [blank(), blank(), blank()]
  const replicates: number[][] = Array.from({ length }, () => [])
  for (const [date, day] of days) {
    const i = (Date.parse(date) - first) / 86400000
    replicates[i] = day.use
    use[i] = meanOf(day.use)
    radiation[i] = day.sum
    dryness[i] = day.hours
  }
  return { use, radiation, dryness, replicates }
}

function tomato(treatment: string): Days {
  const climate = dayMeans(
    table('03_greenhouse_tomato_lysimeter_daily/inside_climate_15min'),
    ['ppfd_umol_m2_s', 'vpd_kPa'],
    90,
  )
  const uptakes = new Map<string, number[]>()
  for (const row of table('03_greenhouse_tomato_lysimeter_daily/lysimeter_daily_high_and_low_ec')) {
    const uptake = number(row.uptake_L_plant_day)
    const date = row.date as string
    if (row.treatment === treatment && !Number.isNaN(uptake)) uptakes.set(date, [...(uptakes.get(date) ?? []), uptake])
  }
  const days = new Map<string, { use: number[]; sum: number; hours: number }>()
  let before = ''
  for (const [date, use] of [...uptakes].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const air = climate.get(date)
    // All replicates equal to those of the day before, to the last digit, are a total of several days that was shared out.
    const repeated = use.join() === before
    before = use.join()
    if (air === undefined || use.length < 2 || repeated) continue
    // 4.57 µmol a joule of photosynthetic light, 45 % of global radiation; 1e4 J/m² a J/cm².
    days.set(date, { use, sum: (air[0] * 86400) / 4.57 / 0.45 / 1e4, hours: air[1] * 24 })
  }
  return onCalendar(days)
}

function cucumber(compartment: number): Days {
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
  const days = new Map<string, { use: number[]; sum: number; hours: number }>()
  for (const row of at(`irrigation_drain_daily_compartment_${compartment}`)) {
    const date = row.date as string
    const [air, sun] = [inside.get(date), outside.get(date)]
    const use = number(row.irrigation_L_m2) - number(row.drain_L_m2)
    // The slabs fill until drain begins on 23 August; the first week after that is left to settle.
    if (air === undefined || sun === undefined || !(use >= 0) || date < '2018-09-01') continue
    days.set(date, { use: [use], sum: (sun[1] * 86400) / 1e4, hours: air[1] * 24 })
  }
  return onCalendar(days)
}

/** Standard deviation of a mean of three plants, from how their differences to that mean change overnight: lasting differences cancel. */
function noiseOfMean(days: Days, kept: readonly number[]): number {
  let [squares, count] = [0, 0]
  for (const day of kept) {
    const [now, before] = [days.replicates[day] as number[], days.replicates[day - 1] ?? []]
    if (now.length !== 3 || before.length !== 3) continue
    now.forEach((value, k) => {
      squares += (value - meanOf(now) - (before[k]! - meanOf(before))) ** 2
      count++
    })
  }
  // The variance of such a change is 2 · 2/3 of that of one plant; the mean of three has a third of the latter.
  return Math.sqrt(squares / count / (2 * (2 / 3)) / 3)
}

function report(name: string, days: Days) {
  const { use, radiation, dryness } = days
  const sun = { name: 'radiation', values: radiation }
  const level = forecastByFollowingLevel({ use, causes: [sun] })
  const withDryness = forecastByFollowingLevel({ use, causes: [sun, { name: 'dryness', values: dryness }] })
  const complete = [...use.keys()].filter((day) => !Number.isNaN(use[day]))
  const kept = complete.slice(level.trainedDays)
  const explainedBy = (forecast: (day: number) => number) => {
    const middle = meanOf(kept.map((day) => use[day]!))
    const missed = kept.reduce((sum, day) => sum + (forecast(day) - use[day]!) ** 2, 0)
    return 1 - missed / kept.reduce((sum, day) => sum + (use[day]! - middle) ** 2, 0)
  }
  const sliding = forecastBySlidingFit({ use, causes: [sun], window: 14 })
  const rule = (day: number) =>
    waterUseFromRadiationSum({ radiationSum: joulesPerSquareCentimetre(radiation[day]!), usePerJoule: 1.7 }).use
  const fixed = fitDailyUse({ use, radiationSum: radiation, deficitHours: dryness })
  const variance = kept.reduce((sum, day) => sum + use[day]! ** 2, 0) / kept.length
  const mean = meanOf(kept.map((day) => use[day]!))
  const noise = noiseOfMean(days, kept)
  const found = {
    complete: complete.length,
    kept: kept.length,
    mean,
    spread: Math.sqrt(variance - mean ** 2),
    rule: explainedBy(rule),
    ruleError: Math.sqrt(meanOf(kept.map((day) => (rule(day) - use[day]!) ** 2))),
    fixedError: fixed.testError,
    fixed: fixed.testExplained,
    fixedUsable: fixed.usable,
    sliding: explainedBy((day) => sliding.forecasts[day]!),
    level: level.score.explained,
    levelError: level.score.error,
    levelBias: level.score.bias,
    yesterdayError: level.score.yesterdayError,
    withDryness: withDryness.score.explained,
    covered: level.covered,
    pace: level.pace,
    perJoule: level.coefficients[1],
    noise,
    ceiling: 1 - noise ** 2 / (variance - mean ** 2),
  }
  console.info(name, found)
  return found
}

describe.skipIf(!folder)('daily use of tomato on lysimeters', () => {
  it.each([
    ['low_ec', 0.62],
    ['high_ec', 0.56],
  ])(
    'is forecast better than by any fixed rule, up to what the noise of three plants lets through: %s',
    (name, printed) => {
      const got = report(`lysimeter tomato, ${name}`, tomato(name))
      expect(got.level).toBeGreaterThan(got.fixed)
      expect(got.level).toBeGreaterThan(got.rule)
      expect(got.levelError).toBeLessThan(got.yesterdayError)
      expect(Math.abs(got.levelBias)).toBeLessThan(got.levelError / 2)
      expect(got.perJoule?.low).toBeGreaterThan(0)
      expect(got.perJoule?.high).toBeLessThan(0.00408)
      expect(got.fixedUsable).toBe(false)
      // The target of 80 % lies above what the scatter of the plants allows, as the guide says.
      expect(got.ceiling).toBeLessThan(0.8)
      expect(got.level).toBeLessThan(got.ceiling)
      // What the guide prints.
      expect(got.level).toBeCloseTo(printed, 2)
    },
  )
})

describe.skipIf(!folder)('daily use of cucumber on slabs', () => {
  it.each([
    [3, 0.78],
    [4, 0.07],
  ])('is forecast to within an eighth of its size in compartment %i', (compartment, printed) => {
    const got = report(`cucumber, compartment ${compartment}`, cucumber(compartment))
    expect(got.levelError).toBeLessThan(got.mean / 8)
    expect(got.levelError).toBeLessThan(got.fixedError)
    expect(got.levelError).toBeLessThan(got.ruleError)
    // What the guide prints.
    expect(got.level).toBeCloseTo(printed, 2)
  })
})
