import * as fc from 'fast-check'
import {
  entriesOfRecord,
  followZone,
  InputError,
  proposeDay,
  reviewZone,
  runReducer,
  type ZoneDay,
  type ZoneEntry,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 3 })
const text = (value: unknown) => JSON.stringify(value)
const whole = reviewZone({ zone, record })

function followed(inputs: readonly ZoneEntry[]): ZoneDay[] {
  const follower = followZone(zone)
  const { state, outputs } = runReducer({ reducer: follower, inputs })
  return [...outputs.flat(), ...follower.finish(state)]
}

/** The record with the time of one reading changed. */
function restamped(at: number, stamp: number): ZoneRecord {
  return { ...record, time: Array.from(record.time, (time, i) => (i === at ? stamp : time)) }
}

describe('a zone that was written down wrong', () => {
  const placed = (clock: unknown) => () =>
    reviewZone({ zone: { ...zone, place: { ...zone.place, clock: clock as never } }, record })
  it('is refused where the local clock is ahead by milliseconds, by no number, or without end', () => {
    for (const ahead of [3_600_000, Number.NaN, null, '3600', 1e300, Infinity])
      expectDomainError(placed([{ from: 0, ahead }]), { quantity: 'advance of local time' })
    expectDomainError(placed([{ from: Number.NaN, ahead: 0 }]), { unit: 's' })
  })
  it('is refused where a part of it was lost, by its name', () => {
    expectInputError(placed([null]), 'place.clock')
    expectInputError(placed([]), 'place.clock')
    for (const part of ['container', 'emitters', 'place', 'limits', 'probes'])
      expectInputError(() => reviewZone({ zone: { ...zone, [part]: undefined }, record }), part)
    expectInputError(() => reviewZone({ zone: { ...zone, probes: [null] as never }, record }), 'probe')
    expectInputError(() => reviewZone({ zone: { ...zone, probes: 'A' as never }, record }), 'probes')
  })
  it('is refused with a record that has lost its times', () => {
    expectInputError(() => reviewZone({ zone, record: { ...record, time: undefined as never } }), 'time')
    expectInputError(() => reviewZone({ zone, record: { ...record, time: '2026' as never } }), 'time')
  })
})

