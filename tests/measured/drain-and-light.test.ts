import { spawnSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import {
  checkSaltBalance,
  type DrainEC,
  decisiemensPerMetre,
  drainFraction,
  isPorewaterError,
  litres,
  meanDrainEC,
  radiationSum,
  type SolutionEC,
  steadyDrainFraction,
} from 'porewater'
import { beforeAll, describe, expect, it } from 'vitest'

/**
 * Drain, salts and light of two greenhouse crops, against the same figures from a script in another language beside this file.
 * Records, as tidied CSV files that are not part of this project: Hemming, S. and others (2020), Autonomous Greenhouse Challenge, second
 * edition, 4TU.ResearchData, doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7 (folder 01); Buck, J. S., Kubota, C. and Jensen, M. H.
 * (2008), HortTechnology 18:460-466 (folder 03).
 */
const data = process.env.POREWATER_DATA

type Figures = Record<string, number>
interface Oracle {
  slabs: Record<
    string,
    { drain_fraction: Figures; ec_ratio: Figures; ml_per_light: Figures; mean_ml_per_light: number }
  >
  lysimeter: Record<string, Figures>
}

function table(folder: string, file: string): Record<string, string>[] {
  const [head = '', ...lines] = readFileSync(join(data as string, folder, file), 'utf8')
    .trimEnd()
    .split('\n')
  const names = head.split(',')
  return lines.map((line) => {
    const cells = line.split(',')
    return Object.fromEntries(names.map((name, i) => [name, cells[i] ?? '']))
  })
}
const number = (text: string | undefined) => (text === '' || text === undefined ? Number.NaN : Number(text))
const agrees = (got: number, oracle: number | undefined) =>
  expect(Math.abs(got - (oracle as number))).toBeLessThanOrEqual(1e-9 * Math.abs(oracle as number))

describe.skipIf(data === undefined)('drain and light of real crops', () => {
  let oracle: Oracle
  beforeAll(() => {
    const script = fileURLToPath(new URL('drain_and_light.py', import.meta.url))
    const { stdout, stderr, status } = spawnSync('python3', [script, data as string], {
      encoding: 'utf8',
      maxBuffer: 1e8,
    })
    if (status !== 0) throw new Error(stderr)
    oracle = JSON.parse(stdout) as Oracle
  }, 60_000)

  const slabs = '01_greenhouse_tomato_slab_5min'
  it.each(['2', '5'])('compartment %s: drain fraction of every month', (compartment) => {
    const days = table(slabs, `irrigation_drain_daily_compartment_${compartment}.csv`).filter(
      (day) => day.irrigation_L_m2 !== '' && day.drain_L_m2 !== '',
    )
    const months = Object.keys(oracle.slabs[compartment]?.drain_fraction ?? {})
    expect(months.length).toBeGreaterThanOrEqual(5)
    for (const month of months) {
      const of = days.filter(({ date }) => date?.startsWith(month))
      const total = (name: string) => litres(of.reduce((sum, day) => sum + number(day[name]), 0))
      agrees(
        drainFraction({ applied: total('irrigation_L_m2'), drained: total('drain_L_m2') }),
        oracle.slabs[compartment]?.drain_fraction[month],
      )
    }
  })
  it.each(['2', '5'])('compartment %s: drain over feed EC, refused where the drain is the weaker', (compartment) => {
    let refused = 0
    for (const day of table(slabs, `lab_feed_drain_compartment_${compartment}.csv`)) {
      const [feed, drain] = [number(day.feed_ec_dS_m), number(day.drain_ec_dS_m)]
      if (Number.isNaN(feed + drain)) continue
      try {
        const ratio =
          1 /
          steadyDrainFraction({
            feedEC: decisiemensPerMetre<SolutionEC>(feed),
            drainEC: decisiemensPerMetre<DrainEC>(drain),
          })
        agrees(ratio, oracle.slabs[compartment]?.ec_ratio[day.date as string])
      } catch (error) {
        if (!isPorewaterError(error)) throw error
        expect(oracle.slabs[compartment]?.ec_ratio[day.date as string]).toBeLessThan(1)
        refused++
      }
    }
    expect(refused).toBe(Object.values(oracle.slabs[compartment]?.ec_ratio ?? {}).filter((ratio) => ratio < 1).length)
  })
  it.each(['2', '5'])('compartment %s: use per light of every day', (compartment) => {
    const readings = table(slabs, 'outside_weather_5min.csv')
    const irrigation = new Map(
      table(slabs, `irrigation_drain_daily_compartment_${compartment}.csv`).map((day) => [day.date, day]),
    )
    const starts = new Map<string, number>()
    readings.forEach(({ time_local = '' }, i) => {
      const day = time_local.slice(0, 10)
      if (!starts.has(day)) starts.set(day, i)
    })
    const figures = Object.entries(oracle.slabs[compartment]?.ml_per_light ?? {})
    expect(figures.length).toBeGreaterThan(100)
    let total = 0
    for (const [day, figure] of figures) {
      const from = starts.get(day) as number
      // With midnight at the end, which closes the day.
      const part = readings.slice(from, from + 289)
      const { sum } = radiationSum({
        times: part.map((_, i) => 300 * i),
        irradiance: part.map((row) => number(row.global_radiation_W_m2)),
      })
      const water = irrigation.get(day)
      const use = number(water?.irrigation_L_m2) - number(water?.drain_L_m2)
      agrees((use * 1000) / sum, figure)
      total += (use * 1000) / sum
    }
    agrees(total / figures.length, oracle.slabs[compartment]?.mean_ml_per_light)
  })

  it('lysimeters: drain fraction, mean ECs and salts that did not drain', () => {
    const rows = table('03_greenhouse_tomato_lysimeter_daily', 'lysimeter_daily_high_and_low_ec.csv')
    const names = Object.keys(oracle.lysimeter)
    expect(names.length).toBe(6)
    for (const name of names) {
      const days = rows.filter(
        (row) =>
          `${row.treatment} ${row.replicate}` === name &&
          number(row.feed_mL_plant_day) > 0 &&
          number(row.drain_mL_plant_day) > 0 &&
          !Number.isNaN(number(row.feed_ec_dS_m) + number(row.drain_ec_dS_m)),
      )
      expect(days.length).toBe(oracle.lysimeter[name]?.days)
      const column = (key: string, scale = 1) => days.map((row) => number(row[key]) * scale)
      const total = (list: number[]) => litres(list.reduce((sum, x) => sum + x, 0))
      const [feed, drain] = [column('feed_mL_plant_day', 1e-3), column('drain_mL_plant_day', 1e-3)]
      const feedEC = meanDrainEC({ volumes: feed, conductivities: column('feed_ec_dS_m') }) as unknown as SolutionEC
      const drainEC = meanDrainEC({ volumes: drain, conductivities: column('drain_ec_dS_m') })
      const balance = checkSaltBalance({
        applied: total(feed),
        drained: total(drain),
        feedEC,
        drainEC,
        rootZoneWater: litres(4),
      })
      agrees(balance.drainFraction, oracle.lysimeter[name]?.drain_fraction)
      agrees(feedEC, oracle.lysimeter[name]?.feed_ec)
      agrees(drainEC, oracle.lysimeter[name]?.drain_ec)
      agrees(balance.steadyFraction as number, oracle.lysimeter[name]?.steady_fraction)
      agrees(balance.saltStored / balance.saltIn, oracle.lysimeter[name]?.salt_not_drained)
    }
  })
})
