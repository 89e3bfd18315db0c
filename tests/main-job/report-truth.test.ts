import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { oneDay } from '../../docs/examples/one-day.js'
import { referenceET } from './again/weather.js'

/** What the report says is worked out here once more, from the files alone and without the package. */
const root = fileURLToPath(new URL('../../docs/examples/', import.meta.url))
let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-truth-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

type Row = Readonly<Record<string, string>>
function rowsOf(file: string): Row[] {
  const [head = '', ...lines] = readFileSync(join(root, file), 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i]!, cell])))
}
/** The report with its folded lines put together again. */
function report(...args: string[]): string {
  return oneDay([...args, '--picture', join(folder, 'day.svg')]).replace(/\n {2,}(?! ?\d+\. )(?=\S)/g, ' ')
}
const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
const middle = (list: readonly number[]) => [...list].sort((a, b) => a - b)[list.length >> 1]!
const mean = (list: readonly number[]) => sum(list) / list.length

describe('the report on the invented bench', () => {
  const rows = rowsOf('invented-bench/readings.csv')
  const today = rows.filter((row) => row.time! >= '2026-05-19' && row.time! < '2026-05-20')
  const log = rowsOf('invented-bench/feed-and-drain.csv').filter((row) => row.time! >= '2026-05-19')
  const of = (name: string, list = today) => list.flatMap((row) => (row[name] ? [Number(row[name])] : []))
  // Two samples make a line: dry 0.04, saturated 0.865.
  const content = {
    A: (raw: number) => 0.04 + (0.825 * (raw - 438)) / (1185 - 438),
    B: (raw: number) => 0.04 + (0.825 * (raw - 429)) / (1184 - 429),
  }
  const text = () => report()

  it('counts rows and readings; the spike, the frozen stretch and the gap are where the maker put them', () => {
    expect(text()).toContain(`${today.length} rows on the day.`)
    const gaps = today.filter((row) => row.raw_a === '').length
    expect(text()).toContain(`${gaps} missing; 1 reading outside the calibrated span.`)
    expect(today.filter((row) => Number(row.raw_a) > 1185)).toHaveLength(1)
    // The reading before a gap of the logger, and the first behind it.
    const at = today.findIndex((row) => row.raw_a === '')
    const clock = (i: number) => today[i]?.time?.slice(11, 16)
    for (const probe of ['A', 'B'])
      expect(text()).toContain(
        `probe ${probe} has no reading that can be trusted from ${clock(at - 1)} to ${clock(at + gaps)}.`,
      )
    const frozen = today
      .map((row, i) => [row, i] as const)
      .filter(([row]) => row.raw_b === '905')
      .map(([, i]) => i)
    expect(text()).toContain(
      `probe B has no reading that can be trusted from ${clock(frozen[0]! - 1)} to ${clock(frozen.at(-1)! + 1)}.`,
    )
  })
  it('gives the range, the night and the end of each probe', () => {
    const shots = log.map((row) => row.time as string)
    expect(text()).toContain(`The valve opened ${shots.length} times by the log.`)
    const night = /from (\d\d:\d\d) to 07:10, ([\d.]+) h\./.exec(text())
    // The last shot of the day before opened at 16:30; its rise peaks within minutes.
    expect(night?.[1] === '16:35' || night?.[1] === '16:40').toBe(true)
    for (const probe of ['A', 'B'] as const) {
      const name = probe === 'A' ? 'raw_a' : 'raw_b'
      const good = today.filter((row) => row[name] && Number(row[name]) < 1185 && row[name] !== '905')
      const levels = good.map((row) => content[probe](Number(row[name])))
      expect(text()).toContain(`probe ${probe}: water content from ${(100 * Math.min(...levels)).toFixed(1)} % to`)
      expect(text()).toContain(`to ${(100 * Math.max(...levels)).toFixed(1)} %; `)
      expect(text()).toContain(`the day ended at ${(100 * middle(levels.slice(-3))).toFixed(1)} %`)
      const own = text().slice(text().indexOf(`probe ${probe}: water content`))
      const line = /from (\d\d:\d\d) to (\d\d:\d\d) it fell by ([\d.]+) points, ([\d.]+) points an hour/.exec(own)
      const [, from, to, fall, speed] = line as RegExpExecArray
      const stretch = rows.filter((row) => row.time! >= `2026-05-18T${from}` && row.time! <= `2026-05-19T${to}~`)
      const values = stretch.map((row) => content[probe](Number(row[name])))
      const fell = middle(values.slice(0, 3)) - middle(values.slice(-3))
      expect((100 * fell).toFixed(1)).toBe(fall)
      const hours = ((stretch.length - 1) * 5) / 60
      expect(((100 * fell) / hours).toFixed(2)).toBe(speed)
    }
  })
  it('gives feed, drain, salts and use', () => {
    const [given, drained] = [sum(of('feed_L', log)), sum(of('drain_L', log))]
    const weighted = (ec: string, volume: string) =>
      sum(log.map((row) => Number(row[ec]) * Number(row[volume]))) / sum(of(volume, log))
    expect(text()).toContain(
      `Given: ${given.toFixed(2)} L a container in ${log.length} entries of the log. Drained: ${drained.toFixed(2)} L. Drain fraction: ${((100 * drained) / given).toFixed(1)} %.`,
    )
    expect(text()).toContain(
      `Feed EC: ${weighted('feed_EC_mS_cm', 'feed_L').toFixed(2)} dS/m. Drain EC: ${weighted('drain_EC_mS_cm', 'drain_L').toFixed(2)} dS/m`,
    )
    const [, stored, way, use, plant] =
      /By the probes: ([\d.]+) L (went into|came out of) storage\. Used by the plants: ([\d.]+) L a container, ([\d.]+) L a plant/.exec(
        text(),
      )!
    const change = (['A', 'B'] as const).map((probe) => {
      const name = probe === 'A' ? 'raw_a' : 'raw_b'
      const at = (from: string, to: string) =>
        middle(
          rows.filter((row) => row.time! >= from && row.time! < to).map((row) => content[probe](Number(row[name]))),
        )
      return at('2026-05-19T23:00', '2026-05-20T00') - at('2026-05-18T23:30', '2026-05-19T00:30')
    })
    const water = 14 * mean(change)
    expect(Number(stored) * (way === 'went into' ? 1 : -1)).toBeCloseTo(water, 1)
    expect(Number(use)).toBeCloseTo(given - drained - water, 1)
    expect(Number(plant)).toBeCloseTo(Number(use) / 2, 2)
  })
  it('gives the climate demand and the root zone', () => {
    const et = referenceET(
      139,
      47.5,
      420,
      of('air_C'),
      of('humidity_pct'),
      mean(of('radiation_W_m2')) * 0.0864,
      mean(of('wind_m_s')),
    )
    expect(text()).toContain(
      `reference evapotranspiration by FAO-56 ${et.toFixed(2)} mm/d; times 1.05 ${(1.05 * et).toFixed(2)} mm/d`,
    )
    expect(text()).toContain(
      `${((1.05 * et) / 2.5).toFixed(2)} L a plant and ${((2 * 1.05 * et) / 2.5).toFixed(2)} L a container`,
    )
    const root = of('root_C')
    expect(text()).toContain(
      `The root zone: ${Math.min(...root).toFixed(1)} to ${Math.max(...root).toFixed(1)} °C, ${mean(root).toFixed(1)} °C on average.`,
    )
  })
  it('proposes shots that add up, within the limits, with run times of their emitters', () => {
    const shots = [
      ...text().matchAll(/^ +\d+\. (\d\d:\d\d) +(\d+) mL \((\d+) mL an emitter\), valve open (\d+) min (\d\d) s/gm),
    ]
    const [, count, given, , drain] =
      /(\d+) shots, ([\d.]+) L together, of at most (\d+) L a day; ([\d.]+) % of it should drain/.exec(text())!
    expect(shots).toHaveLength(Number(count))
    expect(sum(shots.map((shot) => Number(shot[2]))) / 1000).toBeCloseTo(Number(given), 1)
    expect(Number(given)).toBeLessThanOrEqual(7)
    expect(Number(drain)).toBeCloseTo(25, 0)
    for (const [, , volume, each, minutes, seconds] of shots) {
      expect(Number(each)).toBeCloseTo(Number(volume) / 2, -1)
      // Two emitters of 2 L/h, and 8 s to fill the line.
      expect(Number(minutes) * 60 + Number(seconds)).toBeCloseTo((Number(volume) / 4) * 3.6 + 8, -1)
    }
    const fed = sum(of('feed_L', log))
    expect(text()).toContain(
      `Different from this day: ${count} shots, ${log.length} on the day before; ${given} L instead of ${fed.toFixed(2)} L (−${Math.round(100 * (1 - Number(given) / fed))} %)`,
    )
  })
})

