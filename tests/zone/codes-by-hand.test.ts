import {
  explainZoneFinding,
  hours,
  litresPerHour,
  proposeDay,
  reviewZone,
  wattsPerSquareMetre,
  type ZoneDay,
  type ZoneFinding,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 3 })
const lastOf = (odd: ZoneRecord, of = zone) => reviewZone({ zone: of, record: odd }).days.at(-1)!
const coded = <C extends ZoneFinding['code']>(day: ZoneDay, code: C) =>
  day.findings.filter((one): one is Extract<ZoneFinding, { code: C }> => one.code === code)
const by = (list: ArrayLike<number | null>, change: (x: number, i: number) => number | null) =>
  Array.from(list, (x, i) => (x === null ? null : change(x, i)))

describe('salts-not-steady', () => {
  const withSalts = (feed: number, drain: number, change: Partial<ZoneRecord> = {}) => {
    const { watering } = record
    const feedEC = by(watering!.given, () => feed)
    return lastOf({
      ...record,
      ...change,
      watering: { ...watering!, feedEC, drainEC: by(watering!.given, () => drain) },
    })
  }
  const share = lastOf(record).balance.drainFraction
  const drained = share.known ? share.value : Number.NaN
  it('tells EC of feed by EC of drain, the leaching fraction of a steady state (Ayers and Westcot 1985, FAO 29, Eq. 8; from memory)', () => {
    // FAO 29: water of 1 dS/m that drains with 5 dS/m leaves a fifth behind.
    const [one] = coded(withSalts(1, 1.5), 'salts-not-steady')
    expect(one!.steady).toBeCloseTo(2 / 3, 12)
    expect(one!.share).toBeCloseTo(drained, 12)
    expect(explainZoneFinding(one!).message).toContain('67 % would drain')
  })
  it('is told from 5 points of the share on, and not where more drains than a steady state needs', () => {
    const at = (steady: number) => coded(withSalts(steady, 1), 'salts-not-steady').length
    expect(at(drained + 0.0501)).toBe(1)
    expect(at(drained + 0.0499)).toBe(0)
    expect(at(drained - 0.1)).toBe(0)
  })
  it('does not move where all conductivities are scaled, and is not told of numbers that cannot be', () => {
    expect(coded(withSalts(4, 6), 'salts-not-steady')).toEqual(coded(withSalts(2, 3), 'salts-not-steady'))
    for (const bad of [0, -1, Number.NaN, 2500]) expect(coded(withSalts(2, bad), 'salts-not-steady')).toEqual([])
  })
})

describe('ec-doubted', () => {
  const withEC = (feed: number, drain: number) => {
    const { watering } = record
    const [feedEC, drainEC] = [feed, drain].map((value) => by(watering!.given, () => value))
    return reviewZone({ zone, record: { ...record, watering: { ...watering!, feedEC: feedEC!, drainEC: drainEC! } } })
  }
  const doubts = (feed: number, drain: number) => coded(withEC(feed, drain).days.at(-1)!, 'ec-doubted')
  it('is told of a drain EC of 0.0 beside a feed, which had passed in silence', () => {
    const [dead] = doubts(2.4, 0)
    expect(dead).toMatchObject({ level: 'caution', about: 'drainEC', value: 0 })
    expect(dead!.beside).toBeCloseTo(2.4, 9)
    expect(explainZoneFinding(JSON.parse(JSON.stringify(dead))).message).toContain('weaker than rain')
  })
  it('is told of a feed EC of 0.0, and not where both can be', () => {
    expect(doubts(0, 4)[0]).toMatchObject({ about: 'feedEC', value: 0 })
    expect(doubts(2.4, 4)).toEqual([])
  })
  it('teaches nothing of what the probes make of salt', () => {
    expect(withEC(2.4, 4).memory.salt.length).toBeGreaterThan(0)
    expect(withEC(2.4, 0).memory.salt).toEqual([])
  })
})

describe('root-zone-temperature', () => {
  const withRoot = (change: (x: number) => number) =>
    coded(lastOf({ ...record, rootTemperature: by(record.rootTemperature!, change) }), 'root-zone-temperature')
  it('tells the coldest and the warmest of the day by their bands', () => {
    // The bench swings from 18 to 22 °C.
    expect(withRoot((x) => x - 8).map(({ extreme, value }) => [extreme, value])).toEqual([
      ['lowest', 10],
      ['highest', 14],
    ])
    expect(withRoot((x) => x + 12).map(({ extreme, value }) => [extreme, value])).toEqual([
      ['lowest', 30],
      ['highest', 34],
    ])
  })
  it('is no less hard on a zone that is colder, and silent about one that is well', () => {
    const rank = { note: 0, caution: 1, danger: 2 }
    const worst = (by: number) => Math.max(-1, ...withRoot((x) => x - by).map(({ level }) => rank[level]))
    const colder = [-1, 0, 1, 2, 4, 6, 8, 10, 12, 15].map(worst)
    expect(colder).toEqual([...colder].sort((a, b) => a - b))
    expect(colder[0]).toBe(-1)
    expect(colder.at(-1)).toBeGreaterThan(0)
  })
})

