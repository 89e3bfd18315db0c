import * as fc from 'fast-check'
import {
  entriesOfRecord,
  followZone,
  proposeDay,
  reportZone,
  reviewZone,
  runReducer,
  type ZoneDay,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const DAYS = 9
const record = benchRecord({ days: DAYS })
const TODAY = MIDNIGHT + (DAYS - 1) * 86400
const text = (value: unknown) => JSON.stringify(value)

/** What had come of a record by a moment. */
function cut(whole: ZoneRecord, now: number): ZoneRecord {
  const rows = <C extends { readonly time: ArrayLike<number> }>(columns: C): C =>
    Object.fromEntries(
      Object.entries(columns).map(([name, list]) => [name, Array.from(list).filter((_, i) => columns.time[i]! <= now)]),
    ) as unknown as C
  const { time, probes, rootTemperature, climate, watering } = whole
  const readings = rows({ time, ...probes, root: rootTemperature! })
  const { time: kept, root, ...columns } = readings
  return {
    time: kept,
    probes: columns as never,
    rootTemperature: root,
    ...(climate && { climate: rows(climate) }),
    ...(watering && { watering: rows(watering) }),
  }
}

const at = (hour: number) => TODAY + hour * 3600
const reviewed = (now: number, whole = record, of = zone): ZoneDay =>
  reviewZone({ zone: of, record: cut(whole, now) }).days.at(-1)!

function known<T>(result: { known: true; value: T } | { known: false; reason: string }): T {
  if (!result.known) throw new Error(`not known: ${result.reason}`)
  return result.value
}

describe('a day that is under way', () => {
  it('is the same at once, reading by reading in any split, and through JSON, and so is its proposal', () => {
    const before = entriesOfRecord(cut(record, TODAY - 1))
    const started = runReducer({ reducer: followZone(zone), inputs: before }).state
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 287 }), fc.array(fc.nat(400), { maxLength: 3 }), (reading, cuts) => {
        const now = TODAY + 300 * reading
        const inputs = entriesOfRecord(cut(record, now)).slice(before.length)
        let state = JSON.parse(text(started))
        const places = [0, ...cuts.map((k) => Math.min(k, inputs.length)).sort((a, b) => a - b), inputs.length]
        const follower = followZone(zone)
        for (let k = 0; k + 1 < places.length; k++) {
          const run = runReducer({ reducer: follower, inputs: inputs.slice(places[k], places[k + 1]), state })
          state = follower.restore(JSON.parse(text(run.state)))
        }
        const [day] = follower.finish(state).slice(-1)
        const whole = reviewed(now)
        expect(text(day)).toBe(text(whole))
        expect(JSON.parse(text(whole))).toEqual(whole)
        expect(text(proposeDay({ zone, day: JSON.parse(text(day)) }))).toBe(text(proposeDay({ zone, day: whole })))
      }),
      {
        numRuns: 12,
        examples: [
          [0, []],
          [108, [3]],
          [251, [9]],
          [252, []],
        ],
      },
    )
  })
  it('has the level and the time to the refill point that the bucket has', () => {
    // 50 minutes after a shot that filled it to 0.62, at 0.21 L/h from 14 L.
    const deep = benchZone({ limits: { ...zone.limits, depletion: 0.2 as never } })
    const day = reviewed(at(13) + 3000, record, deep)
    const { mean, limits } = known(day.level)
    const dried = (0.21 * (50 / 60)) / 14
    expect(limits.fullPoint - mean).toBeGreaterThan(dried - 0.006)
    expect(limits.fullPoint - mean).toBeLessThan(dried + 0.003)
    for (const { timeToRefill: refill, limits: own, last } of day.probes) {
      if (!refill.known) throw new Error(refill.reason)
      const fall = known(last) - known(own).refillPoint
      expect(fall).toBeGreaterThan(0.05)
      // The bucket takes 0.21 L in an hour until 20 o'clock and 0.03 L after it.
      const lit = 20 - 13 - 50 / 60
      const hours = (14 * fall) / 0.21
      const real = hours <= lit ? hours : lit + (14 * fall - 0.21 * lit) / 0.03
      expect(refill.band90.earliest / 3600).toBeLessThan(real)
      expect((refill.band90.latest ?? Infinity) / 3600).toBeGreaterThan(real)
    }
    expect(day.underWay?.at).toBe(at(13) + 3000)
    expect(day.gaps).toEqual([])
  })
  it('knows the use of the day from the days before it, and that of the 24 hours before', () => {
    const real = 14 * 0.21 + 10 * 0.03
    for (const hour of [5.5, 9.75, 12.75, 16.75, 20.5]) {
      const { underWay } = reviewed(at(hour))
      if (!underWay?.use.known) throw new Error('not known')
      expect(Math.abs(underWay.use.use - real)).toBeLessThan(0.15)
      expect(Math.abs(known(underWay.usedLately) - real)).toBeLessThan(0.15)
    }
  })
  it('has no balance yet, and nobody is sent to the drain gauge for the first shots', () => {
    const day = reviewed(at(11) - 300)
    expect(day.balance.use).toEqual({ known: false, reason: 'day-not-over' })
    expect(known(day.balance.given)).toBeCloseTo(3 * 0.4, 9)
    expect(day.findings.filter(({ level }) => level !== 'note')).toEqual([])
    // It teaches nothing of the use of a day.
    const [morning, evening] = [8, 20.9].map((hour) => reviewZone({ zone, record: cut(record, at(hour)) }).memory.use)
    expect(evening).toEqual(morning)
  })
  it('is over when a later reading has come, and in its last three hours', () => {
    expect(reviewed(at(20.5)).underWay?.at).toBe(at(20.5))
    const late = reviewed(at(21))
    expect(late.underWay).toBeUndefined()
    expect(known(proposeDay({ zone, day: late })).date).toBe('2026-05-27')
    // The logger was off from noon to the next day.
    const off = (now: number) => now > at(12) - 86400 && now < TODAY
    const kept = Array.from(record.time, (now, i) => (off(now) ? -1 : i)).filter((i) => i >= 0)
    const pick = (list: ArrayLike<number | null>) => kept.map((i) => list[i]!)
    const holed = {
      ...record,
      time: pick(record.time),
      probes: { A: pick(record.probes.A!), B: pick(record.probes.B!) },
    }
    const { rootTemperature: _, ...rest } = holed
    const days = reviewZone({ zone, record: rest }).days
    expect(days.at(-2)?.underWay).toBeUndefined()
    expect(days.at(-2)?.level).toEqual({ known: false, reason: 'no-reading-late-in-day' })
  })
  it('leaves out a probe that fell silent, and says so', () => {
    const A = Array.from(record.probes.A!, (x, i) => (record.time[i]! > at(11) ? null : x))
    const day = reviewed(at(14), { ...record, probes: { ...record.probes, A } })
    expect(day.findings).toContainEqual({ code: 'no-late-reading', level: 'caution', probe: 'A' })
    expect(day.probes.map(({ used }) => used)).toEqual([false, true])
    expect(known(day.level).coverage).toBe(0.5)
  })
  it('takes the light to come from the day before', () => {
    const { light } = reviewed(at(10))
    const { light: before } = reviewZone({ zone, record }).days.at(-2)!
    expect(light.source).toBe('measured')
    expect(light.course.slice(61)).toEqual(before.course.slice(61))
    expect([light.dawn - TODAY, light.dusk - TODAY]).toEqual([before.dawn + 86400 - TODAY, before.dusk + 86400 - TODAY])
  })
})

