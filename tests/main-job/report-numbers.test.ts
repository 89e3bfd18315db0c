import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { oneDay } from '../../docs/examples/one-day.js'

/**
 * The sentences of the report that rest on shots, levels, limits, learned use and the plan, worked out once more by code of its own: from the
 * raw rows and the procedures as the documentation tells them, without the package.
 */
const root = fileURLToPath(new URL('../../docs/examples/', import.meta.url))
let folder = ''
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-numbers-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

type Row = Readonly<Record<string, string>>
type Point = { readonly t: number; readonly x: number }
function rowsOf(file: string): Row[] {
  const [head = '', ...lines] = readFileSync(join(root, file), 'utf8').trim().split('\n')
  const names = head.split(',')
  return lines.map((line) => Object.fromEntries(line.split(',').map((cell, i) => [names[i] as string, cell])))
}
function report(...args: string[]): string {
  return oneDay([...args, '--picture', join(folder, 'day.svg')]).replace(/\n {2,}(?! ?\d+\. )(?=\S)/g, ' ')
}
const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0)
const mean = (list: readonly number[]) => sum(list) / list.length
const sorted = (list: readonly number[]) => [...list].sort((a, b) => a - b)
const quantile = (list: readonly number[], share: number) => {
  const all = sorted(list)
  const place = share * (all.length - 1)
  const low = Math.floor(place)
  return (all[low] as number) + (place - low) * ((all[Math.ceil(place)] as number) - (all[low] as number))
}
const percent = (share: number) => `${(100 * share).toFixed(1)} %`
/** Seconds on the clock on the wall, whatever zone a stamp names. */
const wall = (stamp: string) => Date.parse(`${stamp.replace(' ', 'T').slice(0, 16)}Z`) / 1000
const clock = (t: number) => new Date(1000 * t).toISOString().slice(11, 16)

interface Shot {
  readonly start: Point
  readonly peak: Point
}
/** Rises of at least this within half an hour, from the last reading that was as low to the highest. */
function shotsOf(points: readonly Point[], minRise: number): Shot[] {
  const shots: Shot[] = []
  let begin = 0
  for (let i = 1; i < points.length; i++) {
    const here = points[i] as Point
    if (here.t - (points[i - 1] as Point).t > 660) begin = i
    const feet = points.slice(begin, i).filter(({ t }) => here.t - t <= 1800)
    const low = Math.min(...feet.map(({ x }) => x))
    if (!(here.x - low > minRise - 1e-9)) continue
    const start = feet.filter(({ x }) => x - low <= minRise / 4 + 1e-9).at(-1) as Point
    let peak = here
    let above = 1
    let k = i + 1
    for (; k < points.length; k++) {
      const next = points[k] as Point
      if (next.t - (points[k - 1] as Point).t > 660) break
      if (next.x - start.x > minRise / 2) above++
      if (next.x > peak.x && next.t - start.t <= 1800) peak = next
      else if (next.t - peak.t > 600 || peak.x - next.x > minRise / 2 + 1e-9) break
    }
    if (above > 1) shots.push({ start, peak })
    begin = k
    i = k
  }
  return shots
}

/** The levels twenty minutes after each peak, if the next shot has not come before; of the upper half the middle, and half its middle half. */
function drained(points: readonly Point[], shots: readonly Shot[]) {
  const levels = shots.flatMap(({ peak }, k) => {
    const end = shots[k + 1]?.start.t ?? Infinity
    const settled = points.find(({ t }) => t >= peak.t + 1200)
    return settled && settled.t <= end && settled.x < peak.x ? [settled.x] : []
  })
  const upper = sorted(levels).slice(levels.length >> 1)
  return {
    level: quantile(upper, 0.5),
    spread: (quantile(upper, 0.75) - quantile(upper, 0.25)) / 2,
    shots: upper.length,
  }
}

const middleOf = (points: readonly Point[], from: number, to: number) =>
  quantile(
    points.filter(({ t }) => t >= from && t < to).map(({ x }) => x),
    0.5,
  )
