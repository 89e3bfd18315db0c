import * as fc from 'fast-check'
import { entriesOfRecord, followZone, proposeDay, reviewDay, reviewZone, runReducer, type ZoneRecord } from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const record = benchRecord({ days: 4 })
const text = (value: unknown) => JSON.stringify(value)

/** Null or NaN for some readings, as logger and JSON have them. */
function holed(whole: ZoneRecord, seed: number, hole: null | number): ZoneRecord {
  let state = seed
  const keep = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32 > 0.05
  }
  return { ...whole, probes: { A: Array.from(whole.probes.A!, (x) => (keep() ? x : hole)), B: whole.probes.B! } }
}

describe('a record at once, reading by reading, and through JSON', () => {
  const follower = followZone(zone)
  const whole = reviewZone({ zone, record })
  const entries = entriesOfRecord(record)
  it('give the same days to the last bit', () => {
    const { state, outputs } = runReducer({ reducer: follower, inputs: entries })
    const days = [...outputs.flat(), ...follower.finish(state)]
    expect(days).toHaveLength(4)
    expect(text(days)).toBe(text(whole.days))
  })
  it('in any split, the state kept as JSON in between, and the proposals with them', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: entries.length }), { maxLength: 6 }), (cuts) => {
        const at = [0, ...cuts.sort((a, b) => a - b), entries.length]
        let state = follower.start
        const days = []
        for (let k = 0; k + 1 < at.length; k++) {
          const run = runReducer({ reducer: follower, inputs: entries.slice(at[k], at[k + 1]), state })
          days.push(...run.outputs.flat())
          state = JSON.parse(text(run.state))
        }
        days.push(...follower.finish(state))
        expect(text(days)).toBe(text(whole.days))
        expect(text(days.map((day) => proposeDay({ zone, day })))).toBe(
          text(whole.days.map((day) => proposeDay({ zone, day: JSON.parse(text(day)) }))),
        )
      }),
      { numRuns: 10 },
    )
  })
  it('with readings that are missing or out of order', () => {
    for (const hole of [null, Number.NaN]) {
      const broken = holed(record, 11, hole)
      const time = Array.from(broken.time)
      time[700] = time[600]!
      const late = { ...broken, time }
      const { state, outputs } = runReducer({ reducer: follower, inputs: entriesOfRecord(late) })
      const review = reviewZone({ zone, record: JSON.parse(text(late)) })
      expect(text([...outputs.flat(), ...follower.finish(state)])).toBe(text(review.days))
      expect(review.days[2]?.findings).toContainEqual({ code: 'readings-out-of-order', level: 'caution', count: 1 })
    }
  })
  it('a day by itself is the day of the stretch, once it is told what was learned before', () => {
    const before = reviewZone({ zone, record, until: '2026-05-19' })
    const { day } = reviewDay({ zone, record, date: '2026-05-20', memory: before.memory })
    expect(text(day)).toBe(text(whole.days[2]))
  })
  it('hold neither NaN nor an array that JSON does not keep', () => {
    expect(JSON.parse(text(whole))).toEqual(whole)
    const proposal = proposeDay({ zone, day: whole.days[1]! })
    expect(JSON.parse(text(proposal))).toEqual(proposal)
    const { state } = runReducer({ reducer: follower, inputs: entries })
    expect(JSON.parse(text(state))).toEqual(state)
    expect(text(state).length).toBeLessThan(90_000)
  })
})