describe('the report on ten days of real slabs', () => {
  const slab = () =>
    report(
      join(root, 'open-record/slab_5min_compartment_2.csv'),
      '--setup',
      join(root, 'open-record/compartment.json'),
      '--day',
      '2020-03-31',
    )
  const rows = rowsOf('open-record/slab_5min_compartment_2.csv')
  const today = rows.filter((row) => row.time_local!.startsWith('2020-03-31'))
  it('gives rows, ranges and the root zone', () => {
    const text = slab()
    expect(text).toContain(`${today.length} rows on the day.`)
    for (const k of [1, 2]) {
      const levels = today.map((row) => Number(row[`water_content_${k}_m3_m3`]))
      expect(text).toContain(
        `slab ${k}: water content from ${(100 * Math.min(...levels)).toFixed(1)} % to ${(100 * Math.max(...levels)).toFixed(1)} %`,
      )
      expect(text).toContain(`the day ended at ${(100 * middle(levels.slice(-3))).toFixed(1)} %`)
    }
    const root = today.map((row) => Number(row.slab_temperature_1_C))
    expect(text).toContain(
      `${Math.min(...root).toFixed(1)} to ${Math.max(...root).toFixed(1)} °C, ${mean(root).toFixed(1)} °C`,
    )
  })
  it('gives the water of a slab from that of a square metre, and the evapotranspiration', () => {
    const text = slab()
    const day = rowsOf('open-record/irrigation_drain_daily_compartment_2.csv').find((row) => row.date === '2020-03-31')!
    const share = 2 / 1.95
    expect(text).toContain(
      `Given: ${(Number(day.irrigation_L_m2) * share).toFixed(2)} L a container in 1 entry of the log. Drained: ${(Number(day.drain_L_m2) * share).toFixed(2)} L.`,
    )
    const weather = rowsOf('open-record/outside_weather_5min.csv').filter((row) =>
      row.time_local!.startsWith('2020-03-31'),
    )
    const of = (name: string) => weather.map((row) => Number(row[name]))
    const et = referenceET(
      91,
      52,
      0,
      of('outside_temperature_C'),
      of('outside_relative_humidity_pct'),
      mean(of('global_radiation_W_m2')) * 0.0864,
      mean(of('wind_speed_m_s')),
    )
    expect(text).toContain(`reference evapotranspiration by FAO-56 ${et.toFixed(2)} mm/d`)
  })
  it('tells rows of the hour that clocks leave out', () => {
    expect(slab()).toContain('12 refused, 0 doubled')
  })
})
