import {
  type AlarmInput,
  alarmLifeCycle,
  checkWatering,
  controlWatering,
  type DrainFraction,
  hours,
  litres,
  litresPerHour,
  minutes,
  percent,
  planDay,
  planRecovery,
  runReducer,
  seconds,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { bagDay } from '../../docs/tools/bag-day.js'
import { expectInputError } from '../support/refusals.js'
import { safeWatering as safe } from '../support/safe-watering.js'
import { settings } from './watering/zone.js'

const nothings: readonly unknown[] = [
  undefined,
  null,
  Number.NaN,
  Infinity,
  -Infinity,
  '0.4',
  'no',
  true,
  0 / -1,
  {},
  [1],
]
const blind = { ...safe, backUp: true, facts: { ...safe.facts, waterContent: undefined as never } }

describe('what is not known', () => {
  const groups = ['request', 'limits', 'facts'] as const
  const fields = groups.flatMap((group) => Object.keys(safe[group]).map((name) => [group, name] as const))
  it.each(fields)('of %s.%s speaks against watering, whatever stands there instead', (group, name) => {
    for (const nothing of nothings) {
      // A zero is a number that makes sense for most of these.
      if (nothing === 0 || (name === 'clockRanOn' && nothing === true)) continue
      const check = checkWatering({ ...safe, [group]: { ...safe[group], [name]: nothing } })
      expect(check.allowed, `${name}: ${String(nothing)}`).toBe(false)
    }
  })
  it.each(fields.filter(([, name]) => !['waterContent', 'age', 'flag'].includes(name)))(
    'of %s.%s speaks against a back-up shot as well',
    (group, name) => {
      expect(checkWatering(blind).allowed).toBe(true)
      for (const nothing of nothings) {
        if (nothing === 0 || (name === 'clockRanOn' && nothing === true)) continue
        expect(checkWatering({ ...blind, [group]: { ...blind[group], [name]: nothing } }).allowed).toBe(false)
      }
    },
  )
  it('as a whole is told and never thrown', () => {
    for (const nothing of nothings)
      for (const input of [
        nothing,
        { ...safe, request: nothing },
        { ...safe, limits: nothing },
        { ...safe, facts: nothing },
      ])
        expect(checkWatering(input as never).allowed).toBe(false)
    expect(checkWatering(undefined as never).refusals.filter(({ code }) => code === 'limit-missing')).toHaveLength(9)
  })
})

describe('both ends of belief', () => {
  it.each([0, -0.2, -Infinity, 0.19, 0.81, 65535])('refuse a reading of %s', (level) => {
    const facts = { ...safe.facts, waterContent: level as never }
    expect(checkWatering({ ...safe, facts }).allowed).toBe(false)
  })
  it('must hold the full point between them', () => {
    const limits = { ...safe.limits, fullPoint: waterContent(0.85) }
    expect(checkWatering({ ...safe, limits }).refusals.map(({ code }) => code)).toEqual(['limits-contradict'])
  })
})

describe('numbers in another unit', () => {
  const refusedFor = (limits: object, facts: object = {}) =>
    checkWatering({ ...safe, limits: { ...safe.limits, ...limits }, facts: { ...safe.facts, ...facts } }).refusals.map(
      ({ code, about }) => about ?? code,
    )
  it('of a limit, milliseconds or percent, are no limit: each once let a shot pass', () => {
    expect(refusedFor({ maxReadingAge: 1_200_000 }, { age: minutes(20 * 60) })).toEqual(['maxReadingAge'])
    expect(refusedFor({ maxRunTime: 600_000 })).toEqual(['maxRunTime'])
    expect(refusedFor({ minRest: 900_000 })).toEqual(['minRest'])
    expect(refusedFor({ maxBelievable: 80 })).toEqual(['maxBelievable'])
  })
  it('of the limit of a day limit nothing: a valve that is open all day does not reach millilitres taken for litres', () => {
    expect(refusedFor({ maxPerDay: 1000 * safe.limits.maxPerDay })).toEqual(['maxPerDay'])
    expect(refusedFor({ maxPerDay: 24 * safe.limits.flow })).toEqual([])
  })
  it('of the time since the last shot contradict the water that was given meanwhile', () => {
    // Five minutes ago, in milliseconds: more than three days by the number, although two litres came in the last one.
    expect(refusedFor({}, { sinceLastShot: 300_000 })).toEqual(['last-shot-unknown'])
    expect(refusedFor({}, { sinceLastShot: 300_000, givenInDay: 0 })).toEqual([])
  })
  it('of the time in which the line fills are no limit; in seconds a shot of a long line passes', () => {
    const request = { volume: litres(0.2), runTime: seconds(240) }
    const codes = (limits: object) =>
      checkWatering({ ...safe, request, limits: { ...safe.limits, ...limits } }).refusals.map(({ code }) => code)
    expect(codes({ lineFill: seconds(60) })).toEqual([])
    expect(codes({})).toEqual(['volume-not-run-time'])
    expect(codes({ lineFill: seconds(240) })).toEqual(['volume-not-run-time'])
    for (const lineFill of [60_000, null, '60', Number.NaN, -1]) expect(codes({ lineFill })).toEqual(['limit-missing'])
  })
  it('of a reading: zero is believed by nobody, also where belief begins at zero', () => {
    for (const waterContent of [0, -0, -1e-320])
      expect(refusedFor({ minBelievable: 0 }, { waterContent })).toEqual(['unbelievable-reading'])
  })
})

describe('a back-up shot', () => {
  it('waits from the later of the last shot and the last good reading', () => {
    const codes = (facts: object, limits = {}) =>
      checkWatering({
        ...blind,
        limits: { ...safe.limits, ...limits },
        facts: { ...blind.facts, ...facts },
      }).refusals.map(({ code }) => code)
    expect(codes({ sinceLastShot: minutes(19) })).toEqual(['too-soon-for-back-up'])
    expect(codes({ waterContent: 0.55, age: minutes(19) })).toEqual(['too-soon-for-back-up'])
    expect(codes({ waterContent: 0.55, age: minutes(21) })).toEqual([])
    expect(codes({ waterContent: 0.55, age: minutes(21) }, { backUpAfter: hours(1) })).toEqual(['too-soon-for-back-up'])
    expect(codes({}, { backUpAfter: null })).toEqual(['limit-missing'])
  })
  it('is one only where it is called so by true itself', () => {
    for (const backUp of ['true', 1, {}])
      expect(checkWatering({ ...blind, backUp: backUp as never }).allowed).toBe(false)
  })
})

const alarm = { onDelay: minutes(5), offDelay: minutes(5), maxShelving: hours(8) }
const phases = (inputs: readonly AlarmInput[]) =>
  runReducer({ reducer: alarmLifeCycle(alarm), inputs }).outputs.map(({ phase }) => phase)

describe('an alarm', () => {
  it('whose first moment was NaN is raised all the same', () => {
    const rest = [0, 300, 600].map((now) => ({ now, condition: true }))
    expect(phases([{ now: Number.NaN, condition: true }, ...rest]).at(-1)).toBe('unacknowledged')
  })
  it('is raised where the clock stands still or was never readable', () => {
    for (const now of [1000, Number.NaN, null as never, Date.UTC(2026, 1, 1)])
      expect(phases(Array.from({ length: 12 }, () => ({ now, condition: true }))).at(-1)).toBe('unacknowledged')
  })
  it('comes off the shelf where the clock stands still', () => {
    const raised = [0, 300].map((now) => ({ now, condition: true }))
    const still = Array.from({ length: 101 }, () => ({ now: 400, condition: true }))
    expect(phases([...raised, { now: 400, action: 'shelve' as const }, ...still]).at(-1)).toBe('unacknowledged')
  })
  it('takes only true and false for a condition, and knows its three actions', () => {
    expect(phases([0, 300, 600].map((now) => ({ now, condition: 'no' as never })))).toEqual([
      'normal',
      'normal',
      'normal',
    ])
    const reducer = alarmLifeCycle(alarm)
    expectInputError(() => reducer.step(reducer.start, { now: 0, action: 'aknowledge' as never }), 'action')
  })
  it('begins again from a state that lost a field, and is raised', () => {
    const reducer = alarmLifeCycle(alarm)
    const { state } = runReducer({ reducer, inputs: [0, 300].map((now) => ({ now, condition: true })) })
    for (const key of Object.keys(state)) {
      for (const bad of [undefined, null, 'x', Number.NaN, {}]) {
        if (bad === null && ['last', 'since', 'shelvedUntil'].includes(key)) continue
        const inputs = [400, 700].map((now) => ({ now, condition: true }))
        const { outputs } = runReducer({ reducer, inputs, state: { ...state, [key]: bad } as never })
        expect(outputs.at(-1)?.phase).toBe('unacknowledged')
      }
    }
  })
})

describe('a shot larger than its medium', () => {
  const big = { ...safe, request: { volume: litres(12), runTime: hours(3) } }
  it('is refused by the last gate where the medium is known, and so is a limit that allows it', () => {
    const told = (maxPerShot: number, substrateVolume: unknown) =>
      checkWatering({ ...big, limits: { ...safe.limits, maxPerShot, substrateVolume } as never }).refusals.map(
        ({ code, about }) => about ?? code,
      )
    expect(told(500, litres(10))).toContain('maxPerShot')
    expect(told(500, undefined)).not.toContain('maxPerShot')
    expect(told(500, Number.NaN)).toContain('substrateVolume')
    expect(checkWatering({ ...safe, limits: { ...safe.limits, substrateVolume: litres(10) } }).allowed).toBe(true)
  })
  it('is no setting of a controller or of a recovery, as millilitres taken for litres are', () => {
    const zone = { ...settings, maxPerDay: litres(4000), usualPerDay: litres(2000), flow: litresPerHour(4000) }
    expectInputError(() => controlWatering({ ...zone, shot: litres(200) }), 'shot')
    const outage = {
      waterContent: waterContent(0.4),
      fullPoint: waterContent(0.6),
      substrateVolume: litres(4),
      drainFraction: percent<DrainFraction>(10),
      minPeriod: minutes(5),
      maxTotal: litres(3),
      clockChecked: true,
    }
    expectInputError(() => planRecovery({ ...outage, maxPerShot: litres(120) }), 'maxPerShot')
  })
  it('is given in parts by a plan', () => {
    const wet = { ...bagDay, drainFraction: percent<DrainFraction>(85), maxRunTime: hours(2), maxPerDay: litres(500) }
    const plan = planDay({
      ...wet,
      waterContent: waterContent(0.2),
      maxPerShot: litres(300),
      emitterFlow: litresPerHour(50),
    })
    expect(Math.max(...plan.shots.map(({ volume }) => volume))).toBe(bagDay.container.substrateVolume)
  })
})
