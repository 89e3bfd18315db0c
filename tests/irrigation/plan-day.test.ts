import fc from 'fast-check'
import {
  type DayPlan,
  type DayPlanRequest,
  demandCourse,
  explainIrrigationFinding,
  fraction,
  instant,
  litres,
  litresPerHour,
  minutes,
  planDay,
  replanDay,
  seconds,
  staggerZones,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { bagDay, midnight } from '../../docs/tools/bag-day.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const hour = (h: number) => instant(midnight + Math.round(h * 3600))
const light = (n: number) =>
  Array.from({ length: n }, (_, i) => Math.max(0, Math.sin((Math.PI * ((24 * (i + 0.5)) / n - 6)) / 14)))

/** An invented bag of 14 L with 3.5 L of use on a summer day. */
const bag: DayPlanRequest = { ...bagDay, firstShot: hour(7.5) }

const request = fc.record({
  use: fc.double({ min: 0, max: 8, noNaN: true }),
  capacity: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
  below: fc.double({ min: 0, max: 0.1, noNaN: true }),
  band: fc.double({ min: 0.005, max: 0.15, noNaN: true }),
  start: fc.double({ min: 0.16, max: 0.95, noNaN: true }),
  drain: fc.double({ min: 0, max: 0.7, noNaN: true }),
  bypass: fc.double({ min: 0, max: 0.6, noNaN: true }),
  first: fc.double({ min: 0, max: 12, noNaN: true }),
  last: fc.double({ min: 12, max: 24, noNaN: true }),
  dry: fc.option(fc.double({ min: 0, max: 0.3, noNaN: true }), { nil: undefined }),
  least: fc.integer({ min: 0, max: 600 }),
  more: fc.integer({ min: 10, max: 1800 }),
  between: fc.integer({ min: 0, max: 7200 }),
  perDay: fc.double({ min: 0, max: 15, noNaN: true }),
  trigger: fc.constantFrom('level', 'light', 'clock'),
})
type Case = typeof request extends fc.Arbitrary<infer T> ? T : never

function toRequest(c: Case): DayPlanRequest {
  const full = c.capacity - c.below
  return {
    ...bag,
    demand: demandCourse({ total: litres(c.use), light: light(144), evenShare: fraction(0.15) }),
    container: { ...bag.container, containerCapacity: waterContent(c.capacity), bypass: fraction(c.bypass) },
    waterContent: waterContent(Math.min(c.start, c.capacity)),
    refillPoint: waterContent(Math.max(0.151, full - c.band)),
    fullPoint: waterContent(full),
    drainFraction: fraction(c.drain),
    firstShot: hour(c.first),
    lastShot: hour(c.last),
    ...(c.dry === undefined ? {} : { overnightDryDown: waterContentChange(c.dry) }),
    minRunTime: seconds(c.least),
    maxRunTime: seconds(c.least + c.more),
    minRest: seconds(c.between),
    maxPerDay: litres(c.perDay),
    trigger:
      c.trigger === 'light'
        ? { by: 'light', radiation: light(144).map((x) => x * 25), threshold: 120 }
        : c.trigger === 'clock'
          ? { by: 'clock', times: [8, 10, 12, 14, 16].map(hour) }
          : { by: 'level' },
  }
}

/** Every hard limit, checked without the code of the planner. */
function broken(r: DayPlanRequest, plan: DayPlan): string[] {
  const faults: string[] = []
  const perSecond = (r.emitters * r.emitterFlow) / 3600
  let sum = 0
  plan.shots.forEach((shot, i) => {
    sum += shot.volume
    if (shot.time < r.firstShot - 1e-6 || shot.time > r.lastShot + 1e-6) faults.push('a shot outside the hours')
    if (shot.runTime > r.maxRunTime + 1e-6) faults.push('a valve open too long')
    if (shot.runTime < Math.max(r.minRunTime, r.lineFill) - 1e-4) faults.push('a valve open too short')
    if (Math.abs((shot.runTime - r.lineFill) * perSecond - shot.volume) > 1e-9)
      faults.push('run time and volume disagree')
    const before = plan.shots[i - 1]
    if (before && shot.time - (before.time + before.runTime) < r.minRest - 1e-6) faults.push('shots too close')
  })
  if (sum > r.maxPerDay + 1e-6) faults.push('more than a day allows')
  const drained = plan.drain.reduce((a, b) => a + b, 0)
  const end = (plan.waterContent.at(-1) as number) * r.container.substrateVolume
  // What is still on its way out is in `drained` but neither in the steps nor in the content.
  if (plan.drained < drained - 1e-9) faults.push('drain lost')
  if (Math.abs(r.waterContent * r.container.substrateVolume + sum - plan.taken - plan.drained - end) > 1e-6)
    faults.push('water is not conserved')
  plan.waterContent.forEach((content) => {
    if (content > Math.max(r.fullPoint, r.waterContent) + 1e-6 && content > r.container.containerCapacity + 1e-6)
      faults.push('above capacity')
  })
  if (r.fullPoint < r.container.containerCapacity - 1e-6) {
    const risen = plan.shots.some((shot) => {
      const i = Math.round((shot.time - r.start) / r.step)
      return (
        plan.waterContent[i]! > r.fullPoint + 1e-6 &&
        plan.waterContent[i]! > (plan.waterContent[i - 1] ?? r.waterContent) + 1e-6
      )
    })
    if (risen) faults.push('lifted above the full point')
  }
  return faults
}

describe('a plan for a day', () => {
  it('goes through JSON as it is', () => {
    const plan = planDay(bag)
    expect(JSON.parse(JSON.stringify(plan))).toEqual(plan)
    expect(Array.isArray(JSON.parse(JSON.stringify(plan)).waterContent)).toBe(true)
  })
  it('keeps the band, drains the wanted share and says so', () => {
    const plan = planDay(bag)
    expect(plan.findings).toEqual([])
    expect(plan.drainFraction).toBeCloseTo(0.25, 2)
    const watered = plan.waterContent.slice(54, 109)
    expect(Math.min(...watered)).toBeGreaterThan(0.58)
    expect(plan.shots[0]?.reason).toBe('morning-rewet')
    expect(plan.shots.at(-1)?.reason).toMatch(/last-of-day|refill-point/)
  })
  it('respects every hard limit in 10,000 random cases', () => {
    fc.assert(
      fc.property(request, (c) => {
        const r = toRequest(c)
        expect(broken(r, planDay(r))).toEqual([])
      }),
      { numRuns: 10_000 },
    )
  })
  it('names what it cannot reach: a wish that is missed has a compromise', () => {
    fc.assert(
      fc.property(request, (c) => {
        const r = toRequest(c)
        const plan = planDay(r)
        const codes = plan.findings.map((found) => found.code)
        if (plan.applied > 0 && plan.drainFraction > c.drain + 0.0101) expect(codes).toContain('more-drain-than-wanted')
        if (plan.applied > 0 && plan.drainFraction < c.drain - 0.0101) expect(codes).toContain('less-drain-than-wanted')
        if ((plan.waterContent.at(-1) as number) <= 0.15) expect(codes).toContain('runs-dry')
        for (const found of plan.findings) expect(explainIrrigationFinding(found).message).toMatch(/[a-z]{3}/)
      }),
      { numRuns: 1000 },
    )
  })
  it('asks for no less water when more drain is wanted, where no limit is in the way', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 0.5, noNaN: true }),
        fc.double({ min: 0.1, max: 0.5, noNaN: true }),
        (a, b) => {
          const [less, more] = a < b ? [a, b] : [b, a]
          const ofDrain = (share: number) =>
            planDay({ ...bag, drainFraction: fraction(share), maxPerDay: litres(99), maxRunTime: minutes(60) }).applied
          expect(ofDrain(more)).toBeGreaterThanOrEqual(ofDrain(less) - 1e-6)
        },
      ),
    )
  })
  it('changes nothing when it is planned again after any number of shots that went as planned', () => {
    fc.assert(
      fc.property(request, fc.integer({ min: 0, max: 144 }), (c, steps) => {
        const r = toRequest(c)
        const plan = planDay(r)
        const now = instant(midnight + steps * 600)
        const again = replanDay(r, plan, { now, given: plan.shots.filter((shot) => shot.time < now) })
        expect(again.shots.map(({ time, volume }) => [time, volume])).toEqual(
          plan.shots.map(({ time, volume }) => [time, volume]),
        )
        expect(again.waterContent).toEqual(plan.waterContent)
      }),
      { numRuns: 500 },
    )
  })
  it('waters again when a shot failed, and less when the container is wetter than expected', () => {
    const plan = planDay(bag)
    const noon = hour(12)
    const given = plan.shots.filter((shot) => shot.time < noon)
    const failed = replanDay(bag, plan, { now: noon, given: given.slice(0, -2) })
    const rest = (p: DayPlan) => p.shots.filter((shot) => shot.time >= noon).reduce((sum, shot) => sum + shot.volume, 0)
    expect(rest(failed)).toBeGreaterThan(rest(plan))
    const wet = replanDay(bag, plan, { now: noon, given, waterContent: waterContent(0.62) })
    const dry = replanDay(bag, plan, { now: noon, given, waterContent: waterContent(0.55) })
    expect(rest(wet)).toBeLessThan(rest(dry))
  })
  it('stops early enough for the dry-down that is wanted, or says by how much it is missed', () => {
    const wanted = planDay({ ...bag, overnightDryDown: waterContentChange(0.08) })
    expect(wanted.overnightDryDown).toBeCloseTo(0.08, 2)
    expect(wanted.shots.at(-1)?.time).toBeLessThan(planDay(bag).shots.at(-1)?.time as number)
    const little = planDay({ ...bag, overnightDryDown: waterContentChange(0) })
    expect(little.findings.map((found) => found.code)).toContain('more-dry-down-than-wanted')
    const allDay = planDay({ ...bag, overnightDryDown: waterContentChange(0.25) })
    expect(allDay.shots).toEqual([])
    expect(allDay.findings.map((found) => found.code)).toContain('no-time-to-water')
  })
  it('follows light and keeps what is over, and follows a clock', () => {
    const radiation = light(144).map((x) => x * 25)
    const sum = radiation.reduce((a, b) => a + b, 0)
    const byLight = planDay({
      ...bag,
      firstShot: hour(0),
      lastShot: hour(24),
      minRest: minutes(0),
      maxPerDay: litres(50),
      trigger: { by: 'light', radiation, threshold: 120 },
    })
    expect(byLight.shots).toHaveLength(Math.floor(sum / 120 + 1e-9))
    const times = [9, 11, 13].map(hour)
    expect(planDay({ ...bag, trigger: { by: 'clock', times } }).shots.map((shot) => shot.time)).toEqual(times)
  })
  it('refuses limits that contradict each other', () => {
    expectInputError(() => planDay({ ...bag, refillPoint: waterContent(0.62) }), 'refillPoint')
    expectInputError(() => planDay({ ...bag, fullPoint: waterContent(0.7) }), 'fullPoint')
    expectInputError(() => planDay({ ...bag, minRunTime: minutes(20) }), 'minRunTime')
    expectInputError(() => planDay({ ...bag, firstShot: hour(19) }), 'firstShot')
    expectInputError(() => planDay({ ...bag, demand: [] }), 'demand')
    expectInputError(
      () => planDay({ ...bag, trigger: { by: 'light', radiation: [1], threshold: 100 } }),
      'trigger.radiation',
    )
    expectDomainError(() => planDay({ ...bag, demand: [0.1, Number.NaN] }), { argument: 'demand' })
    expectInputError(() => replanDay(bag, planDay(bag), { now: hour(30), given: [] }), 'soFar.now')
  })
})

