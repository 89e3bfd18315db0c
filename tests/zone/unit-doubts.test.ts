import * as fc from 'fast-check'
import {
  entriesOfRecord,
  explainZoneFinding,
  followZone,
  proposeDay,
  reviewZone,
  runReducer,
  type ZoneFinding,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

/** Numbers of another unit, and logs on another clock: what can be told from the numbers is told with a remedy, and makes no wrong number. */
const zone = benchZone()
const plain = benchRecord({ days: 3 })
const days = (record: ZoneRecord, of = zone) => reviewZone({ zone: of, record }).days
const said = (one: ZoneFinding) => explainZoneFinding(one, zone.place.clock).message
const doubts = (record: ZoneRecord) =>
  days(record)[1]!.findings.filter((one) =>
    ['unit-doubted', 'light-off-noon', 'log-on-another-clock'].includes(one.code),
  )

type ClimateColumn = 'airTemperature' | 'relativeHumidity' | 'irradiance' | 'windSpeed'
function climate(name: ClimateColumn, change: (x: number) => number): ZoneRecord {
  const column = Array.from(plain.climate![name]!, (x) => change(x as number))
  return { ...plain, climate: { ...plain.climate!, [name]: column } }
}
function log(change: Partial<NonNullable<ZoneRecord['watering']>>): ZoneRecord {
  return { ...plain, watering: { ...plain.watering!, ...change } }
}
const fahrenheit = (x: number) => 32 + 1.8 * x
const scaled = (list: ArrayLike<number | null> | undefined, by: number) => Array.from(list!, (x) => (x as number) * by)

describe('numbers of another unit', () => {
  it('healthy ones are not doubted', () => expect(doubts(plain)).toEqual([]))
  it.each<[string, ZoneRecord, string, RegExp]>([
    [
      'air in °F',
      climate('airTemperature', fahrenheit),
      'fahrenheit',
      /^an air temperature of .* °C is hard to believe.*Fahrenheit/,
    ],
    ['cool air in °F', climate('airTemperature', (x) => fahrenheit(x - 15)), 'fahrenheit', /Fahrenheit/],
    ['air in kelvin', climate('airTemperature', (x) => x + 273.15), 'kelvin', /kelvin/],
    ['per cent for a fraction', climate('relativeHumidity', (x) => 100 * x), 'per-cent', /humidity of 70 .*per cent/],
    ['a fraction for per cent', climate('relativeHumidity', (x) => x / 100), 'fraction', /humidity of 0\.007 /],
    ['light for growth', climate('irradiance', (x) => 4.57 * x), 'light-for-growth', /about 2 for each W\/m²/],
    ['lux', climate('irradiance', (x) => 120 * x), 'light-for-growth', /or like lux/],
    ['MJ/m² in an hour', climate('irradiance', (x) => 0.0036 * x), 'megajoules', /278 W\/m²/],
    ['kW/m²', climate('irradiance', (x) => x / 1000), 'megajoules', /or kW\/m²/],
    [
      'wind in km/h',
      climate('windSpeed', () => 3.6 * 3.5),
      'kilometres-per-hour',
      /of 12\.6 m\/s .*\(3\.6 km\/h is 1 m\/s\)/,
    ],
    [
      'feed in mS/m',
      log({ feedEC: scaled(plain.watering!.feedEC, 100) }),
      'millisiemens-per-metre',
      /^a feed EC of 240 dS\/m .*\(100 mS\/m is 1 dS\/m\)/,
    ],
    [
      'tap water in mS/m',
      log({ feedEC: scaled(plain.watering!.feedEC, 20) }),
      'millisiemens-per-metre',
      /^a feed EC of 48 dS\/m/,
    ],
    [
      'drain in µS/cm',
      log({ drainEC: scaled(plain.watering!.drainEC, 1000) }),
      'microsiemens-per-centimetre',
      /^a drain EC of 3300 dS\/m/,
    ],
    [
      'a root zone in °F',
      { ...plain, rootTemperature: Array.from(plain.rootTemperature!, (x) => fahrenheit(x as number)) },
      'fahrenheit',
      /^a root-zone temperature of 6\d\.?\d? °C .*Fahrenheit/,
    ],
    [
      'a cold root zone in °F, beside its air',
      { ...climate('airTemperature', (x) => x - 14), rootTemperature: Array.from(plain.rootTemperature!, () => 43) },
      'fahrenheit',
      /^a root-zone temperature of 43 °C/,
    ],
  ])('%s', (_, record, like, sentence) => {
    const found = doubts(record)
    expect(found).toMatchObject([{ code: 'unit-doubted', like }])
    expect(said(found[0]!)).toMatch(sentence)
    expect(said(found[0]!)).toMatch(/set the unit of its column/)
  })
  it('no demand is told from an air, a humidity or a light of another unit', () => {
    const wrong = [
      climate('airTemperature', fahrenheit),
      climate('airTemperature', (x) => x + 273.15),
      climate('relativeHumidity', (x) => x / 100),
      climate('irradiance', (x) => 4.57 * x),
      climate('irradiance', (x) => x / 1000),
    ]
    for (const record of wrong) expect(days(record)[1]!.climate).toEqual({ known: false, reason: 'climate-impossible' })
  })
  it('a storm stays in the demand', () => {
    const of = (speed: number) => {
      const { climate: demand } = days(climate('windSpeed', () => speed))[1]!
      if (!demand.known) throw new Error(demand.reason)
      return demand.value.referenceET
    }
    expect(of(14)).toBeGreaterThan(of(4))
  })
  it('a kept day with a doubt is taken back, and refused where the doubt was changed', () => {
    const day = days(climate('airTemperature', fahrenheit))[1]!
    const kept = () => JSON.parse(JSON.stringify(day))
    expect(proposeDay({ zone, day: kept() }).known).toBe(true)
    for (const change of [{ like: 'stone' }, { about: 'soil' }, { value: 'warm' }]) {
      const odd = kept()
      Object.assign(
        odd.findings.find(({ code }: ZoneFinding) => code === 'unit-doubted'),
        change,
      )
      expect(() => proposeDay({ zone, day: odd })).toThrow(/finding/)
    }
  })
  it('one wild number is no unit', () => {
    const wild = (list: ArrayLike<number | null>) => Array.from(list, (x, i) => (i === 400 ? 3000 : x))
    const air = wild(plain.climate!.irradiance!)
    expect(doubts({ ...plain, climate: { ...plain.climate!, irradiance: air } })).toEqual([])
  })
})

describe('clocks that differ', () => {
  const hours = [6.5, 7.75, 9, 9.8, 10.7, 11.5, 12.3, 13.2, 14.3, 16]
  const uneven = benchRecord({ days: 3, hours })
  const moved = (record: ZoneRecord, by: number): ZoneRecord => ({
    ...record,
    watering: { ...record.watering!, time: Array.from(record.watering!.time, (time) => time + 3600 * by) },
  })
  it('a log in local time that was taken for universal time is told by its hours, and no valve is blamed', () => {
    for (const by of [2, -2, 5.5, -7, 9]) {
      for (const record of [uneven, plain]) {
        const day = days(moved(record, by))[1]!
        expect(day.findings[0], String(by)).toEqual({ code: 'log-on-another-clock', level: 'danger', hours: -by })
        const blamed = ['no-water', 'bypass', 'few-shots-seen', 'shots-without-rise', 'rises-without-shot']
        expect(day.findings.filter(({ code }) => blamed.includes(code))).toEqual([])
        expect(day.probes.map(({ used }) => used)).toEqual([true, true])
      }
    }
    expect(said(days(moved(uneven, 2))[1]!.findings[0]!)).toMatch(/moved by −2\.0 h.*local instead of universal/)
  })
  it('is not told of a log that fits, of shots that fail, or of water by hand', () => {
    const told = (record: ZoneRecord) =>
      days(record)
        .flatMap(({ findings }) => findings)
        .map(({ code }) => code)
    expect(told(plain)).not.toContain('log-on-another-clock')
    expect(told(uneven)).not.toContain('log-on-another-clock')
    // Entries of half of the shots are lost; then twice as many stand in the log as were given.
    const half = (list: ArrayLike<number | null>) => Array.from(list).filter((_, i) => i % 2 === 0)
    const thin = Object.fromEntries(Object.entries(uneven.watering!).map(([name, list]) => [name, half(list)]))
    expect(told({ ...uneven, watering: thin as never })).not.toContain('log-on-another-clock')
    const fewer = benchRecord({ days: 3, hours: half(hours) as number[] })
    expect(told({ ...fewer, watering: uneven.watering! })).not.toContain('log-on-another-clock')
  })
  it('light whose middle is far from noon', () => {
    const by = (shift: number) => ({
      ...plain,
      climate: { ...plain.climate!, time: Array.from(plain.climate!.time, (time) => time + 3600 * shift) },
    })
    const [late] = doubts(by(7))
    expect(late).toMatchObject({ code: 'light-off-noon', level: 'caution' })
    // Of the day before 11 % of the light fall on the hours before 3; 39 % more have come at 19:01: 0.391 = (1 − cos(6.02 π / 14)) / 2.
    expect(said(late!)).toMatch(/by 19:10, far from noon/)
    expect(doubts(by(-6))).toMatchObject([{ code: 'light-off-noon' }])
    for (const shift of [-2, 2]) expect(doubts(by(shift))).toEqual([])
  })
})

describe('a zone that says how far its level may fall', () => {
  const { depletion: _, ...limits } = zone.limits
  const { medium: __, ...bare } = zone
  const by = (allowedFall: number) => ({ ...bare, limits: { ...limits, allowedFall } }) as unknown as typeof zone
  it('has its refill point so far below the full point, with a bench test and without', () => {
    for (const one of [by(0.025), { ...by(0.025), medium: zone.medium! }]) {
      const { level } = days(plain, one)[1]!
      if (!level.known) throw new Error(level.reason)
      expect(level.value.limits.fullPoint - level.value.limits.refillPoint).toBeCloseTo(0.025, 12)
    }
  })
  it('without a bench test no offset of a probe changes shots, use, night, forecasts or plan', () => {
    const of = (steps: readonly [number, number]) => {
      const record = benchRecord({ days: 9, offsets: [steps[0] / 1e5, steps[1] / 1e5] })
      const day = days(record, by(0.06)).at(-1)!
      return { day, plan: proposeDay({ zone: by(0.06), day }) }
    }
    const still = of([0, 0])
    const close = (x: number, y: number) => expect(Math.abs(x - y)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(x)))
    fc.assert(
      fc.property(fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })), (steps) => {
        const moved = of(steps)
        for (const [p, a] of still.day.probes.entries()) {
          const b = moved.day.probes[p]!
          expect(b.shots.map(({ start }) => start)).toEqual(a.shots.map(({ start }) => start))
          if (!a.timeToRefill.known || !b.timeToRefill.known || !a.nextHour.known || !b.nextHour.known)
            throw new Error('not known')
          expect(a.timeToRefill.time).toBeGreaterThan(3600)
          close(b.timeToRefill.time, a.timeToRefill.time)
          for (const band of ['band50', 'band90'] as const)
            for (const end of ['earliest', 'latest'] as const)
              close(b.timeToRefill[band][end]!, a.timeToRefill[band][end]!)
          close(b.nextHour.use, a.nextHour.use)
          if (!a.night.known || !b.night.known) throw new Error('not known')
          close(b.night.value.fall, a.night.value.fall)
        }
        const { balance, nextUse } = still.day
        if (!balance.use.known || !moved.day.balance.use.known || !nextUse.known || !moved.day.nextUse.known)
          throw new Error('not known')
        close(moved.day.balance.use.value, balance.use.value)
        close(moved.day.nextUse.use, nextUse.use)
        if (!still.plan.known || !moved.plan.known) throw new Error('no plan')
        close(moved.plan.value.given, still.plan.value.given)
        expect(moved.plan.value.shots.map(({ time }) => time)).toEqual(still.plan.value.shots.map(({ time }) => time))
      }),
      { numRuns: 20, examples: [[[9000, -9000]]] },
    )
  })
  it('takes no share of what probes report, which would move with their offset', () => {
    const share = { ...bare, limits: { ...limits, depletion: 0.1 } } as unknown as typeof zone
    expect(() => followZone(share)).toThrow(/limits\.depletion.*bench test.*"allowedFall"/)
    expect(() => followZone({ ...share, medium: zone.medium! })).not.toThrow()
  })
  it('one of the two says when to water again, not both and not none', () => {
    expect(() => followZone({ ...zone, limits })).toThrow(/say not when to water again.*"allowedFall"/)
    expect(() => followZone(benchZone({ limits: { ...zone.limits, allowedFall: 0.02 as never } }))).toThrow(/both/)
    expect(() => followZone(by(2.5))).toThrow(/0\.03 for three points/)
    const deep = days(plain, by(0.6))[1]!
    expect(deep.level).toEqual({ known: false, reason: 'full-point-below-lower-limit' })
  })
})

it('doubts are the same at once, reading by reading, and through JSON', () => {
  const wrong = {
    ...climate('airTemperature', fahrenheit),
    watering: { ...plain.watering!, time: Array.from(plain.watering!.time, (time) => time + 7200) },
  }
  const entries = entriesOfRecord(wrong)
  const follower = followZone(zone)
  const first = runReducer({ reducer: follower, inputs: entries.slice(0, 900) })
  const second = runReducer({
    reducer: follower,
    inputs: entries.slice(900),
    state: follower.restore(JSON.parse(JSON.stringify(first.state))),
  })
  const followed = [...first.outputs.flat(), ...second.outputs.flat(), ...follower.finish(second.state)]
  expect(JSON.stringify(followed)).toBe(JSON.stringify(days(wrong)))
  expect(followed[1]!.from).toBe(MIDNIGHT + 86400)
})