describe('the rest of a day', () => {
  it('is proposed within what the day may still have, after the valve has rested, at any moment', () => {
    for (let reading = 60; reading < 190; reading += 5) {
      const now = TODAY + 300 * reading
      const day = reviewed(now)
      const proposal = proposeDay({ zone, day })
      const given = Array.from(record.watering!.time).filter((one) => one >= TODAY && one <= now).length * 0.4
      const last = Array.from(record.watering!.time)
        .filter((one) => one <= now)
        .at(-1)!
      if (now - last < 900) {
        expect(proposal).toEqual({ known: false, reason: 'shot-not-read-yet' })
        continue
      }
      const { date, shots, given: rest, time } = known(proposal)
      expect(date).toBe('2026-05-26')
      expect(time[0]! - 600).toBeGreaterThanOrEqual(now)
      expect(time.at(-1)).toBe(TODAY + 86400)
      expect(given + rest).toBeLessThanOrEqual(zone.limits.maxPerDay + 1e-9)
      for (const shot of shots) expect(shot.time).toBeGreaterThanOrEqual(Math.max(now, last + zone.limits.minRest))
      for (const shot of shots) expect(shot.time).toBeLessThanOrEqual(day.light.dusk - zone.limits.lastShotBeforeDark)
    }
  })
  it('gives no more than the limit leaves, down to nothing', () => {
    const now = at(12.5)
    const day = reviewed(now)
    const of = (maxPerDay: number) => {
      const tight = benchZone({ limits: { ...zone.limits, maxPerDay: maxPerDay as never } })
      return known(proposeDay({ zone: tight, day: reviewed(now, record, tight) }))
    }
    expect(known(day.balance.given)).toBeCloseTo(2, 9)
    expect(of(2.5).given).toBeGreaterThan(0)
    expect(of(2.5).given).toBeLessThanOrEqual(0.5 + 1e-9)
    for (const most of [2, 1]) expect(of(most).shots).toEqual([])
  })
  it('makes up for shots that failed: more where the container has dried, and sooner', () => {
    const lost = benchRecord({ days: DAYS, hours: [8, 9, 10, 11, 12, 13, 14, 15, 16, 17] })
    const spared = benchRecord({ days: DAYS, hours: [8, 9, 10] })
    // Until this day both were watered alike.
    const mixed = (now: number) => {
      const join = (a: ArrayLike<number | null>, b: ArrayLike<number | null>) =>
        Array.from(a, (x, i) => (lost.time[i]! < TODAY ? x : b[i]!)) as number[]
      const shift = spared.probes
      const watering = { ...lost.watering!, time: Array.from(lost.watering!.time) }
      const keep = watering.time.map((t) => t < at(10.5))
      const kept = (list: ArrayLike<number | null>) => Array.from(list).filter((_, i) => keep[i]) as number[]
      const log = {
        time: kept(watering.time),
        given: kept(watering.given),
        drained: kept(watering.drained!),
        feedEC: kept(watering.feedEC!),
        drainEC: kept(watering.drainEC!),
      }
      // The bucket of the spared bench is drier from the start: its fall after 10 o'clock is what counts.
      const fall = (column: 'A' | 'B') => {
        const i = lost.time.length - 288 + 10.5 * 12
        return join(
          lost.probes[column]!,
          Array.from(shift[column]!, (x, k) =>
            k < i ? lost.probes[column]![k]! : lost.probes[column]![i]! + x! - shift[column]![i]!,
          ),
        )
      }
      return cut({ ...lost, probes: { A: fall('A'), B: fall('B') }, watering: log }, now)
    }
    const now = at(13.5)
    const failed = reviewZone({ zone, record: mixed(now) }).days.at(-1)!
    const [dry, usual] = [failed, reviewed(now)].map((day) => known(proposeDay({ zone, day })))
    expect(known(failed.level).mean).toBeLessThan(known(reviewed(now).level).mean - 0.02)
    expect(dry!.given).toBeGreaterThan(usual!.given + 0.3)
    expect(dry!.shots[0]!.time).toBeLessThanOrEqual(usual!.shots[0]!.time)
  })
  it('is not proposed where nobody tells what was given on the day', () => {
    const { watering, ...silent } = record
    expect(proposeDay({ zone, day: reviewed(at(12.5), silent) })).toEqual({ known: false, reason: 'no-watering-log' })
    const daily = benchZone({ wateringLog: 'days' })
    expect(proposeDay({ zone: daily, day: reviewed(at(12.5), record, daily) })).toEqual({
      known: false,
      reason: 'no-log-of-openings',
    })
    // Before the first shot of a log of openings nothing was given.
    expect(known(proposeDay({ zone, day: reviewed(at(7)) })).given).toBeGreaterThan(2)
    // In the evening it is too late.
    expect(proposeDay({ zone, day: reviewed(at(19)) })).toEqual({ known: false, reason: 'no-time-for-shots' })
  })
  it('is told as such', () => {
    const day = reviewed(at(12.5))
    const sections = reportZone({ zone, day, proposal: proposeDay({ zone, day }) })
    const all = sections.flatMap(({ title, lines }) => [title, ...lines]).join('\n')
    expect(all).toContain('the last at 12:30: it is not over.')
    expect(all).toContain('by 12:30 it stood at')
    expect(all).toContain('Proposal for the rest of the day')
    expect(all).toContain('beside 2.00 L given before, of at most 9 L a day')
    expect(all).toContain('light after 12:30 as on the day before (measured)')
    expect(all).not.toMatch(/the day ended|Different from this day|24:00/)
  })
  it('is refused for a day whose moment was changed', () => {
    const day = reviewed(at(12.5))
    for (const moment of [TODAY - 1, TODAY + 86401, Number.NaN, null, '12:30'])
      expect(() => proposeDay({ zone, day: { ...day, underWay: { ...day.underWay!, at: moment as never } } })).toThrow(
        /underWay/,
      )
    expect(() => proposeDay({ zone, day: { ...day, underWay: 1 as never } })).toThrow(/underWay/)
  })
})
