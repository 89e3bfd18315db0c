import * as fc from 'fast-check'
import {
  entriesOfRecord,
  explainZoneFinding,
  followZone,
  hours,
  litres,
  proposeDay,
  reportZone,
  reviewZone,
  runReducer,
  wattsPerSquareMetre,
  type ZoneDay,
  type ZoneFinding,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { type BenchOptions, benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const text = (value: unknown) => JSON.stringify(value)
const of = (day: ZoneDay | undefined, code: string) => (day?.findings ?? []).filter((one) => one.code === code)
const said = (finding: ZoneFinding | undefined) => explainZoneFinding(finding as ZoneFinding, zone.place.clock).message

function changed(record: ZoneRecord, probe: 'A' | 'B', change: (x: number, time: number) => number): ZoneRecord {
  const column = Array.from(record.probes[probe]!, (x, i) => change(x as number, record.time[i]!))
  return { ...record, probes: { ...record.probes, [probe]: column } }
}

describe('a probe that was lifted', () => {
  const lifted = MIDNIGHT + 86400 + 20 * 3600
  // In air it reads next to nothing, with noise of its own.
  const air = (x: number) => 0.08 + ((1e5 * x) % 90) / 1e5
  const record = changed(benchRecord({ days: 3 }), 'A', (x, time) => (time < lifted ? x : air(x)))
  const { days } = reviewZone({ zone, record })
  it('is left out on the day itself, and the plan rests on the other one', () => {
    const [, day] = days
    expect(day?.probes.map(({ used }) => used)).toEqual([false, true])
    expect(of(day, 'fell-away')).toMatchObject([{ probe: 'A', level: 'danger' }])
    expect(of(day, 'level-stepped')).toMatchObject([{ probe: 'A', time: lifted + 300 }])
    expect(said(of(day, 'level-stepped')[0])).toMatch(/A fell by 5\d\.\d points at once at 20:05 and stayed there/)
    const plan = proposeDay({ zone, day: day! })
    const healthy = proposeDay({ zone, day: reviewZone({ zone, record: benchRecord({ days: 3 }) }).days[1]! })
    if (!plan.known || !healthy.known) throw new Error('no plan')
    expect(plan.value.given).toBeCloseTo(healthy.value.given, 1)
    const lines = reportZone({ zone, day: day!, proposal: plan }).flatMap((section) => section.lines)
    expect(lines.some((line) => line.startsWith('A (left out)'))).toBe(true)
  })
  it('and on the day after, on which it sees no shot', () => {
    expect(days[2]?.probes.map(({ used }) => used)).toEqual([false, true])
    expect(of(days[2], 'few-shots-seen')).toMatchObject([{ probe: 'A', seen: 0 }])
  })
  it('both lifted: nothing is proposed', () => {
    const both = changed(record, 'B', (x, time) => (time < lifted ? x : air(x)))
    const day = reviewZone({ zone, record: both }).days[2]!
    const plan = proposeDay({ zone, day })
    expect(plan.known && plan.value.shots.length > 0).toBe(false)
  })
})

describe('a drain gauge that is silent', () => {
  const record = benchRecord({ days: 3 })
  const drained = Array.from(record.watering!.drained!, (x, i) => (i >= 20 ? 0 : x))
  const { days, memory } = reviewZone({ zone, record: { ...record, watering: { ...record.watering!, drained } } })
  it('is told, nothing is learned from its balance, and the plan takes the climate', () => {
    expect(days.map((day) => of(day, 'drain-gauge-silent').length)).toEqual([0, 0, 1])
    expect(said(of(days[2], 'drain-gauge-silent')[0])).toMatch(/nothing drained of 4\.00 L given \(10 entries\)/)
    expect(memory.use.days).toBe(2)
    const plan = proposeDay({ zone, day: days[2]! })
    expect(plan).toMatchObject({ known: true, value: { useFrom: 'climate' } })
  })
  it('a gauge that nobody reads is unknown, not silent', () => {
    const { drained: _, ...rest } = record.watering!
    const day = reviewZone({ zone, record: { ...record, watering: rest } }).days[1]
    expect(of(day, 'drain-gauge-silent')).toEqual([])
    expect(day?.balance.use).toEqual({ known: false, reason: 'drain-not-logged' })
  })
})

describe('lamps with shots at night', () => {
  const lamps = { on: hours(20), off: hours(14), irradiance: wattsPerSquareMetre(150) }
  const lit = benchZone({
    lamps,
    limits: { ...zone.limits, firstShotAfterLight: hours(1), lastShotBeforeDark: hours(2) },
  })
  // Lamps burn over midnight, shots come from 21 to 11 o'clock, and the plants rest in the afternoon.
  const options: BenchOptions = { days: 4, hours: [0, 2, 4, 6, 8, 10, 12, 21, 22, 23], use: { light: 0.1, dark: 0.2 } }
  const { climate: _, ...record } = benchRecord(options)
  const { days } = reviewZone({ zone: lit, record })
  it('the night is the longest stretch without shots, from the last shot', () => {
    for (const day of days.slice(1)) {
      expect(day.light).toMatchObject({ source: 'lamps', dawn: day.from + 20 * 3600, dusk: day.from + 38 * 3600 })
      if (!day.shotFree.known) throw new Error(day.shotFree.reason)
      expect(day.shotFree.value.to - day.from).toBe(21 * 3600)
      expect(Math.abs(day.shotFree.value.from - day.from - 12 * 3600)).toBeLessThanOrEqual(900)
      for (const probe of day.probes) expect(probe.night.known).toBe(true)
      for (const probe of day.probes) expect(probe.answers).toMatchObject({ openings: 10, seen: 10 })
    }
  })
  const day = days[2]!
  const plan = proposeDay({ zone: lit, day })
  if (!plan.known) throw new Error(plan.reason)
  const hoursOf = (shots: readonly { readonly time: number }[]) => shots.map(({ time }) => (time - day.to) / 3600)
  it('the plan waters within the light of the next day, after midnight and again in the evening', () => {
    const inLight = (hour: number) => (hour >= 0 && hour <= 12) || (hour >= 21 && hour < 24)
    const at = hoursOf(plan.value.shots)
    expect(at.every(inLight)).toBe(true)
    expect(at.filter((hour) => hour <= 12).length).toBeGreaterThan(2)
    expect(at.filter((hour) => hour >= 21).length).toBeGreaterThan(0)
    expect(plan.value.time).toHaveLength(144)
    expect(plan.value.given).toBeCloseTo(
      plan.value.shots.reduce((sum, { volume }) => sum + volume, 0),
      12,
    )
  })
  it('the plan does not starve them from midnight to the evening', () => {
    if (!day.level.known) throw new Error(day.level.reason)
    const { refillPoint } = day.level.value.limits
    const lowest = plan.value.waterContent.filter((_, i) => i < 12 * 6)
    expect(Math.min(...lowest)).toBeGreaterThan(refillPoint - 0.02)
  })
  it('what a day may have is kept in part for the evening', () => {
    const little = { ...lit, limits: { ...lit.limits, maxPerDay: litres(1.6) } }
    const small = proposeDay({ zone: little, day: reviewZone({ zone: little, record }).days[2]! })
    if (!small.known) throw new Error(small.reason)
    expect(small.value.given).toBeLessThanOrEqual(1.6 + 1e-9)
    expect(hoursOf(small.value.shots).filter((hour) => hour >= 21).length).toBeGreaterThan(0)
  })
  it('the rest of a night is planned from the last reading on', () => {
    const { climate: __, ...long } = benchRecord({ ...options, days: 9 })
    const midnight = MIDNIGHT + 8 * 86400
    const rests = [3, 13, 21.8].map((now) => {
      const follower = followZone(lit)
      const inputs = entriesOfRecord(long).filter(({ time }) => time <= midnight + now * 3600)
      const under = follower.finish(runReducer({ reducer: follower, inputs }).state).at(-1)!
      expect(under.from).toBe(midnight)
      const rest = proposeDay({ zone: lit, day: under })
      if (!rest.known) throw new Error(`${now}: ${rest.reason}`)
      return rest.value.shots.map(({ time }) => (time - midnight) / 3600)
    })
    for (const [k, now] of [3, 13, 21.8].entries()) {
      expect(Math.min(...rests[k]!)).toBeGreaterThanOrEqual(now)
      expect(rests[k]!.every((hour) => hour <= 12 || hour >= 21)).toBe(true)
      expect(rests[k]!.some((hour) => hour <= 12)).toBe(now < 12)
    }
  })
})

describe('days of 23 and 25 hours', () => {
  const clock = [
    { from: 0, ahead: 3600 },
    { from: Date.UTC(2026, 2, 29, 1) / 1000, ahead: 7200 },
    { from: Date.UTC(2026, 9, 25, 1) / 1000, ahead: 3600 },
  ]
  const shifted = benchZone({ place: { ...zone.place, clock } })
  const moved = (first: number): ZoneRecord => {
    const record = benchRecord({ days: 4 })
    const by = first - MIDNIGHT
    const shift = (list: ArrayLike<number>) => Array.from(list, (time) => time + by)
    return {
      ...record,
      time: shift(record.time),
      climate: { ...record.climate!, time: shift(record.climate!.time) },
      watering: { ...record.watering!, time: shift(record.watering!.time) },
    }
  }
  it.each([
    ['spring', Date.UTC(2026, 2, 26, 23) / 1000, '2026-03-29', 23],
    ['autumn', Date.UTC(2026, 9, 22, 22) / 1000, '2026-10-25', 25],
  ])('in %s are whole days, at once and one by one', (_, first, date, length) => {
    const record = moved(first)
    const { days } = reviewZone({ zone: shifted, record })
    const day = days.find((one) => one.date === date)
    expect(day).toMatchObject({ readings: 12 * length, to: (day?.from ?? 0) + 3600 * length })
    expect(day?.light.course).toHaveLength(6 * length)
    expect(day?.probes[0]?.shots).toHaveLength(10)
    expect(day?.balance.given).toMatchObject({ known: true, value: expect.closeTo(4, 9) })
    const follower = followZone(shifted)
    const { state, outputs } = runReducer({ reducer: follower, inputs: entriesOfRecord(record) })
    expect(text([...outputs.flat(), ...follower.finish(state)])).toBe(text(days))
    // The plan for the day of the break, from the one before it, lies within that day.
    const before = days[days.findIndex((one) => one.date === date) - 1]!
    const plan = proposeDay({ zone: shifted, day: before })
    if (!plan.known) throw new Error(plan.reason)
    expect(plan.value.date).toBe(date)
    expect(plan.value.time).toHaveLength(6 * length)
    for (const { time } of plan.value.shots) {
      expect(time).toBeGreaterThanOrEqual(before.to)
      expect(time).toBeLessThan(before.to + 3600 * length)
    }
  })
})

describe('a leak', () => {
  const from = MIDNIGHT + 86400 + 20 * 3600
  const to = from + 4 * 3600
  it('is told by the probes that climb without a shot', () => {
    const climb = (x: number, time: number) =>
      x +
      (time < from
        ? 0
        : (0.03 * (Math.min(time, to) - from)) / (to - from) + 0.015 * ((Math.min(time, to) - from) / 14400))
    const record = changed(changed(benchRecord({ days: 2 }), 'A', climb), 'B', climb)
    const day = reviewZone({ zone, record }).days[1]
    const found = of(day, 'climbs-between-shots') as Extract<ZoneFinding, { code: 'climbs-between-shots' }>[]
    expect(found.map(({ probe }) => probe)).toEqual(['A', 'B'])
    for (const one of found) {
      expect(one.rise).toBeGreaterThan(0.02)
      expect(one.from).toBeGreaterThanOrEqual(from - 3600)
    }
    expect(said(found[0])).toMatch(/A climbed by \d\.\d points .* leaks/)
  })
  it('a healthy bench has none, whatever the noise', () => {
    fc.assert(
      fc.property(fc.nat(100000), (seed) => {
        const { days } = reviewZone({ zone, record: benchRecord({ days: 2, seed }) })
        for (const day of days)
          for (const code of ['climbs-between-shots', 'level-stepped']) expect(of(day, code)).toEqual([])
      }),
      { numRuns: 8 },
    )
  })
})

describe('salt that the probe takes for water', () => {
  it('is told when the level after drain and the drain climb together, not when one of them does', () => {
    const record = benchRecord({ days: 8 })
    const day = (time: number) => Math.floor((time - MIDNIGHT) / 86400)
    const salty = changed(record, 'A', (x, time) => x + 0.004 * day(time))
    const drainEC = Array.from(record.watering!.time, (time) => 3.3 + 0.2 * day(time))
    const found = (one: ZoneRecord) => of(reviewZone({ zone, record: one }).days.at(-1), 'rises-with-salt')
    const both = found({ ...salty, watering: { ...record.watering!, drainEC } })
    expect(both).toMatchObject([
      { probe: 'A', levelPerDay: expect.closeTo(0.004, 3), drainPerDay: expect.closeTo(0.2, 6) },
    ])
    expect(said(both[0])).toMatch(/level after drain of A rises by 0\.\d\d points a day .* 0\.20 dS\/m a day/)
    expect(found(salty)).toEqual([])
    expect(found({ ...record, watering: { ...record.watering!, drainEC } })).toEqual([])
  })
})

describe('radiation that is expected', () => {
  // The use follows the light of the day, which changes from day to day.
  const dim = (d: number) => [1, 0.4, 0.8, 0.5, 1.2, 0.3, 0.9][d % 7]!
  const record = (): ZoneRecord => {
    const plain = benchRecord({ days: 15 })
    const climate = {
      ...plain.climate!,
      irradiance: Array.from(plain.climate!.irradiance!, (x, i) => (x as number) * dim(Math.floor(i / 288))),
    }
    const share = Array.from(plain.watering!.time, (time) => dim(Math.floor((time - MIDNIGHT) / 86400)))
    const drained = Array.from(plain.watering!.drained!, (x, i) => (x as number) + 0.1 * (1 - share[i]!))
    return { ...plain, climate, watering: { ...plain.watering!, drained } }
  }
  const means = Array.from({ length: 16 }, (_, d) => {
    const light = Array.from(benchRecord({ days: 1 }).climate!.irradiance!) as number[]
    return (light.reduce((a, b) => a + b) / light.length) * dim(d)
  })
  const made = means.map((_, d) => MIDNIGHT + d * 86400 - 3600)
  const forecast = { time: made, day: made.map((time) => time + 13 * 3600), irradiance: means }
  const plain = record()
  const whole = reviewZone({ zone, record: { ...plain, forecast } })

  it('makes the use of a bright day larger than that of a dark one, and is told in the plan', () => {
    const without = reviewZone({ zone, record: plain }).days.at(-1)!
    const day = whole.days.at(-1)!
    expect(day.expectedRadiation).toBeCloseTo(means[15]!, 9)
    if (!day.nextUse.known || !without.nextUse.known) throw new Error('not known')
    // Day 15 is brighter than the mean of the days.
    const dark = reviewZone({
      zone,
      record: { ...plain, forecast: { ...forecast, irradiance: means.map((x, d) => (d === 15 ? 0.3 * x : x)) } },
    }).days.at(-1)!
    expect(dark.nextUse.known && dark.nextUse.use).toBeLessThan(day.nextUse.use)
    const plan = proposeDay({ zone, day })
    expect(plan).toMatchObject({ known: true, value: { expectedRadiation: day.expectedRadiation } })
    const lines = reportZone({ zone, day, proposal: plan }).flatMap((section) => section.lines)
    expect(lines.join('\n')).toContain(`and an expected radiation of ${(means[15]!).toFixed(0)} W/m²`)
  })
  it('is the same one by one and through JSON', () => {
    const follower = followZone(zone)
    const entries = entriesOfRecord({ ...plain, forecast })
    const first = runReducer({ reducer: follower, inputs: entries.slice(0, 6000) })
    const state = follower.restore(JSON.parse(text(first.state)))
    const second = runReducer({ reducer: follower, inputs: entries.slice(6000), state })
    expect(text([...first.outputs.flat(), ...second.outputs.flat(), ...follower.finish(second.state)])).toBe(
      text(whole.days),
    )
  })
  it('counts as it was made: what was said after the day began, or for another day, does not', () => {
    const late = { ...forecast, time: made.map((time) => time + 7200) }
    expect(reviewZone({ zone, record: { ...plain, forecast: late } }).days.at(-1)?.expectedRadiation).toBeUndefined()
    const other = { ...forecast, day: forecast.day.map((time) => time + 86400) }
    expect(reviewZone({ zone, record: { ...plain, forecast: other } }).days.at(-1)?.expectedRadiation).toBeUndefined()
    const none = { ...forecast, irradiance: means.map(() => null) }
    expect(reviewZone({ zone, record: { ...plain, forecast: none } }).days.at(-1)?.expectedRadiation).toBeUndefined()
  })
})