describe('what must not matter', () => {
  // A refill point that lies hours ahead at midnight.
  const deep = benchZone({ limits: { ...zone.limits, depletion: 0.2 as never } })
  it('a constant offset of a probe changes no shot, no use, no dry-down and no plan', () => {
    const plain = reviewZone({ zone, record: benchRecord({ offsets: [0, 0] }) }).days[1]!
    fc.assert(
      fc.property(fc.double({ min: -0.1, max: 0.1, noNaN: true }), (offset) => {
        const moved = reviewZone({ zone, record: benchRecord({ offsets: [0, offset] }) }).days[1]!
        const [a, b] = [plain.probes[1]!, moved.probes[1]!]
        expect(b.shots.map(({ start }) => start)).toEqual(a.shots.map(({ start }) => start))
        expect(known(moved.balance.use)).toBeCloseTo(known(plain.balance.use), 3)
        expect(known(b.night).fall).toBeCloseTo(known(a.night).fall, 4)
        const [planA, planB] = [proposeDay({ zone, day: plain }), proposeDay({ zone, day: moved })].map(known)
        expect(planB!.shots.map(({ time }) => time)).toEqual(planA!.shots.map(({ time }) => time))
        expect(planB!.given).toBeCloseTo(planA!.given, 2)
      }),
      { numRuns: 15 },
    )
  })
  it('a constant offset of a probe changes no forecast', () => {
    const days = 6
    const of = (offset: number) =>
      reviewZone({ zone: deep, record: benchRecord({ days, offsets: [0, offset] }) }).days.at(-1)!
    const plain = of(0)
    expect(plain.probes[1]?.timeToRefill.known && plain.probes[1].timeToRefill.time).toBeGreaterThan(3600)
    for (const offset of [-0.083, 0.031, 0.1]) {
      const [a, b] = [plain.probes[1]!.timeToRefill, of(offset).probes[1]!.timeToRefill]
      if (!a.known || !b.known) throw new Error('not known')
      // Readings are rounded to 1e-5 after the offset.
      for (const part of ['earliest', 'latest'] as const)
        expect(Math.abs(b.band90[part]! - a.band90[part]!)).toBeLessThan(240)
      expect(Math.abs(b.time - a.time)).toBeLessThan(120)
    }
  })
  it('a shot is no larger than the set-up allows', () => {
    const day = reviewZone({ zone, record }).days[1]!
    const split = benchZone({ limits: { ...zone.limits, maxPerShot: 0.3 as never } })
    const [one, many] = [proposeDay({ zone, day }), proposeDay({ zone: split, day })].map(known)
    expect(Math.max(...one!.shots.map(({ volume }) => volume))).toBeGreaterThan(0.3)
    for (const { volume } of many!.shots) expect(volume).toBeLessThanOrEqual(0.3 + 1e-9)
    expect(many!.shots.length).toBeGreaterThan(one!.shots.length)
  })
  it('scaling all volumes scales the plan', () => {
    const one = known(proposeDay({ zone, day: reviewZone({ zone, record: benchRecord() }).days[1]! }))
    fc.assert(
      fc.property(
        fc.double({ min: -4, max: 6, noNaN: true }).map((x) => 2 ** x),
        (scale) => {
          const large = benchZone({
            container: { ...zone.container, substrateVolume: (14 * scale) as never },
            emitters: { ...zone.emitters, flow: (2 * scale) as never },
            limits: { ...zone.limits, maxPerDay: (9 * scale) as never },
          })
          const plan = known(
            proposeDay({ zone: large, day: reviewZone({ zone: large, record: benchRecord({ scale }) }).days[1]! }),
          )
          expect(plan.shots.map(({ time }) => time)).toEqual(one.shots.map(({ time }) => time))
          plan.shots.forEach((shot, i) => {
            expect(shot.volume / scale).toBeCloseTo(one.shots[i]!.volume, 3)
            expect(shot.runTime).toBeCloseTo(one.shots[i]!.runTime, 0)
          })
        },
      ),
      { numRuns: 30, examples: [[0.25], [3], [40]] },
    )
  })
  it('an offset in whole steps of the readings changes nothing to the last digits that matter', () => {
    const of = (steps: number) =>
      reviewZone({ zone: deep, record: benchRecord({ days: 9, offsets: [0, steps / 1e5] }) }).days.at(-1)!
    const plain = of(0)
    expect(
      plain.nextUse.known && plain.probes[1]!.timeToRefill.known && plain.probes[1]!.timeToRefill.time,
    ).toBeGreaterThan(3600)
    fc.assert(
      fc.property(fc.integer({ min: -9000, max: 9000 }), (steps) => {
        const moved = of(steps)
        const [a, b] = [plain.probes[1]!, moved.probes[1]!]
        const by = steps / 1e5
        const close = (x: number, y: number) =>
          expect(Math.abs(x - y)).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(x)))
        expect(b.shots.map(({ start, peak }) => [start, peak])).toEqual(a.shots.map(({ start, peak }) => [start, peak]))
        for (const [k, { rise }] of b.shots.entries()) close(rise, a.shots[k]!.rise)
        expect(moved.openings).toEqual(plain.openings)
        close(known(moved.balance.use), known(plain.balance.use))
        close(known(b.night).fall, known(a.night).fall)
        close(known(b.drainedLevel).level, known(a.drainedLevel).level + by)
        if (!a.timeToRefill.known || !b.timeToRefill.known) throw new Error('not known')
        for (const band of ['band50', 'band90'] as const)
          for (const end of ['earliest', 'latest'] as const)
            close(b.timeToRefill[band][end]!, a.timeToRefill[band][end]!)
        close(b.timeToRefill.time, a.timeToRefill.time)
        close(b.nextHour.known ? b.nextHour.use : 1, a.nextHour.known ? a.nextHour.use : 0)
        close(moved.nextUse.known ? moved.nextUse.use : 0, plain.nextUse.known ? plain.nextUse.use : 0)
      }),
      { numRuns: 20 },
    )
  })
})