/** By how much a day changed the level, midnight to midnight. */
const changeOf = (points: readonly Point[], day: number) =>
  middleOf(points, day + 82800, day + 86400) - middleOf(points, day - 1800, day + 1800)

interface PlannedShot {
  readonly at: number
  readonly litres: number
  readonly reason: string
}
function planOf(text: string): PlannedShot[] {
  return [...text.matchAll(/^ +\d+\. (\d\d):(\d\d) +(\d+) mL .*? s: (.*)$/gm)].map((m) => ({
    at: 3600 * Number(m[1]) + 60 * Number(m[2]),
    litres: Number(m[3]) / 1000,
    reason: m[4] as string,
  }))
}

/**
 * A bucket in steps of ten minutes: light takes 85 % of the use, the clock the rest; a tenth of a shot runs past, and what a step leaves
 * above the full point drains.
 */
function follow(
  shots: readonly PlannedShot[],
  start: number,
  fullPoint: number,
  substrate: number,
  use: number,
  light: readonly number[],
) {
  const all = sum(light)
  let content = start
  let drain = 0
  const before: [number, number][] = []
  light.forEach((here, i) => {
    const used = use * ((0.85 * here) / all + 0.15 / light.length)
    const given = sum(shots.filter(({ at }) => at === 600 * i).map(({ litres }) => litres))
    if (given > 0) before.push([content - used / substrate, content])
    const held = content + (0.9 * given - used) / substrate
    content = Math.min(fullPoint, held)
    drain += 0.1 * given + (held - content) * substrate
  })
  return { before, drain }
}

/** The mean of each ten minutes of a day. */
function courseOf(points: readonly Point[], day: number): number[] {
  return Array.from({ length: 144 }, (_, i) =>
    mean(points.filter(({ t }) => t >= day + 600 * i && t < day + 600 * (i + 1)).map(({ x }) => Math.max(0, x))),
  )
}

function checkPlan(text: string, level: { start: number; full: number }, substrate: number, light: readonly number[]) {
  const use = Number(/Expected use ([\d.]+) L/.exec(text)?.[1])
  const shots = planOf(text)
  const { before, drain } = follow(shots, level.start, level.full, substrate, use, light)
  shots.forEach(({ reason }, i) => {
    const told = Number(/([\d.]+) %/.exec(reason)?.[1])
    // A plan in steps of ten minutes waters before the step in which the level would fall too low.
    const [after, now] = before[i] as [number, number]
    expect(told).toBeGreaterThanOrEqual(100 * after - 0.15)
    expect(told).toBeLessThanOrEqual(100 * now + 0.15)
  })
  const share = drain / sum(shots.map(({ litres }) => litres))
  expect(Math.abs(Number(/; ([\d.]+) % of it should drain/.exec(text)?.[1]) - 100 * share)).toBeLessThanOrEqual(1)
}