describe('a reading from the future', () => {
  const future = Date.UTC(2050, 0, 1) / 1000
  it.each([0, 1, 5, 287, 288, 500, 863])('at place %i costs itself and no other, at once and one by one', (at) => {
    const wrong = restamped(at, future)
    const { days } = reviewZone({ zone, record: wrong })
    expect(text(followed(entriesOfRecord(wrong)))).toBe(text(days))
    expect(days.map(({ date }) => date)).toEqual(whole.days.map(({ date }) => date))
    const rows = days.map(({ readings }) => readings)
    expect(rows.reduce((a, b) => a + b)).toBe(863)
    const told = days.flatMap(({ findings }) => findings.filter(({ code }) => code === 'readings-out-of-order'))
    expect(told).toHaveLength(1)
  })
  it('two of them, rising, are no proof of a new time either', () => {
    const two = { ...record, time: Array.from(record.time, (time, i) => (i === 400 || i === 401 ? future + i : time)) }
    const { days } = reviewZone({ zone, record: two })
    expect(text(followed(entriesOfRecord(two)))).toBe(text(days))
    expect(days[1]?.findings).toContainEqual({ code: 'readings-out-of-order', level: 'caution', count: 2 })
    expect(days.map(({ date }) => date)).toEqual(whole.days.map(({ date }) => date))
  })
  it.each([7, 12, 30, 24 * 365])(
    'a clock that is %i h ahead for four hours costs these readings and no other',
    (ahead) => {
      const isWrong = (i: number) => i >= 400 && i < 448
      const time = Array.from(record.time, (one, i) => (isWrong(i) ? one + 3600 * ahead : one))
      const { days } = reviewZone({ zone, record: { ...record, time } })
      expect(text(followed(entriesOfRecord({ ...record, time })))).toBe(text(days))
      expect(days.map(({ date }) => date)).toEqual(whole.days.map(({ date }) => date))
      expect(days.reduce((sum, { readings }) => sum + readings, 0)).toBe(864 - 48)
      const told = days.flatMap(({ findings }) => findings.filter(({ code }) => code === 'readings-out-of-order'))
      expect(told).toMatchObject([{ count: 48 }])
    },
  )
  it('a logger that was off for a day and more is believed again', () => {
    const off = (time: number) => time < MIDNIGHT + 100_000 || time > MIDNIGHT + 190_000
    const at = Array.from(record.time, (time, i) => (off(time) ? i : -1)).filter((i) => i >= 0)
    const pick = (list: ArrayLike<number | null>) => at.map((i) => list[i]!)
    const cut = {
      ...record,
      time: pick(record.time),
      probes: { A: pick(record.probes.A!), B: pick(record.probes.B!) },
      rootTemperature: pick(record.rootTemperature!),
    }
    const { days } = reviewZone({ zone, record: cut })
    expect(days.reduce((sum, { readings }) => sum + readings, 0)).toBe(at.length)
    expect(text(followed(entriesOfRecord(cut)))).toBe(text(days))
  })
  it('stamps anywhere, in any number: at once and one by one, through JSON, are the same', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(863), fc.integer({ min: -2_000_000, max: 2_000_000 })), { maxLength: 6 }),
        fc.nat(2500),
        (wrong, cut) => {
          const time = Array.from(record.time)
          for (const [at, by] of wrong) time[at] = time[at]! + by
          const entries = entriesOfRecord({ ...record, time })
          const follower = followZone(zone)
          const first = runReducer({ reducer: follower, inputs: entries.slice(0, cut) })
          const state = follower.restore(JSON.parse(text(first.state)))
          const second = runReducer({ reducer: follower, inputs: entries.slice(cut), state })
          const days = [...first.outputs.flat(), ...second.outputs.flat(), ...follower.finish(second.state)]
          expect(text(days)).toBe(text(reviewZone({ zone, record: { ...record, time } }).days))
        },
      ),
      { numRuns: 25 },
    )
  })
  it('climate and log with a stamp from the future end no day and hold nothing back', () => {
    const climate = { ...record.climate!, time: Array.from(record.climate!.time, (t, i) => (i === 300 ? future : t)) }
    const watering = { ...record.watering!, time: Array.from(record.watering!.time, (t, i) => (i === 12 ? future : t)) }
    const wrong = { ...record, climate, watering }
    const { days } = reviewZone({ zone, record: wrong })
    expect(text(followed(entriesOfRecord(wrong)))).toBe(text(days))
    expect(days.map(({ openings }) => openings.length)).toEqual([10, 9, 10])
    expect(days.map((day) => day.climate.known)).toEqual([true, true, true])
  })
  it('an entry of climate or log without a time costs itself and no other', () => {
    for (const none of [undefined, null, Number.NaN]) {
      const without = (time: ArrayLike<number>, at: number) => Array.from(time, (t, i) => (i === at ? none! : t))
      const climate = { ...record.climate!, time: without(record.climate!.time, 300) }
      const watering = { ...record.watering!, time: without(record.watering!.time, 12) }
      const { days } = reviewZone({ zone, record: { ...record, climate, watering } })
      expect(text(followed(entriesOfRecord({ ...record, climate, watering })))).toBe(text(days))
      expect(days.map(({ openings }) => openings.length)).toEqual([10, 9, 10])
    }
  })
  it('the log of days on which no probe was read counts for the first day on which one is', () => {
    const long = benchRecord({ days: 6 })
    const isRead = (_: unknown, i: number) => i < 267 || i >= 4 * 288 + 100
    const probes = Object.fromEntries(
      Object.entries(long.probes).map(([name, of]) => [name, Array.from(of).filter(isRead)]),
    )
    const rootTemperature = Array.from(long.rootTemperature!).filter(isRead)
    const gap = { ...long, time: Array.from(long.time).filter(isRead), probes, rootTemperature }
    const { days } = reviewZone({ zone, record: gap })
    expect(days.at(-2)!.shotFree).toMatchObject({ known: true })
    expect(text(followed(entriesOfRecord(gap)))).toBe(text(days))
  })
  it('entries of the log that come late count, as long as their day is under way', () => {
    const entries = entriesOfRecord(record)
    const log = entries.filter(({ kind }) => kind === 'watering')
    const rest = entries.filter(({ kind }) => kind !== 'watering')
    const noon = rest.findIndex(({ time }) => time > MIDNIGHT + 86400 - 600)
    const late = [...rest.slice(0, noon), ...log.slice(0, 10).reverse(), ...rest.slice(noon)]
    expect(text(followed(late)[0])).toBe(text(whole.days[0]))
  })
})