describe('the next hour', () => {
  const days = 6
  // The bucket of the bench uses 0.03 L in an hour of night.
  it('is foreseen at midnight, for each probe that counts, in the litres of its container', () => {
    const night = reviewZone({ zone, record: benchRecord({ days }) }).days.at(-1)!
    for (const { nextHour } of night.probes) {
      if (!nextHour.known) throw new Error(nextHour.reason)
      expect(Math.abs(nextHour.use - 0.03)).toBeLessThan(0.006)
      expect(nextHour.band90[0]).toBeLessThan(0.03)
      expect(nextHour.band90[1]).toBeGreaterThan(0.03)
    }
    const scale = 8
    const large = benchZone({ container: { ...zone.container, substrateVolume: (14 * scale) as never } })
    const eight = reviewZone({ zone: large, record: benchRecord({ days, scale }) }).days.at(-1)!
    const [a, b] = [night.probes[0]!.nextHour, eight.probes[0]!.nextHour]
    expect(b.known && a.known && b.use / a.use).toBeCloseTo(scale, 9)
  })
  it('is that of a slow night, however much faster the day goes', () => {
    // Of 0.21 L in an hour of light a fifth, a tenth and a twentieth.
    for (const dark of [0.042, 0.021, 0.0105]) {
      const whole = benchRecord({ days: 10, use: { light: 0.21, dark } })
      const until = MIDNIGHT + 9 * 86400 + 2 * 3600
      const follower = followZone(zone)
      const inputs = entriesOfRecord(whole).filter(({ time }) => time <= until)
      const day = follower.finish(runReducer({ reducer: follower, inputs }).state).at(-1)!
      const uses = day.probes.map(({ nextHour }) => (nextHour.known ? nextHour.use : Number.NaN))
      for (const use of uses) expect(Math.abs(use - dark)).toBeLessThan(0.3 * dark + 0.003)
    }
  })
  it('is known while the day goes on, but not while drain does, and not of a probe that does not count', () => {
    const lost = benchRecord({ days })
    const B = Array.from(lost.probes.B!, () => null)
    const entries = entriesOfRecord({ ...lost, probes: { ...lost.probes, B } })
    // After the last shot at 17:00.
    const since = (seconds: number) => {
      const until = MIDNIGHT + (days - 1) * 86400 + 17 * 3600 + seconds
      const follower = followZone(zone)
      const inputs = entries.filter((one) => one.time <= until)
      return follower.finish(runReducer({ reducer: follower, inputs }).state)[0]!.probes.map(({ nextHour }) => nextHour)
    }
    expect(since(2400)).toEqual([
      { known: false, reason: 'draining' },
      { known: false, reason: 'not-used' },
    ])
    // The bucket uses 0.21 L in an hour of light.
    const [evening] = since(5400)
    expect(evening?.known && Math.abs(evening.use - 0.21)).toBeLessThan(0.04)
  })
})

describe('a day that goes on', () => {
  it('sends nobody to look at healthy probes; without any reading it does', () => {
    const noon = MIDNIGHT + 2 * 86400 + 43200
    const follower = followZone(zone)
    const until = (change: ZoneRecord) => {
      const inputs = entriesOfRecord(change).filter(({ time }) => time <= noon)
      return follower.finish(runReducer({ reducer: follower, inputs }).state)[0]!
    }
    const day = until(record)
    expect(day.level.known).toBe(true)
    // At noon the valve opened.
    expect(proposeDay({ zone, day: JSON.parse(text(day)) })).toEqual({ known: false, reason: 'shot-not-read-yet' })
    expect(day.findings.filter(({ level }) => level === 'danger')).toEqual([])
    const none = Array.from(record.time, () => null)
    const silent = until({ ...record, probes: { A: none, B: none } })
    expect(silent.findings).toContainEqual({ code: 'all-probes-left-out', level: 'danger' })
  })
})

describe('an independent sum', () => {
  it('gives the same water, night and levels', () => {
    const day = reviewZone({ zone, record }).days[1]!
    const { watering, probes, time } = record
    const of = (column: ArrayLike<number | null>) =>
      Array.from(column).filter((_, i) => watering!.time[i]! >= day.from && watering!.time[i]! < day.to) as number[]
    const sum = (list: number[]) => list.reduce((a, b) => a + b, 0)
    expect(known(day.balance.given)).toBeCloseTo(sum(of(watering!.given)), 9)
    expect(known(day.balance.drained)).toBeCloseTo(sum(of(watering!.drained!)), 9)
    // The bucket uses 0.21 L/h in 14 hours of light and 0.03 L/h in 10 of dark.
    expect(known(day.balance.use)).toBeCloseTo(14 * 0.21 + 10 * 0.03, 1)
    // The last shot is at 17:00 and the next at 8:00; two hours at each end are lit, less 40 minutes of drain.
    const night = known(day.probes[0]!.night)
    // Noise decides which of two readings is the highest after the shot.
    expect([2700, 3000]).toContain(night.from - MIDNIGHT - 17 * 3600)
    expect(night.to).toBe(MIDNIGHT + 86400 + 8 * 3600)
    const fall = (0.21 * (2.25 + 2) + 0.03 * 10) / 14
    expect(night.fall).toBeCloseTo(fall, 2)
    const a = Array.from(probes.A!).filter((_, i) => time[i]! >= day.from && time[i]! < day.to) as number[]
    expect(known(day.probes[0]!.range)).toEqual({ min: Math.min(...a), max: Math.max(...a) })
  })
})

function known<T>(result: { known: true; value: T } | { known: false; reason: string }): T {
  if (!result.known) throw new Error(`not known: ${result.reason}`)
  return result.value
}