describe('the report on the invented bench', () => {
  const day = wall('2026-05-19T00:00')
  const rows = rowsOf('invented-bench/readings.csv')
  const log = rowsOf('invented-bench/feed-and-drain.csv')
  const today = log.map((row) => wall(row.time as string)).filter((t) => t >= day)
  const line = { A: [438, 1185], B: [429, 1184] } as const
  const probes = (['A', 'B'] as const).map((name) => {
    const [dry, wet] = line[name]
    const points = rows.flatMap((row) => {
      const raw = Number(row[`raw_${name.toLowerCase()}`] || Number.NaN)
      // The spike beyond the calibration and the frozen stretch are where the maker put them.
      const good = raw < 1200 && !(name === 'B' && raw === 905)
      const t = wall(row.time as string)
      return good && t < day + 86400 ? [{ t, x: 0.04 + (0.825 * (raw - dry)) / (wet - dry) }] : []
    })
    const shots = shotsOf(points, 0.006)
    const { level, spread, shots: count } = drained(points, shots)
    return { name, points, shots, level, spread, count }
  })
  // Van Genuchten's curve over 12 cm above the drained bottom, in thin slices.
  const capacity = mean(
    Array.from({ length: 4000 }, (_, i) => {
      const h = (12 * (i + 0.5)) / 4000
      return 0.12 + 0.74 * (1 + (0.26 * h) ** 1.55) ** -(1 - 1 / 1.55)
    }),
  )
  const fall = 0.05 * (capacity - 0.12)
  const full = mean(probes.map(({ level }) => level))
  const text = () => report()

  it('says what the medium holds', () => {
    const porosity = 1 - 0.09 / 0.78
    expect(text()).toContain(
      `porosity ${percent(porosity)}, container capacity at a height of 12 cm ${percent(capacity)}, with ${percent(porosity - capacity)} of air; 14 L of it hold ${(14 * capacity).toFixed(1)} L.`,
    )
  })
  it('counts the shots of each probe, and gives its level after drain and its refill point', () => {
    for (const { name, points, shots, level, spread, count } of probes) {
      const seen = shots.filter(({ start }) => start.t >= day)
      const matched = today.filter((t) => seen.some(({ start }) => start.t >= t - 300 && start.t <= t + 900))
      expect(text()).toContain(
        `; ${matched.length} of ${today.length} shots seen, the first rise from ${clock(seen[0]!.start.t)}, the last from ${clock(seen.at(-1)!.start.t)}, by ${(100 * mean(seen.map(({ start, peak }) => peak.x - start.x))).toFixed(1)} points on average.`,
      )
      const own = text().slice(text().indexOf(`probe ${name}: water content`))
      expect(own).toContain(`Level after drain: ${percent(level)} ± ${percent(spread)} (${count} shots).`)
      const last = quantile(
        points.slice(-3).map(({ x }) => x),
        0.5,
      )
      const above = last - (level - fall)
      expect(own).toContain(
        `Its own refill point is ${percent(level - fall)}; the day ended at ${percent(last)}, ${(100 * Math.abs(above)).toFixed(1)} points ${above < 0 ? 'below' : 'above'} it.`,
      )
    }
  })
  it('counts good, doubtful, wrong and missing readings', () => {
    const of = rows.filter(({ time = '' }) => wall(time) >= day && wall(time) < day + 86400)
    const missing = of.filter((row) => row.raw_a === '').length
    const frozen = of.filter((row) => row.raw_b === '905').length
    for (const [name, column] of [
      ['A', 'raw_a'],
      ['B', 'raw_b'],
    ] as const) {
      const told = new RegExp(`probe ${name}: (\\d+) good, (\\d+) doubtful, (\\d+) wrong, (\\d+) missing`).exec(text())!
      const [good, doubtful, wrong, none] = told.slice(1).map(Number) as [number, number, number, number]
      expect(good + doubtful + wrong + none).toBe(of.length)
      expect(none).toBe(of.filter((row) => row[column] === '').length)
      expect(none).toBe(missing)
      // The spike takes its two neighbours with it; the frozen stretch is doubted as a whole.
      expect([doubtful, wrong]).toEqual(name === 'A' ? [0, 3] : [frozen, 0])
    }
  })
  it('gives the level of the zone and a plan that a bucket follows', () => {
    const last =
      mean(
        probes.map(
          ({ points, level }) =>
            quantile(
              points.slice(-3).map(({ x }) => x),
              0.5,
            ) - level,
        ),
      ) + full
    expect(text()).toContain(
      `full point ${percent(full)} (level after drain), refill point ${percent(full - fall)}; the day ended at ${percent(last)}.`,
    )
    const light = rows.map((row) => ({ t: wall(row.time as string), x: Number(row.radiation_W_m2) }))
    checkPlan(text(), { start: last, full }, 14, courseOf(light, day))
  })
  it('tells what the salts say and which shots cannot be judged', () => {
    const of = log.filter((row) => wall(row.time as string) >= day)
    const weighted = (ec: string, volume: string) =>
      sum(of.map((row) => Number(row[ec]) * Number(row[volume]))) / sum(of.map((row) => Number(row[volume])))
    const steady = weighted('feed_EC_mS_cm', 'feed_L') / weighted('drain_EC_mS_cm', 'drain_L')
    const share = sum(of.map((row) => Number(row.drain_L))) / sum(of.map((row) => Number(row.feed_L)))
    expect(text()).toContain(
      `at a steady state without uptake of salts ${(100 * steady).toFixed(0)} % would drain and ${(100 * share).toFixed(0)} % did`,
    )
    for (const { name, points, shots } of probes) {
      const unseen = today.filter((t) => !shots.some(({ start }) => start.t >= t - 300 && start.t <= t + 900))
      expect(unseen.length).toBeGreaterThan(0)
      const told = new RegExp(`whether probe ${name} rose after the shots? at ([\\d:, ]+) cannot be said`).exec(text())
      expect(told?.[1]?.trim()).toBe(unseen.map(clock).join(', '))
      // Readings are missing within a quarter of an hour of each of them.
      for (const t of unseen) expect(points.filter((one) => Math.abs(one.t - t) <= 900).length).toBeLessThan(7)
    }
    const root = rows.filter((row) => wall(row.time as string) >= day).map((row) => Number(row.root_C))
    expect(text()).toContain(`the root zone was at its coldest ${Math.min(...root).toFixed(1)} °C: cool`)
  })
})

