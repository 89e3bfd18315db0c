import {
  explainZoneFinding,
  proposeDay,
  reportZone,
  reviewZone,
  type ZoneDay,
  type ZoneFinding,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

/** Findings that single faults of an invented bench must bring, with their numbers worked out by hand. */
const zone = benchZone()
const review = (record: ZoneRecord, of = zone) => reviewZone({ zone: of, record }).days
const found = (day: ZoneDay | undefined, code: ZoneFinding['code']) =>
  (day?.findings ?? []).filter((one) => one.code === code)
const said = (finding: ZoneFinding | undefined) => explainZoneFinding(finding as ZoneFinding, zone.place.clock).message
const report = (day: ZoneDay) =>
  reportZone({ zone, day, proposal: proposeDay({ zone, day }) })
    .flatMap(({ lines }) => lines)
    .join('\n')

type Column = 'given' | 'drained'
function logged(record: ZoneRecord, name: Column, change: (x: number, time: number) => number): ZoneRecord {
  const column = Array.from(record.watering![name]!, (x, i) => change(x as number, record.watering!.time[i]!))
  return { ...record, watering: { ...record.watering!, [name]: column } }
}
function read(record: ZoneRecord, probe: 'A' | 'B', change: (x: number, time: number) => number): ZoneRecord {
  const column = Array.from(record.probes[probe]!, (x, i) => change(x as number, record.time[i]!))
  return { ...record, probes: { ...record.probes, [probe]: column } }
}
const second = MIDNIGHT + 86400

describe('the night of a probe', () => {
  it('rose where it rose, and fell where it fell', () => {
    // From 19 o'clock of the first day on, probe A climbs by 0.12 in thirteen hours, and falls back until noon.
    const from = MIDNIGHT + 19 * 3600
    const climb = (time: number) =>
      0.12 * Math.max(0, Math.min(1, (time - from) / 46800, (from + 46800 + 14400 - time) / 14400))
    const day = review(read(benchRecord({ days: 2 }), 'A', (x, time) => x + climb(time)))[1]!
    const lines = report(day).split('\n')
    const nights = lines.filter((line) => line.startsWith('  In that stretch'))
    expect(nights).toHaveLength(2)
    expect(nights[0]).toMatch(/it rose by \d\.\d points, \d\.\d\d points an hour/)
    expect(nights[1]).toMatch(/it fell by \d\.\d points/)
    expect(day.probes[0]?.night.known && day.probes[0].night.value.fall).toBeLessThan(0)
  })
})

describe('what is not known is not zero', () => {
  it('storage without readings at midnight', () => {
    const silent = (x: number, time: number) => (Math.abs(time - second) < 7200 ? Number.NaN : x)
    const record = read(read(benchRecord({ days: 3 }), 'A', silent), 'B', silent)
    const day = review(record)[1]!
    expect(day.balance.stored).toEqual({ known: false, reason: 'no-readings-at-midnight' })
    expect(day.balance.use).toEqual(day.balance.stored)
    expect(day.balance.given).toMatchObject({ known: true })
    expect(report(day)).toMatch(
      /By the probes: not known \(no trusted probe has readings .*\)\. Used by the plants: not known/,
    )
    expect(report(day)).not.toMatch(/0\.00 L/)
  })
})

describe('a use that the climate does not bear out', () => {
  const usual = review(benchRecord({ days: 2 }))[1]!
  if (!usual.balance.use.known || !usual.climate.known) throw new Error('not known')
  const climate = usual.climate.value.perContainer
  const plainUse = usual.balance.use.value
  const drainedAll = usual.balance.drained.known ? usual.balance.drained.value : 0
  it.each([
    ['below 60 % of it', 0.5],
    ['above 160 % of it', 1.75],
  ])('is doubted %s', (_, share) => {
    // Drain is raised or lowered until the use is that share of the climate's; on the first day nothing is changed.
    const factor = (drainedAll + plainUse - share * climate) / drainedAll
    const record = logged(benchRecord({ days: 2 }), 'drained', (x, time) => (time < second ? x : factor * x))
    const day = review(record)[1]!
    const [one] = found(day, 'use-doubted')
    expect(one).toMatchObject({ use: expect.closeTo(share * climate, 9), climate: expect.closeTo(climate, 9) })
    expect(said(one)).toContain(`${Math.round(100 * share)} % of the ${climate.toFixed(2)} L`)
  })
  it('is not doubted at 70 or 150 %', () => {
    for (const share of [0.7, 1.5]) {
      const factor = (drainedAll + plainUse - share * climate) / drainedAll
      const record = logged(benchRecord({ days: 2 }), 'drained', (x, time) => (time < second ? x : factor * x))
      expect(found(review(record)[1], 'use-doubted')).toEqual([])
    }
  })
  it('below nothing is a fault of its own, and so is more drain than was given', () => {
    // All but a tenth of what was given drains on the second day, although the plants drank: 4.00 L given.
    const most = review(logged(benchRecord({ days: 2 }), 'drained', (x, time) => (time < second ? x : 0.41)))[1]!
    const [more] = found(most, 'more-drain-than-given')
    expect(more).toMatchObject({ given: expect.closeTo(4, 9), drained: expect.closeTo(4.1, 9) })
    expect(said(more)).toMatch(/^4\.10 L drained of 4\.00 L given/)
    const [negative] = found(most, 'negative-use')
    expect(negative).toMatchObject({ use: expect.closeTo(plainUse + drainedAll - 4.1, 9) })
    expect(said(negative)).toMatch(/less than zero/)
    expect(found(most, 'use-doubted')).toEqual([])
  })
})

describe('levels', () => {
  it('off the capacity of the bench test by more than five points', () => {
    const day = review(benchRecord({ days: 2, offsets: [0.004, 0.12] }))[1]!
    const of = found(day, 'off-capacity') as Extract<ZoneFinding, { code: 'off-capacity' }>[]
    const capacity = day.medium.known ? day.medium.value.containerCapacity : 0
    expect(of.map(({ probe }) => probe)).toEqual(['B'])
    const level = day.probes[1]?.drainedLevel
    expect(of[0]?.difference).toBeCloseTo((level?.known ? level.value.level : 0) - capacity, 12)
    expect(said(of[0])).toMatch(/^B drains back to \d+\.\d points above the container capacity/)
  })
  it('of probes that differ by more than five points at the end of the day', () => {
    const [spread] = found(review(benchRecord({ days: 2, offsets: [0.004, 0.074] }))[1], 'probes-differ')
    expect(spread).toMatchObject({ spread: expect.closeTo(0.07, 3) })
    expect(said(spread)).toMatch(/^the probes differ by 7\.0 points/)
    expect(found(review(benchRecord({ days: 2, offsets: [0, 0.04] }))[1], 'probes-differ')).toEqual([])
  })
  it('that are remembered while no shot drains, for a week and no longer', () => {
    // After two days of shots nobody waters for nine days; the plants hardly drink then.
    const record = benchRecord({ days: 11 })
    const dry = (list: readonly (number | null)[]) => list.filter((_, i) => record.watering!.time[i]! < second + 86400)
    const { time, given, drained } = record.watering!
    const from = Array.from(record.time).findIndex((one) => one >= second + 86400)
    const last = record.probes.A![from - 1]!
    const fall = (x: number, now: number) => (now < second + 86400 ? x : last - (0.01 * (now - second - 86400)) / 86400)
    const stopped = {
      ...record,
      watering: {
        time: dry(time as number[]) as number[],
        given: dry(given as number[]),
        drained: dry(drained as number[]),
      },
    }
    const days = review(read(read(stopped, 'A', fall), 'B', (x, now) => fall(x, now) - 0.015))
    const remembered = days.map((day) => found(day, 'level-remembered').map((one) => 'days' in one && one.days))
    // The window of a review holds the day before, so that its shots still count on the first day without any.
    expect(remembered.slice(0, 10)).toEqual([[], [], [], [1, 1], [2, 2], [3, 3], [4, 4], [5, 5], [6, 6], [7, 7]])
    expect(remembered[10]).toEqual([])
    expect(said(found(days[3], 'level-remembered')[0])).toBe(
      'A has no new level after drain; the one of 1 day ago is used',
    )
    expect(said(found(days[4], 'level-remembered')[0])).toContain('the one of 2 days ago')
  })
  it('of a probe that is silent in the last hours, which is then left out', () => {
    const quiet = (x: number, time: number) => (time > second + 20 * 3600 ? Number.NaN : x)
    const day = review(read(benchRecord({ days: 2 }), 'B', quiet))[1]!
    expect(found(day, 'no-late-reading')).toMatchObject([{ probe: 'B', level: 'caution' }])
    expect(said(found(day, 'no-late-reading')[0])).toBe('B has no late reading, and is left out')
    expect(day.probes.map(({ used }) => used)).toEqual([true, false])
  })
})

it('a plan beside a day that got nothing tells no share of nothing', () => {
  const plain = { code: 'given', level: 'note', tomorrow: 3.2 } as const
  expect(explainZoneFinding({ ...plain, today: 0 }).message).toBe('3.20 L instead of 0.00 L')
  expect(explainZoneFinding({ ...plain, today: 4 }).message).toBe('3.20 L instead of 4.00 L (−20 %)')
})