describe('a plan without its request', () => {
  it('names the request, and the container where that alone is missing', () => {
    const nothing = undefined as unknown as DayPlanRequest
    const { container, ...rest } = bag
    const plan = planDay(bag)
    const soFar = { now: hour(8), waterContent: waterContent(0.6), given: [] }
    for (const call of [planDay, (request: DayPlanRequest) => replanDay(request, plan, soFar)]) {
      expect(() => call(nothing)).toThrow(/^request: is missing/)
      expect(() => call(rest as DayPlanRequest)).toThrow(/^container: is missing/)
    }
  })
})

describe('valves that share a pump', () => {
  const shots = fc.array(
    fc.record({
      zone: fc.constantFrom('a', 'b', 'c', 'd'),
      time: fc.integer({ min: 0, max: 3600 }).map(instant),
      runTime: fc.integer({ min: 1, max: 900 }).map(seconds),
      flow: fc.integer({ min: 1, max: 900 }).map(litresPerHour),
    }),
    { maxLength: 25 },
  )
  it('never ask for more than it gives, lose no shot and begin none early', () => {
    fc.assert(
      fc.property(shots, fc.integer({ min: 0, max: 60 }), (list, gap) => {
        const { shots: placed } = staggerZones(list, { maxFlow: litresPerHour(1000), minRest: seconds(gap) })
        expect(placed).toHaveLength(list.length)
        expect(placed.every((shot) => shot.delay >= 0)).toBe(true)
        for (const { time } of placed) {
          const open = placed.filter((shot) => shot.time <= time && time < shot.time + shot.runTime + gap)
          expect(open.reduce((sum, shot) => sum + shot.flow, 0)).toBeLessThanOrEqual(1000 + 1e-9)
        }
      }),
    )
  })
  it('are moved to the first moments at which they fit (second by second as oracle)', () => {
    const few = fc.array(
      fc.record({
        zone: fc.constantFrom('a', 'b', 'c'),
        time: fc.integer({ min: 0, max: 20 }).map(instant),
        runTime: fc.integer({ min: 1, max: 15 }).map(seconds),
        flow: fc.constantFrom(1, 2, 3, 4, 5, 6).map(litresPerHour),
      }),
      { maxLength: 8 },
    )
    fc.assert(
      fc.property(few, fc.integer({ min: 0, max: 6 }), (list, gap) => {
        const used: number[] = Array(400).fill(0)
        const order = list.map((shot, i) => ({ ...shot, i }))
        const expected: [number, string, number][] = []
        const free = new Map<string, number>()
        for (let time = 0; time <= 20; time++)
          for (const zone of ['a', 'b', 'c'])
            for (const shot of order.filter((one) => one.time === time && one.zone === zone)) {
              let from = Math.max(time, free.get(zone) ?? 0)
              const span = () => used.slice(from, from + shot.runTime + gap)
              while (span().some((flow) => flow + shot.flow > 6)) from++
              for (let s = from; s < from + shot.runTime + gap; s++) used[s] = used[s]! + shot.flow
              free.set(zone, from + shot.runTime + gap)
              expected.push([from, zone, shot.runTime])
            }
        const { shots: placed } = staggerZones(list, { maxFlow: litresPerHour(6), minRest: seconds(gap) })
        expect(placed.map(({ time }) => time)).toEqual(expected.map(([from]) => from).sort((a, b) => a - b))
        expect(placed.map(({ time, zone, runTime }) => [time, zone, runTime].join()).sort()).toEqual(
          expected.map((one) => one.join()).sort(),
        )
        for (const shot of placed)
          expect(list.some((one) => one.zone === shot.zone && one.time === shot.time - shot.delay)).toBe(true)
      }),
      { numRuns: 500 },
    )
  })
  it('rest as well where the next shot did not wait for the one that closes', () => {
    const shot = (zone: string, time: number, runTime: number, flow: number) => ({
      zone,
      time: instant(time),
      runTime: seconds(runTime),
      flow: litresPerHour(flow),
    })
    // C fits beside A, but would close five seconds before B, which has to wait for A, opens with nearly all of the pump's flow.
    const list = [shot('A', 0, 100, 700), shot('B', 50, 60, 800), shot('C', 60, 45, 300)]
    const { shots: placed } = staggerZones(list, { maxFlow: litresPerHour(1000), minRest: seconds(10) })
    expect(placed.map(({ zone, time }) => [zone, time])).toEqual([
      ['A', 0],
      ['B', 110],
      ['C', 180],
    ])
  })
  it('refuse a zone that is too large alone', () => {
    expectInputError(
      () =>
        staggerZones([{ zone: 'big', time: instant(0), runTime: minutes(1), flow: litresPerHour(2000) }], {
          maxFlow: litresPerHour(1000),
          minRest: seconds(0),
        }),
      'shots\\[0\\].flow',
    )
  })
})

describe('the course of demand', () => {
  it('sums to the day', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 100, noNaN: true }),
        fc.array(fc.double({ min: 0, max: 1000, noNaN: true }), { minLength: 1 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (total, course, even) => {
          fc.pre(course.some((x) => x > 1e-3))
          const steps = demandCourse({ total: litres(total), light: course, evenShare: fraction(even) })
          expect(steps.reduce((a, b) => a + b, 0)).toBeCloseTo(total, 9)
        },
      ),
    )
  })
  it('refuses a dark day without an even share', () => {
    expectInputError(() => demandCourse({ total: litres(1), light: [0, 0], evenShare: fraction(0.5) }), 'light')
    expect(demandCourse({ total: litres(1), light: [0, 0], evenShare: fraction(1) })).toEqual(Float64Array.of(0.5, 0.5))
  })
})