describe('the report on ten days of real slabs', () => {
  const day = wall('2020-03-31T00:00')
  const text = () =>
    report(
      join(root, 'open-record/slab_5min_compartment_2.csv'),
      '--setup',
      join(root, 'open-record/compartment.json'),
      '--day',
      '2020-03-31',
    )
  const rows = rowsOf('open-record/slab_5min_compartment_2.csv')
  const column = (name: string) =>
    rows.flatMap((row) => (row[name] ? [{ t: wall(row.time_local as string), x: Number(row[name]) }] : []))
  const all = [1, 2].map((k) => column(`water_content_${k}_m3_m3`))
  const probes = all.map((points, k) => {
    const two = points.filter(({ t }) => t >= day - 86400 && t < day + 86400)
    const shots = shotsOf(two, 0.01)
    return { name: `slab ${k + 1}`, points: two, shots, full: drained(two, shots) }
  })
  const full = mean(probes.map((probe) => probe.full.level))
  const fall = 0.08 * (full - 0.1)
  const weather = rowsOf('open-record/outside_weather_5min.csv').map((row) => ({
    t: wall(row.time_local as string),
    x: Number(row.global_radiation_W_m2),
  }))
  const water = rowsOf('open-record/irrigation_drain_daily_compartment_2.csv')
  /** Given less drained less what went into storage. */
  const useOf = (date: string) => {
    const row = water.find((one) => one.date === date)
    const from = wall(`${date}T00:00`)
    const stored = 11 * mean(all.map((points) => changeOf(points, from)))
    return (2 / 1.95) * (Number(row?.irrigation_L_m2) - Number(row?.drain_L_m2)) - stored
  }

  it('counts the shots of each probe, its night, its level after drain and its refill point', () => {
    const starts = probes
      .flatMap(({ shots }) => shots.map(({ start, peak }) => [start.t, peak.t] as const))
      .sort((a, b) => a[0] - b[0])
    let best = [0, 0]
    let end = starts[0]![1]
    for (const [from, to] of starts) {
      if (from >= day && from - end > best[1]! - best[0]!) best = [end, from]
      end = Math.max(end, to)
    }
    expect(text()).toContain(
      `Longest stretch without a shot: from ${clock(best[0]!)} to ${clock(best[1]!)}, ${((best[1]! - best[0]!) / 3600).toFixed(1)} h.`,
    )
    for (const { name, points, shots, full: own } of probes) {
      const seen = shots.filter(({ start }) => start.t >= day)
      const part = text().slice(text().indexOf(`${name}: water content`))
      expect(part).toContain(
        `; ${seen.length} shots seen, the first rise from ${clock(seen[0]!.start.t)}, the last from ${clock(seen.at(-1)!.start.t)}, by ${(100 * mean(seen.map(({ start, peak }) => peak.x - start.x))).toFixed(1)} points on average.`,
      )
      expect(part).toContain(`Level after drain: ${percent(own.level)} ± ${percent(own.spread)} (${own.shots} shots).`)
      const [, from, to, points0, speed] =
        /from (\d\d:\d\d) to (\d\d:\d\d) it fell by ([\d.]+) points, ([\d.]+) points an hour/.exec(
          part,
        ) as RegExpExecArray
      const night = points.filter(
        ({ t }) => t >= day - 86400 + wall(`1970-01-01T${from}`) && t <= day + wall(`1970-01-01T${to}`),
      )
      const fell =
        quantile(
          night.slice(0, 3).map(({ x }) => x),
          0.5,
        ) -
        quantile(
          night.slice(-3).map(({ x }) => x),
          0.5,
        )
      expect((100 * fell).toFixed(1)).toBe(points0)
      expect(((100 * fell) / ((night.at(-1)!.t - night[0]!.t) / 3600)).toFixed(2)).toBe(speed)
      const last = quantile(
        points.slice(-3).map(({ x }) => x),
        0.5,
      )
      const above = last - (own.level - fall)
      expect(part).toContain(
        `Its own refill point is ${percent(own.level - fall)}; the day ended at ${percent(last)}, ${(100 * Math.abs(above)).toFixed(1)} points ${above < 0 ? 'below' : 'above'} it.`,
      )
    }
  })
  it('gives storage and use, and doubts a use that is far from that of the climate', () => {
    const stored = 11 * mean(all.map((points) => changeOf(points, day)))
    const use = useOf('2020-03-31')
    expect(text()).toContain(
      `By the probes: ${Math.abs(stored).toFixed(2)} L ${stored < 0 ? 'came out of' : 'went into'} storage. Used by the plants: ${use.toFixed(2)} L a container, ${(use / 2).toFixed(2)} L a plant.`,
    )
    const climate = Number(/L a plant and ([\d.]+) L a container/.exec(text())?.[1])
    const et = Number(/reference evapotranspiration by FAO-56 ([\d.]+) mm/.exec(text())?.[1])
    expect(Math.abs(climate - (2 * et) / 1.95)).toBeLessThanOrEqual(0.011)
    const [, share] = /(\d+) % of the [\d.]+ L that the climate says/.exec(text()) as RegExpExecArray
    expect(Math.abs(Number(share) - (100 * use) / climate)).toBeLessThanOrEqual(1)
  })
  it('foresees the use of the next day from the days so far', () => {
    const dates = [...new Set(rows.map((row) => (row.time_local as string).slice(0, 10)))].filter(
      (date) => date <= '2020-03-31',
    )
    const lit = dates.map((date) =>
      mean(
        weather
          .filter(({ t }) => t >= wall(`${date}T00:00`) && t < wall(`${date}T00:00`) + 86400)
          .map(({ x }) => Math.max(0, x)),
      ),
    )
    const { use, band } = foreseen(dates.map(useOf), lit)
    const [, told, low, high] =
      /Expected use ([\d.]+) L a container, from the days so far \(nine of ten days between ([\d.]+) L and ([\d.]+) L\)/.exec(
        text(),
      ) as RegExpExecArray
    expect(Math.abs(Number(told) - use)).toBeLessThanOrEqual(0.03)
    expect(Math.abs(Number(low) - band[0])).toBeLessThanOrEqual(0.06)
    expect(Math.abs(Number(high) - band[1])).toBeLessThanOrEqual(0.06)
  })
  it('gives the level of the zone and a plan that a bucket follows', () => {
    const last =
      mean(
        probes.map(
          ({ points, full: own }) =>
            quantile(
              points.slice(-3).map(({ x }) => x),
              0.5,
            ) - own.level,
        ),
      ) + full
    expect(text()).toContain(
      `full point ${percent(full)} (level after drain), refill point ${percent(full - fall)}; the day ended at ${percent(last)}.`,
    )
    checkPlan(text(), { start: last, full }, 11, courseOf(weather, day))
    const plan = planOf(text())
    const seen = probes
      .map(({ shots }) => shots.filter(({ start }) => start.t >= day))
      .reduce((a, b) => (b.length > a.length ? b : a))
    expect(text()).toContain(`Different from this day: ${plan.length} shots, ${seen.length} on the day before;`)
    expect(text()).toContain(
      `the first shot at ${clock(plan[0]!.at)} instead of ${clock(seen[0]!.start.t)}; the last shot at ${clock(plan.at(-1)!.at)} instead of ${clock(seen.at(-1)!.start.t)}.`,
    )
  })
})