describe('numbers that are none', () => {
  it('null, NaN and infinities are missing', () => {
    for (const none of [null, Number.NaN, Number.POSITIVE_INFINITY]) {
      const A = Array.from(record.probes.A!, (x, i) => (i > 300 && i < 320 ? none : x))
      const broken = { ...record, probes: { A, B: record.probes.B! } }
      const { days } = reviewZone({ zone, record: broken })
      expect(days[1]?.probes[0]?.counts.missing).toBe(19)
      expect(text(followed(entriesOfRecord(broken)))).toBe(text(days))
    }
  })
  it.each<[string, unknown]>([
    ['text', '0.5'],
    ['a truth', true],
    ['a list', [0.5]],
  ])('%s among the readings is refused by name', (_, odd) => {
    const A = Array.from(record.probes.A!, (x, i) => (i === 300 ? odd : x)) as number[]
    const broken = { ...record, probes: { A, B: record.probes.B! } }
    expect(() => reviewZone({ zone, record: broken })).toThrow(/probes\.A/)
    expect(() => followed(entriesOfRecord(broken))).toThrow(/probes\.A/)
  })
  it('milliseconds and text for times are refused, and the state before them is good', () => {
    const broken = { ...record, time: Array.from(record.time, (time) => 1000 * time) }
    expect(() => reviewZone({ zone, record: broken })).toThrow(/milliseconds/)
    const follower = followZone(zone)
    const { state } = runReducer({ reducer: follower, inputs: entriesOfRecord(record).slice(0, 500) })
    expect(() => follower.step(state, { kind: 'reading', time: 1.7e12, probes: { A: 0.5 } })).toThrow(/milliseconds/)
    expect(() => follower.step(state, { kind: 'reading', time: '5' as never, probes: { A: 0.5 } })).toThrow(/time/)
    const on = runReducer({ reducer: follower, inputs: entriesOfRecord(record).slice(500), state })
    expect(text([...on.outputs.flat(), ...follower.finish(on.state)].at(-1))).toBe(text(whole.days.at(-1)))
  })
  it('a column that is shorter than its times is refused', () => {
    const short = { ...record, probes: { A: Array.from(record.probes.A!).slice(1), B: record.probes.B! } }
    expect(() => reviewZone({ zone, record: short })).toThrow(InputError)
    expect(() => reviewZone({ zone, record: short })).toThrow(/probes\.A: has 863 entries for 864 times/)
  })
})

describe('probes that come and go, and odd names', () => {
  it('a probe without a column is missing, and the other one goes on', () => {
    const { days } = reviewZone({ zone, record: { ...record, probes: { A: record.probes.A! } } })
    expect(days[1]?.probes[1]).toMatchObject({ used: false, counts: { missing: 288 } })
    expect(days[1]?.level.known).toBe(true)
    expect(days[1]?.findings).toContainEqual({ code: 'no-readings', level: 'danger', probe: 'B' })
  })
  it.each(['constructor', '__proto__', 'toString', 'length', 'time'])('a probe may be called %s', (name) => {
    const probes = Object.fromEntries([
      [name, record.probes.A!],
      ['B', record.probes.B!],
    ])
    const named = benchZone({ probes: [{ name }, { name: 'B' }] })
    const entries = entriesOfRecord({ ...record, probes })
    const follower = followZone(named)
    const first = runReducer({ reducer: follower, inputs: entries.slice(0, 900) })
    const state = follower.restore(JSON.parse(text(first.state)))
    const second = runReducer({ reducer: follower, inputs: entries.slice(900), state })
    const days = [...first.outputs.flat(), ...second.outputs.flat(), ...follower.finish(second.state)]
    const plain = text(whole.days).replaceAll('"A"', text(name))
    expect(text(days)).toBe(plain)
    // A record without that column has no such probe, whatever objects are born with.
    expect(
      reviewZone({ zone: named, record: { ...record, probes: { B: record.probes.B! } } }).days[0]?.probes[0],
    ).toMatchObject({
      used: false,
      counts: { missing: 288 },
    })
  })
  it('two probes of one name are refused', () => {
    expect(() => followZone(benchZone({ probes: [{ name: 'A' }, { name: 'A' }] }))).toThrow(/same name/)
  })
  it('days without readings are passed over, and the days around them stand', () => {
    const at = Array.from(record.time, (time, i) => (time < MIDNIGHT + 86400 || time >= MIDNIGHT + 172800 ? i : -1))
    const keep = at.filter((i) => i >= 0)
    const pick = (list: ArrayLike<number | null>) => keep.map((i) => list[i]!)
    const { days } = reviewZone({
      zone,
      record: {
        ...record,
        time: pick(record.time),
        probes: { A: pick(record.probes.A!), B: pick(record.probes.B!) },
        rootTemperature: pick(record.rootTemperature!),
      },
    })
    expect(days.map(({ date }) => date)).toEqual(['2026-05-18', '2026-05-20'])
    expect(proposeDay({ zone, day: days[1]! }).known).toBe(true)
    expect(reviewZone({ zone, record: { time: [], probes: {} } }).days).toEqual([])
  })
})

