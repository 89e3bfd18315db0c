import fc from 'fast-check'
import {
  type CheckWateringInput,
  checkWatering,
  type DayPlan,
  type DayPlanRequest,
  hours,
  instant,
  litres,
  litresPerHour,
  minutes,
  percent,
  planDay,
  replanDay,
  type SizeShotInput,
  seconds,
  sizeShot,
  staggerZones,
  waterContent,
  waterContentChange,
  type ZoneShot,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { bagDay, midnight } from '../../docs/tools/bag-day.js'
import { safeWatering } from '../support/safe-watering.js'

/**
 * Somebody types one number wrong, a packet loses one, a unit slips. What plans, sizes or allows water refuses it with a typed error, or
 * keeps inside the limits that it was given, and never answers with a number that is none. The bench is invented.
 */
const at = (hour: number) => instant(midnight + hour * 3600)
const shot: SizeShotInput = {
  substrateVolume: litres(11.25),
  rise: waterContentChange(0.03),
  drainFraction: percent(15),
  emitterFlow: litresPerHour(2.1),
  emitters: 3,
  lineFill: seconds(12),
  minRunTime: seconds(60),
  maxRunTime: minutes(20),
  emittersOnValve: 600,
  pumpFlow: litresPerHour(2000),
}
const check: CheckWateringInput = {
  ...safeWatering,
  facts: {
    ...safeWatering.facts,
    givenInDay: litres(4.55),
    sinceLastShot: minutes(16),
    waterContent: waterContent(0.61),
    age: minutes(19),
  },
}

/** What becomes of a number: lost, another type, a code for "no reading", another unit, an end of what numbers can be. */
const WRONG: readonly ((right: number) => unknown)[] = [
  () => null,
  () => undefined,
  () => Number.NaN,
  () => Infinity,
  () => -Infinity,
  (x) => `${x}`,
  () => 'error',
  () => true,
  () => [],
  () => ({}),
  () => -999,
  () => 65535,
  () => 0,
  (x) => -x,
  ...[10, 100, 1000, 1e-1, 1e-2, 1e-3].map((factor) => (x: number) => x * factor),
  ...[5e-324, 1e-320, 1e-300, 1e300, 1.7e308].map((end) => () => end),
]
const wrong = fc.constantFrom(...WRONG)

/** A copy in which the number at a path of keys is another one. */
function changed<T>(input: T, path: readonly string[], how: (right: number) => unknown): T {
  const [key, ...rest] = path as [string, ...string[]]
  const before = (input as Record<string, unknown>)[key]
  return { ...input, [key]: rest.length === 0 ? how(before as number) : changed(before, rest, how) } as T
}

/** The paths of all numbers of an input, lists aside. */
function paths(input: object, above: readonly string[] = []): string[][] {
  return Object.entries(input).flatMap(([key, value]) =>
    typeof value === 'number'
      ? [[...above, key]]
      : typeof value === 'object' && !Array.isArray(value) && value !== null
        ? paths(value, [...above, key])
        : [],
  )
}

const TYPED: readonly unknown[] = ['outside-domain', 'bad-input', 'no-convergence']
/** What a call gives, or null for a typed refusal; any other error is a failure. */
function answer<T>(call: () => T): T | null {
  try {
    return call()
  } catch (error) {
    expect(TYPED, String(error)).toContain((error as { code?: unknown }).code)
    return null
  }
}

function numbersOf(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersOf) : []
}
const allFinite = (value: unknown) => expect(numbersOf(value).filter((x) => !Number.isFinite(x))).toEqual([])

/** Every hard limit of a request, checked without the planner. */
function insideLimits(request: DayPlanRequest, { shots }: DayPlan, from = -Infinity): void {
  const coming = shots.filter(({ time }) => time > from)
  for (const [i, one] of coming.entries()) {
    expect(one.time).toBeGreaterThanOrEqual(request.firstShot - 1e-6)
    expect(one.time).toBeLessThanOrEqual(request.lastShot + 1e-6)
    expect(one.runTime).toBeLessThanOrEqual(request.maxRunTime + 1e-6)
    const before = coming[i - 1]
    if (before !== undefined)
      expect(one.time - before.time - before.runTime).toBeGreaterThanOrEqual(request.minRest - 1e-6)
  }
  const sum = shots.reduce((total, { volume }) => total + volume, 0)
  if (coming.length > 0) expect(sum).toBeLessThanOrEqual(request.maxPerDay * (1 + 1e-9) + 1e-9)
}