/**
 * Eight levels of use, slow and quick, of no to a strong response to light, weighed by their misses; the band is that of the misses so far.
 * Written from the description of `forecastDailyUse` and the method behind it. No radiation is expected for the next day.
 */
function foreseen(uses: readonly number[], light: readonly number[]) {
  const members = [0.2, 0.6].flatMap((gain) =>
    [0, 0.2, 0.4, 0.6].map((power) => ({ gain, power, level: 0, spread: 0.15, loss: 0 })),
  )
  let usualLight = 0
  let usualLoss = 0.02
  let [miss90, days] = [0.1, 0]
  const normal = [1.96, 1.44, 1.15, 0.935, 0.755, 0.598, 0.454, 0.319, 0.189, 0.0627]
  const sizes = [...normal, ...normal].map((one) => 0.15 * one)
  const rank = (p: number) => {
    const list = sorted(sizes)
    const place = (list.length + 1) * p - 1
    const n = list.length
    if (place > n - 1)
      return (list[n - 1] as number) + ((place - n + 1) * ((list[n - 1] as number) - (list[n - 3] as number))) / 2
    return quantile(list, place / (n - 1))
  }
  const mixed = () => {
    const best = Math.min(...members.map(({ loss }) => loss))
    const weights = members.map(({ loss }) => Math.exp((-4 * (loss - best)) / usualLoss))
    return sum(members.map(({ level }, k) => level * (weights[k] as number))) / sum(weights)
  }
  uses.forEach((use, d) => {
    const now = light[d] as number
    const before = usualLight
    usualLight = d === 0 ? now : usualLight + Math.max(0.03, 1 / (d + 1)) * (now - usualLight)
    days++
    if (days === 1) {
      for (const one of members) one.level = use
      return
    }
    const forecast = mixed()
    const squares = members.map(({ level }) => ((use - level) / forecast) ** 2)
    const middle = quantile(squares, 0.5)
    usualLoss =
      days === 2 ? Math.max(middle, 0.0004) : Math.max(0.0001, usualLoss * (1 + 0.1 * Math.sign(middle - usualLoss)))
    const size = Math.abs(use / forecast - 1)
    miss90 += 0.03 * (0.1 - (size > rank(1 - miss90) ? 1 : 0))
    sizes.push(size)
    members.forEach((one, k) => {
      one.loss += 0.07 * (Math.min(squares[k] as number, 16 * usualLoss) - one.loss)
      const factor = Math.max(0.2, (now / before) ** one.power)
      const off = Math.max(-3 * one.spread, Math.min(3 * one.spread, use / (factor * one.level) - 1))
      one.level *= 1 + Math.max(one.gain, 1 / days) * off
      one.spread = Math.max(0.02, one.spread + 0.1 * (Math.abs(off) - one.spread))
    })
  })
  const use = mixed()
  const wide = rank(1 - miss90)
  return { use, band: [use * (1 - wide), use * (1 + wide)] as const }
}