describe('a kept state', () => {
  const follower = followZone(zone)
  const { state } = runReducer({ reducer: follower, inputs: entriesOfRecord(record).slice(0, 1500) })
  const kept = text(state)

  it('is the state', () => expect(follower.restore(JSON.parse(kept))).toEqual(state))
  it('is refused when any field is gone or of another type', () => {
    const tried: string[] = []
    const visit = (object: Record<string, unknown>, path: readonly string[]) => {
      for (const key of Object.keys(object)) {
        const value = object[key]
        const lists = Array.isArray(object)
        // Of long lists the first and the last entry stand for all.
        if (lists && Number(key) > 0 && Number(key) < Object.keys(object).length - 1) continue
        const odd = [undefined, 'odd', true, ...(value === null ? [] : typeof value === 'object' ? [7] : [{}])]
        for (const other of odd) {
          if (other === undefined && lists) continue
          const copy = JSON.parse(kept) as Record<string, unknown>
          let inside = copy
          for (const step of path) inside = inside[step] as Record<string, unknown>
          if (other === undefined) delete inside[key]
          else inside[key] = other
          const where = [...path, key].join('.')
          // What was learned of a probe may be missing: it is learned anew.
          const optional = /^memory\.(levels|drying)\.[AB]$/.test(where) && other === undefined
          let refused = false
          try {
            follower.restore(copy)
          } catch (error) {
            refused = (error as { code?: string }).code === 'bad-input'
          }
          if (refused === optional) tried.push(`${where} as ${String(other)}`)
        }
        if (typeof value === 'object' && value !== null) visit(value as Record<string, unknown>, [...path, key])
      }
    }
    visit(JSON.parse(kept), [])
    expect(tried).toEqual([])
  })
  it('is refused where a part of it throws: a getter, or a proxy that was revoked', () => {
    const { proxy, revoke } = Proxy.revocable({}, {})
    revoke()
    const throws = Object.defineProperty(JSON.parse(kept) as object, 'held', {
      get: () => {
        throw new Error('gone')
      },
    })
    for (const part of [proxy, throws, { ...JSON.parse(kept), memory: proxy }, { ...JSON.parse(kept), reading: proxy }])
      expectInputError(() => follower.restore(part), 'state')
  })
  it('is refused for another zone: more probes, or another clock', () => {
    const three = followZone(benchZone({ probes: [{ name: 'A' }, { name: 'B' }, { name: 'C' }] }))
    expect(() => three.restore(JSON.parse(kept))).toThrow(/rows/)
    const east = followZone(benchZone({ place: { ...zone.place, clock: [{ from: 0, ahead: 0 }] } }))
    expect(() => east.restore(JSON.parse(kept))).toThrow(/midnight/)
  })
  it('a memory that was changed by hand is refused by a review, too', () => {
    const { memory } = whole
    expect(() => reviewZone({ zone, record, memory: { ...memory, use: {} as never } })).toThrow(InputError)
    expect(() => reviewZone({ zone, record, memory: { ...memory, levels: { A: { level: 'wet' } } as never } })).toThrow(
      /levels/,
    )
  })
})
