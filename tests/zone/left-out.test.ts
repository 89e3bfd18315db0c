import {
  entriesOfRecord,
  explainZoneFinding,
  followZone,
  reviewZone,
  runReducer,
  type ZoneDay,
  type ZoneEntry,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 3 })
const whole = reviewZone({ zone, record })
const NONE = [null, undefined, Number.NaN] as unknown as readonly number[]

function followed(entries: readonly ZoneEntry[], cut = 0): readonly ZoneDay[] {
  const follower = followZone(zone)
  const first = runReducer({ reducer: follower, inputs: entries.slice(0, cut) })
  const state = follower.restore(JSON.parse(JSON.stringify(first.state)))
  const rest = runReducer({ reducer: follower, inputs: entries.slice(cut), state })
  return [...first.outputs.flat(), ...rest.outputs.flat(), ...follower.finish(rest.state)]
}

type Told = readonly [date: string, table: string, why: string, count: number]

function toldBy(days: readonly ZoneDay[]): Told[] {
  return days.flatMap(({ date, findings }) =>
    findings.flatMap((one): Told[] =>
      one.code === 'entries-left-out' ? [[date, one.table, one.because, one.count]] : [],
    ),
  )
}

const outOfOrder = (days: readonly ZoneDay[]) =>
  days.flatMap(({ date, findings }) =>
    findings.flatMap((one) => (one.code === 'readings-out-of-order' ? [`${date} ${one.count}`] : [])),
  )

/** The record with times of one table replaced at some places. */
function changed(
  table: 'climate' | 'watering' | 'readings',
  places: readonly number[],
  to: readonly number[],
): ZoneRecord {
  const swap = (time: ArrayLike<number>) => {
    const list = Array.from(time)
    for (const [k, i] of places.entries()) list[i] = to[k % to.length]!
    return list
  }
  if (table === 'readings') return { ...record, time: swap(record.time) }
  return { ...record, [table]: { ...record[table]!, time: swap(record[table]!.time) } }
}

function sameByBothWays(odd: ZoneRecord): readonly ZoneDay[] {
  const { days } = reviewZone({ zone, record: odd })
  const entries = entriesOfRecord(odd)
  for (const cut of [0, 1, 5, 300, 600, entries.length - 1, entries.length])
    expect(JSON.stringify(followed(entries, cut))).toBe(JSON.stringify(days))
  return days
}

describe('an entry without a time', () => {
  it('of the log is counted on the day of the entry before it', () => {
    const days = sameByBothWays(changed('watering', [12, 13, 25], NONE))
    expect(toldBy(days)).toEqual([
      ['2026-05-19', 'watering', 'without-time', 2],
      ['2026-05-20', 'watering', 'without-time', 1],
    ])
  })
  it('of the climate is counted, at the beginning on the first day', () => {
    const days = sameByBothWays(changed('climate', [0, 1, 500, 863], NONE))
    expect(toldBy(days)).toEqual([
      ['2026-05-18', 'climate', 'without-time', 2],
      ['2026-05-19', 'climate', 'without-time', 1],
      ['2026-05-20', 'climate', 'without-time', 1],
    ])
  })
  it('is counted where the whole table has none', () => {
    const all = Array.from(record.watering!.time, (_, i) => i)
    const days = sameByBothWays(changed('watering', all, NONE))
    expect(toldBy(days)).toEqual([['2026-05-18', 'watering', 'without-time', 30]])
  })
  it('of the forecasts is counted', () => {
    const forecast = {
      time: [MIDNIGHT + 60000, null as unknown as number],
      day: [MIDNIGHT + 130000, 0],
      irradiance: [200, 300],
    }
    const days = sameByBothWays({ ...record, forecast })
    expect(toldBy(days)).toEqual([['2026-05-18', 'forecast', 'without-time', 1]])
  })
  it('that gave the sum of a day in J/cm² as its mean in W/m² multiplied the use that was foreseen', () => {
    const forecast = {
      time: [MIDNIGHT + 82800],
      day: [MIDNIGHT + 130000],
      irradiance: [2300],
    }
    const days = sameByBothWays({ ...record, forecast })
    expect(toldBy(days)).toEqual([['2026-05-18', 'forecast', 'impossible', 1]])
    expect(days.map(({ expectedRadiation }) => expectedRadiation)).toEqual(days.map(() => undefined))
  })
  it('of the readings is counted, the first and the last too', () => {
    const days = sameByBothWays(changed('readings', [0, 400, 863], NONE))
    expect(outOfOrder(days)).toEqual(['2026-05-18 1', '2026-05-19 1', '2026-05-20 1'])
    expect(days.reduce((sum, { readings }) => sum + readings, 0)).toBe(861)
  })
  it('changes nothing else', () => {
    const odd = changed('watering', [], NONE)
    const extra = {
      ...odd,
      climate: {
        time: [null as unknown as number, ...Array.from(record.climate!.time)],
        irradiance: [9999, ...Array.from(record.climate!.irradiance!)],
        airTemperature: [99, ...Array.from(record.climate!.airTemperature!)],
        relativeHumidity: [0, ...Array.from(record.climate!.relativeHumidity!)],
        windSpeed: [99, ...Array.from(record.climate!.windSpeed!)],
      },
    }
    const days = sameByBothWays(extra)
    const without = days.map((day) => ({
      ...day,
      findings: day.findings.filter(({ code }) => code !== 'entries-left-out'),
    }))
    expect(JSON.stringify(without)).toBe(JSON.stringify(whole.days))
  })
})

