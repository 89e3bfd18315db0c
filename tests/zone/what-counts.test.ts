import { entriesOfRecord, followZone, proposeDay, reviewDay, reviewZone, runReducer, type ZoneRecord } from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 3 })
const second = MIDNIGHT + 86400
const third = MIDNIGHT + 2 * 86400
const lastOf = (whole: ZoneRecord, of = zone) => reviewZone({ zone: of, record: whole }).days.at(-1)!
/** The record with some readings of a probe changed. */
const changed = (name: 'A' | 'B', change: (x: number, time: number, i: number) => number | null): ZoneRecord => ({
  ...record,
  probes: {
    ...record.probes,
    [name]: Array.from(record.probes[name]!, (x, i) => change(x as number, record.time[i]!, i)),
  },
})
/** A record from a moment on, without climate and log. */
const from = (whole: ZoneRecord, begin: number): ZoneRecord => {
  const first = Array.from(whole.time).findIndex((time) => time >= begin)
  const cut = (list: ArrayLike<number | null>) => Array.from(list).slice(first) as number[]
  return { time: cut(whole.time), probes: { A: cut(whole.probes.A!), B: cut(whole.probes.B!) } }
}

describe('the longest stretch without a shot', () => {
  it('is not known where the record begins within a longer one than it saw', () => {
    const rare = benchRecord({ days: 2, hours: [8, 13, 17] })
    const night = (begin: number) => reviewDay({ zone, record: from(rare, begin), date: '2026-05-19' }).day.shotFree
    expect(night(MIDNIGHT + 16 * 3600).known).toBe(true)
    // From 18:00 on there are 14 h before the first shot; the longest pause that was seen is 5 h.
    expect(night(MIDNIGHT + 18 * 3600)).toEqual({ known: false, reason: 'last-shot-not-in-record' })
    // From 5:00 on there are 3 h, fewer than the 5 h behind them.
    const late = night(second + 5 * 3600)
    expect(late.known && (late.value.to - late.value.from) / 3600).toBeCloseTo(4.9, 0)
  })
})

describe('a reading that is doubted', () => {
  it('says nothing of the range, the level and the shots, as little as one that is wrong', () => {
    const plain = lastOf(record).probes[0]!
    // Too small a spike to be wrong, in the evening, when the level is high.
    const odd = lastOf(changed('A', (x, time) => (time === third + 18.5 * 3600 ? x + 0.05 : x))).probes[0]!
    expect(odd.counts.suspect).toBeGreaterThan(plain.counts.suspect)
    expect(odd.range).toEqual(plain.range)
    expect(odd.shots).toEqual(plain.shots)
  })
  it('begins with the first repeat of a probe that froze, at night, when nothing else tells it', () => {
    const [begin, end] = [third + 3600, third + 6 * 3600]
    let stood = 0
    const frozen = changed('A', (x, time) => {
      if (time === begin) stood = x
      return time >= begin && time < end ? stood : x
    })
    const { counts, night } = lastOf(frozen).probes[0]!
    expect(counts.suspect + counts.fail).toBeGreaterThanOrEqual(59)
    expect(lastOf(record).probes[0]!.counts.suspect).toBeLessThan(5)
    expect(night.known).toBe(false)
  })
})

describe('an entry of the log', () => {
  const { watering } = record
  const withEntry = (time: number, given: number): ZoneRecord => {
    const add = (list: ArrayLike<number | null>, x: number) => [...Array.from(list), x] as number[]
    return {
      ...record,
      watering: {
        time: add(watering!.time, time),
        given: add(watering!.given, given),
        drained: add(watering!.drained!, 0),
        feedEC: add(watering!.feedEC!, 2.4),
        drainEC: add(watering!.drainEC!, 3.3),
      },
    }
  }
  it('without water is no opening, and does not cut the night', () => {
    const [plain, zero, some] = [record, withEntry(third + 3 * 3600, 0), withEntry(third + 3 * 3600, 0.2)].map((one) =>
      lastOf(one),
    )
    expect(zero!.openings).toEqual(plain!.openings)
    expect(zero!.shotFree).toEqual(plain!.shotFree)
    expect(some!.openings).toContain(third + 3 * 3600)
    expect(some!.shotFree).not.toEqual(plain!.shotFree)
  })
  it('of few shots without drain is told when the gauge showed some in the last week', () => {
    const log = (today: readonly number[]): ZoneRecord => {
      const keep = Array.from(watering!.time, (time, i) => (time < third ? i : -1)).filter((i) => i >= 0)
      const old = (list: ArrayLike<number | null>) => keep.map((i) => list[i]!)
      return {
        ...record,
        watering: {
          time: [...old(watering!.time), ...today],
          given: [...old(watering!.given), ...today.map(() => 0.4)],
          drained: [...old(watering!.drained!), ...today.map(() => 0)],
        } as ZoneRecord['watering'] & object,
      }
    }
    const silent = (whole: ZoneRecord) => lastOf(whole).findings.filter(({ code }) => code === 'drain-gauge-silent')
    expect(silent(log([third + 9 * 3600, third + 12 * 3600]))).toHaveLength(1)
    // Nobody knows whether a gauge that never showed anything would.
    const never = { ...log([third + 9 * 3600, third + 12 * 3600]) }
    const drained = Array.from(never.watering!.given, () => 0)
    const first = { ...never, watering: { ...never.watering!, drained } }
    const alone = reviewDay({ zone, record: first, date: '2026-05-20' }).day
    expect(alone.findings.filter(({ code }) => code === 'drain-gauge-silent')).toEqual([])
  })
})