describe('one number is wrong', () => {
  it('in the request of a plan: refused, or inside every limit that was given', () => {
    fc.assert(
      fc.property(fc.constantFrom(...paths(bagDay)), wrong, (path, how) => {
        const request = changed(bagDay, path, how)
        const plan = answer(() => planDay(request))
        if (plan === null) return
        allFinite(plan)
        insideLimits(request, plan)
      }),
      { numRuns: 300 },
    )
  })
  it('in one step of the demand: refused, or inside every limit', () => {
    fc.assert(
      fc.property(fc.nat({ max: 143 }), wrong, (step, how) => {
        const demand = Array.from(bagDay.demand, (use, i) => (i === step ? how(use) : use)) as never
        const plan = answer(() => planDay({ ...bagDay, demand }))
        if (plan === null) return
        allFinite(plan)
        insideLimits(bagDay, plan)
      }),
      { numRuns: 100 },
    )
  })
  it('in what really happened: what was given counts, and the rest keeps to the limits', () => {
    const plan = planDay(bagDay)
    const soFar = { now: at(12), given: plan.shots.filter(({ time }) => time < at(12)), measured: waterContent(0.6) }
    const places = [['now'], ['measured'], ...[0, 1].flatMap((i) => [`${i}.time`, `${i}.volume`].map((key) => [key]))]
    fc.assert(
      fc.property(fc.constantFrom(...places), wrong, ([key], how) => {
        const [i, part] = key!.split('.') as [string, string | undefined]
        const told = (
          part === undefined
            ? changed(soFar, [key!], how)
            : { ...soFar, given: soFar.given.map((one, at) => (at === Number(i) ? changed(one, [part], how) : one)) }
        ) as typeof soFar
        const again = answer(() => replanDay(bagDay, plan, told))
        if (again === null) return
        allFinite(again)
        insideLimits(bagDay, again, told.now)
        for (const one of told.given)
          if (one.volume > 0) expect(again.shots.some(({ time }) => Math.abs(time - one.time) < 1)).toBe(true)
      }),
      { numRuns: 200 },
    )
  })
  it('in the sizing of a shot: refused, or within the run time that is allowed', () => {
    fc.assert(
      fc.property(fc.constantFrom(...paths(shot)), wrong, (path, how) => {
        const input = changed(shot, path, how)
        const sized = answer(() => sizeShot(input))
        if (sized === null) return
        allFinite(sized)
        expect(sized.runTime).toBeLessThanOrEqual(input.maxRunTime ?? 3600)
        expect(sized.volume).toBeGreaterThanOrEqual(0)
      }),
      { numRuns: 1000 },
    )
  })
  it('among zones on one pump: refused, or no two valves that the pump cannot feed', () => {
    const pump = { maxFlow: litresPerHour(1000), minRest: seconds(30), lastEnd: at(18) }
    const list = (): ZoneShot[] =>
      ['a', 'b', 'a', 'c'].map((zone, i) => ({
        zone,
        time: at(8 + i / 20),
        runTime: minutes(10),
        flow: litresPerHour(600),
      }))
    const places = ['time', 'runTime', 'flow', 'maxFlow', 'minRest', 'lastEnd']
    fc.assert(
      fc.property(fc.constantFrom(...places), fc.nat({ max: 3 }), wrong, (key, i, how) => {
        const ofPump = key in pump
        const wanted = ofPump ? list() : list().map((one, at) => (at === i ? changed(one, [key], how) : one))
        const given = ofPump ? changed(pump, [key], how) : pump
        const placed = answer(() => staggerZones(wanted, given))
        if (placed === null) return
        allFinite(placed)
        expect(placed.shots).toHaveLength(4)
        for (const one of placed.shots) {
          const running = placed.shots.filter(
            (other) => other.time <= one.time && one.time < other.time + other.runTime,
          )
          expect(running.reduce((sum, { flow }) => sum + flow, 0)).toBeLessThanOrEqual(given.maxFlow * (1 + 1e-9))
          expect(new Set(running.map(({ zone }) => zone)).size).toBe(running.length)
        }
      }),
      { numRuns: 500 },
    )
  })
  it('in what is known before water flows: a shot that was safe by little is refused, never allowed beyond a limit', () => {
    expect(checkWatering(check).allowed).toBe(true)
    fc.assert(
      fc.property(fc.constantFrom(...paths(check)), wrong, (path, how) => {
        const input = changed(check, path, how)
        const { allowed, refusals } = checkWatering(input)
        expect(allowed).toBe(refusals.length === 0)
        allFinite(refusals)
        if (!allowed) return
        const { request, limits, facts } = input
        for (const part of numbersOf([request, limits, facts])) expect(Number.isFinite(part)).toBe(true)
        expect(request.volume).toBeLessThanOrEqual(limits.maxPerShot as number)
        expect((facts.givenInDay as number) + request.volume).toBeLessThanOrEqual(limits.maxPerDay as number)
        expect(request.runTime).toBeLessThanOrEqual(limits.maxRunTime as number)
        expect(facts.sinceLastShot).toBeGreaterThanOrEqual(limits.minRest as number)
        expect(facts.age).toBeLessThanOrEqual(limits.maxReadingAge as number)
        expect(facts.age).toBeGreaterThanOrEqual(0)
        expect(facts.waterContent).toBeLessThan(limits.fullPoint as number)
      }),
      { numRuns: 1000 },
    )
  })
  it('hours that the clock names twice or in milliseconds make no plan', () => {
    for (const times of [[at(9) * 1000], [at(9), at(9)], [at(33)]]) {
      const plan = answer(() => planDay({ ...bagDay, trigger: { by: 'clock', times: times as never } }))
      if (plan !== null) insideLimits(bagDay, plan)
    }
    expect(answer(() => planDay({ ...bagDay, minRest: hours(25) }))).toBeNull()
  })
})