describe('light-assumed', () => {
  const { irradiance, ...air } = record.climate!
  it('is told where nobody measured it, and for nothing else', () => {
    expect(coded(lastOf({ ...record, climate: air }), 'light-assumed')).toHaveLength(1)
    expect(coded(lastOf(record), 'light-assumed')).toEqual([])
    const lamps = { on: hours(6), off: hours(20), irradiance: wattsPerSquareMetre(150) }
    expect(coded(lastOf({ ...record, climate: air }, benchZone({ lamps })), 'light-assumed')).toEqual([])
  })
  it('is told where light is words of a logger only, and plans shots by day', () => {
    const day = lastOf({ ...record, climate: { ...air, irradiance: by(irradiance!, () => 65535) } })
    expect(coded(day, 'light-assumed')).toHaveLength(1)
    const plan = proposeDay({ zone, day })
    const clock = plan.known ? plan.value.shots.map(({ time }) => ((time - day.to) / 3600 + 24) % 24) : []
    expect(clock.length).toBeGreaterThan(3)
    for (const hour of clock) expect(hour > 6 && hour < 20).toBe(true)
  })
})

describe('shots-not-judged', () => {
  const at = (hour: number) => MIDNIGHT + 2 * 86400 + hour * 3600
  const silent = (hour: number, minutes: number): ZoneRecord => {
    const gap = (i: number) => record.time[i]! >= at(hour) - 600 && record.time[i]! <= at(hour) + 60 * minutes
    return { ...record, probes: { ...record.probes, A: by(record.probes.A!, (x, i) => (gap(i) ? null : x)) } }
  }
  it.each([8, 12, 17])('names the shot beside which readings are missing (%i o’clock), and no other', (hour) => {
    expect(coded(lastOf(silent(hour, 40)), 'shots-not-judged')).toEqual([
      { code: 'shots-not-judged', level: 'note', probe: 'A', times: [at(hour)] },
    ])
  })
  it('is not told of a gap between shots', () => {
    const gap = (i: number) => record.time[i]! >= at(20) && record.time[i]! <= at(22)
    const A = by(record.probes.A!, (x, i) => (gap(i) ? null : x))
    expect(coded(lastOf({ ...record, probes: { ...record.probes, A } }), 'shots-not-judged')).toEqual([])
  })
  it('counts neither for nor against the probe', () => {
    const [A] = lastOf(silent(12, 40)).probes
    expect(A!.answers).toMatchObject({ openings: 10, seen: 9, withoutRise: [], withoutLog: [] })
    expect(A!.used).toBe(true)
  })
})

describe('no-level-after-drain', () => {
  /** B without readings from a quarter of an hour to the end of the hour after each shot, in which its level after drain would show. */
  const hidden = (): ZoneRecord => {
    const gap = (i: number) => ((record.time[i]! - MIDNIGHT) % 3600) / 60 > 12
    const shots = (i: number) =>
      ((record.time[i]! - MIDNIGHT) % 86400) / 3600 >= 8 && ((record.time[i]! - MIDNIGHT) % 86400) / 3600 < 18
    const B = by(record.probes.B!, (x, i) => (shots(i) && gap(i) ? null : x))
    return { ...record, probes: { ...record.probes, B } }
  }
  it('leaves a probe out whose level after drain nobody saw, beside one that has its own', () => {
    const day = lastOf(hidden())
    expect(day.probes[1]!.drainedLevel).toEqual({ known: false, reason: 'few-settled-shots' })
    expect(coded(day, 'no-level-after-drain')).toMatchObject([{ probe: 'B' }])
    expect(day.probes.map(({ used }) => used)).toEqual([true, false])
    expect(day.level.known).toBe(true)
    expect(coded(lastOf(record), 'no-level-after-drain')).toEqual([])
  })
})

describe('climate-doubted', () => {
  it('tells a wind that was assumed: 2 m/s (FAO 56, chapter 3; from memory)', () => {
    const { windSpeed: _, ...still } = record.climate!
    const day = lastOf({ ...record, climate: still })
    const two = lastOf({ ...record, climate: { ...still, windSpeed: by(still.airTemperature!, () => 2) } })
    expect(coded(day, 'climate-doubted').map(({ weather }) => weather.code)).toContain('assumed-wind')
    const et = (one: ZoneDay) => (one.climate.known ? one.climate.value.referenceET : Number.NaN)
    expect(et(day)).toBeCloseTo(et(two), 10)
  })
})

describe('what a proposal changes', () => {
  const day = lastOf(record)
  const changes = (of = zone, from = day) => {
    const plan = proposeDay({ zone: of, day: from })
    if (!plan.known) throw new Error(plan.reason)
    return { value: plan.value, told: plan.value.differences }
  }
  it('is told by its own numbers and those of the day', () => {
    const { value, told } = changes()
    for (const one of told) {
      if (one.code === 'given') {
        expect(one.today).toBeCloseTo(4, 9)
        expect(one.tomorrow).toBeCloseTo(value.given, 9)
      }
      if (one.code === 'shots') expect([one.today, one.tomorrow]).toEqual([10, value.shots.length])
      if (one.code === 'first-shot') expect([one.today, one.tomorrow]).toEqual([day.openings[0], value.shots[0]!.time])
      if (one.code === 'last-shot')
        expect([one.today, one.tomorrow]).toEqual([day.openings.at(-1), value.shots.at(-1)!.time])
    }
    expect(told.map(({ code }) => code)).toEqual(expect.arrayContaining(['shots', 'first-shot', 'last-shot']))
  })
  it('tells one shot as one', () => {
    expect(explainZoneFinding({ code: 'shots', level: 'note', today: 10, tomorrow: 1 }).message).toBe(
      '1 shot, 10 on the day before',
    )
  })
  it('waters no more where emitters are stronger, only for less time', () => {
    const strong = changes(benchZone({ emitters: { ...zone.emitters, flow: litresPerHour(4) } }))
    expect(strong.value.given).toBeCloseTo(changes().value.given, 1)
  })
})