describe('water whose time is not known', () => {
  it('keeps the use of its day from being learned', () => {
    const odd = reviewZone({ zone, record: changed('watering', [25], NONE) })
    const before = reviewZone({ zone, record, until: '2026-05-19' })
    expect(odd.days[2]!.balance.use.known).toBe(true)
    // Light is learned all the same.
    const learned = { ...before.memory.use, litDays: 3 }
    expect(odd.memory.use).toEqual(learned)
    expect(whole.memory.use).not.toEqual(learned)
  })
})

describe('a time of the climate that stands twice', () => {
  it('is counted, and the first one counts', () => {
    const { climate } = record
    const twice = (list: ArrayLike<number | null>, odd: number) => [...Array.from(list), odd, odd]
    const doubled = {
      time: [...Array.from(climate!.time), climate!.time[100]!, climate!.time[400]!],
      airTemperature: twice(climate!.airTemperature!, 90),
      relativeHumidity: twice(climate!.relativeHumidity!, 0),
      irradiance: twice(climate!.irradiance!, 900),
      windSpeed: twice(climate!.windSpeed!, 50),
    }
    const days = sameByBothWays({ ...record, climate: doubled })
    expect(toldBy(days)).toEqual([
      ['2026-05-18', 'climate', 'doubled', 1],
      ['2026-05-19', 'climate', 'doubled', 1],
    ])
    expect(days.map((day) => day.climate)).toEqual(whole.days.map((day) => day.climate))
  })
})

describe('an entry that comes when its day has been reviewed', () => {
  it.each([60, 90000, 200000])('is told on the day that is under way (%i s before it)', (before) => {
    const follower = followZone(zone)
    const { state } = runReducer({ reducer: follower, inputs: entriesOfRecord(record) })
    const time = MIDNIGHT + 2 * 86400 - before
    const [late] = follower.step(state, { kind: 'watering', time, given: 0.4 })
    expect(toldBy(follower.finish(late))).toEqual([['2026-05-20', 'watering', 'too-late', 1]])
  })
})

describe('readings that begin again in the evening, days after the last ones', () => {
  it.each([115, 110, 102])('keep the climate and the log of that day (hour %i)', (again) => {
    const long = benchRecord({ days: 7 })
    const hour = (i: number) => (long.time[i]! - MIDNIGHT) / 3600
    const at = Array.from(long.time, (_, i) => i).filter((i) => hour(i) < 20 || hour(i) >= again)
    const pick = (list: ArrayLike<number | null>) => at.map((i) => list[i]!)
    const cut: ZoneRecord = {
      ...long,
      time: pick(long.time) as number[],
      probes: { A: pick(long.probes.A!), B: pick(long.probes.B!) },
      rootTemperature: pick(long.rootTemperature!),
    }
    const { days } = reviewZone({ zone, record: cut })
    expect(days[1]).toMatchObject({ date: '2026-05-22', climate: { known: true }, balance: { given: { known: true } } })
    expect(JSON.stringify(followed(entriesOfRecord(cut), 900))).toBe(JSON.stringify(days))
  })
})

describe('what was left out and is kept', () => {
  const follower = followZone(zone)
  const { state } = runReducer({ reducer: follower, inputs: entriesOfRecord(changed('watering', [25], NONE)) })
  const kept = JSON.parse(JSON.stringify(state))
  it('comes back as it was', () => expect(follower.restore(kept)).toEqual(state))
  it.each([
    { leftOut: undefined },
    { leftOut: [[0, 'climate']] },
    { leftOut: [[0, 'readings', 'doubled']] },
    { leftOut: [[0, 'climate', 'lost']] },
    { leftOut: [[null, 'climate', 'doubled']] },
    { leftOut: [[1.7e12, 'climate', 'doubled']] },
    { newest: undefined },
    { newest: { climate: null, watering: null } },
    { newest: { climate: 'x', watering: null, forecast: null } },
    { outOfOrder: [1.7e12] },
  ])('is refused where it was changed: %j', (change) => {
    expect(() => follower.restore({ ...kept, ...change })).toThrow(/start anew/)
  })
})

describe('the words of what was left out', () => {
  const finding = {
    code: 'entries-left-out',
    level: 'caution',
    table: 'watering',
    because: 'without-time',
    count: 2,
  } as const
  it('name table, number and reason', () =>
    expect(explainZoneFinding(finding).message).toBe(
      '2 entries of the watering log left out for lack of a time, and in no sum: check the time column',
    ))
  it.each([{ table: 'readings' }, { because: 'lost' }])('are refused for what is none: %j', (change) =>
    expect(() => explainZoneFinding({ ...finding, ...change } as never)).toThrow(),
  )
})