describe('light', () => {
  const lit = (change: (light: number, time: number) => number): ZoneRecord => {
    const { climate } = record
    const irradiance = Array.from(climate!.irradiance!, (x, i) => change(x as number, climate!.time[i]!))
    return { ...record, climate: { ...climate!, irradiance } }
  }
  it('that cannot be is missing, and not dark', () => {
    const plain = lastOf(record).light.course
    for (const wild of [-999, 9999, -51, 2001]) {
      const noon = third + 12 * 3600
      const { course } = lastOf(lit((x, time) => (time >= noon && time < noon + 1800 ? wild : x))).light
      // The steps hold what was there before.
      for (const step of [72, 73, 74]) expect(course[step]).toBe(plain[71])
      expect(course.slice(0, 72)).toEqual(plain.slice(0, 72))
    }
  })
  it('that is forecast for a day while it goes on teaches nothing of how forecasts of it do', () => {
    const noon = third + 12 * 3600
    const forecast = (time: number) => ({ time: [time], day: [noon], irradiance: [50] })
    const use = (made?: number) =>
      reviewZone({ zone, record: { ...record, ...(made !== undefined && { forecast: forecast(made) }) } }).memory.use
    expect(use(noon)).toEqual(use())
    expect(use(third - 3600)).not.toEqual(use())
  })
  it('of a day under way is what was measured on it, as far as it has come, and teaches nothing of a usual day', () => {
    const cloudy = lit((x, time) => (time >= third ? x / 4 : x))
    const until = (hour: number) => {
      const inputs = entriesOfRecord(cloudy).filter(({ time }) => time <= third + hour * 3600)
      const follower = followZone(zone)
      return follower.finish(runReducer({ reducer: follower, inputs }).state).at(-1)!
    }
    const before = lastOf(record).light.course
    const { course } = until(13.5).light
    for (const step of [40, 60, 80]) expect(course[step]).toBeCloseTo(before[step]! / 4, 9)
    for (const step of [82, 100, 140]) expect(course[step]).toBeCloseTo(before[step]!, 9)
    const cut = (hour: number): ZoneRecord => {
      const rows = <C extends { readonly time: ArrayLike<number> }>(columns: C): C =>
        Object.fromEntries(
          Object.entries(columns).map(([name, list]) => [
            name,
            Array.from(list as ArrayLike<number>).filter((_, i) => columns.time[i]! <= third + hour * 3600),
          ]),
        ) as unknown as C
      const { time, ...probes } = rows({ time: cloudy.time, ...cloudy.probes })
      return { time, probes: probes as never, climate: rows(cloudy.climate!), watering: rows(cloudy.watering!) }
    }
    const use = (hour: number) => reviewZone({ zone, record: cut(hour) }).memory.use
    expect(use(19)).toEqual(use(3))
  })
})

describe('the rest of a day', () => {
  it('waits until the valve has rested after its last opening', () => {
    const keen = benchZone({ limits: { ...zone.limits, depletion: 0.005 as never, minRest: 7200 as never } })
    const until = third + 12 * 3600 + 1500
    const inputs = entriesOfRecord(record).filter(({ time }) => time <= until)
    const follower = followZone(keen)
    const day = follower.finish(runReducer({ reducer: follower, inputs }).state).at(-1)!
    const proposal = proposeDay({ zone: keen, day })
    if (!proposal.known) throw new Error(proposal.reason)
    expect(proposal.value.shots.length).toBeGreaterThan(0)
    expect(proposal.value.shots[0]!.time).toBeGreaterThanOrEqual(third + 12 * 3600 + 7200 + zone.limits.maxRunTime)
  })
  it('knows what the last 24 hours took, at any place between two shots', () => {
    const real = 14 * 0.21 + 10 * 0.03
    for (let minute = 5; minute < 60; minute += 10) {
      const until = third + 12 * 3600 + minute * 60
      const inputs = entriesOfRecord(record).filter(({ time }) => time <= until)
      const follower = followZone(zone)
      const { underWay } = follower.finish(runReducer({ reducer: follower, inputs }).state).at(-1)!
      if (!underWay?.usedLately.known) throw new Error('not known')
      expect(Math.abs(underWay.usedLately.value - real)).toBeLessThan(0.03)
    }
  })
})
