/** On-delay, off-delay and deadband as ISA-18.2 (IEC 62682) has them: an alarm that chatters is raised once. */
import * as fc from 'fast-check'
import { type Cause, type Diagnosis, hours, minutes, runReducer, type ZoneAlarmsInput, zoneAlarms } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

const cause = (weight: number): Cause => ({
  code: 'no-water',
  level: 'danger',
  weight,
  evidence: [],
  check: 'look-at-supply',
  since: 0,
})
const diagnosis = (weight: number | null): Diagnosis => ({
  causes: weight === null ? [] : [cause(weight)],
  ruledOut: [],
  cannotTell: [],
  full: { known: false, reason: 'no-trusted-probe' },
})
const course = (weights: readonly (number | null)[], step = 10): ZoneAlarmsInput[] =>
  weights.map((weight, k) => ({ now: 60 * step * k, diagnosis: diagnosis(weight) }))
const announced = (inputs: readonly ZoneAlarmsInput[], settings = {}) =>
  runReducer({ reducer: zoneAlarms(settings), inputs })
    .outputs.flat()
    .filter(({ announce }) => announce).length

describe('the alarms of a zone', () => {
  it('are raised once while a cause comes and goes, and again after the off-delay', () => {
    const flaps = Array.from({ length: 60 }, (_, k) => (k % 3 === 2 ? null : 0.9))
    expect(announced(course(flaps))).toBe(1)
    expect(announced(course(flaps), { offDelay: minutes(0) })).toBe(20)
    expect(announced(course([0.9, null, null, null, null, 0.9]))).toBe(2)
  })
  it('stay within the dead-band, and wait for the on-delay', () => {
    const wobbles = Array.from({ length: 40 }, (_, k) => (k % 10 < 5 ? 0.62 : 0.55))
    expect(announced(course(wobbles))).toBe(1)
    expect(announced(course(wobbles), { deadBand: 0, offDelay: minutes(0) })).toBe(4)
    expect(announced(course([0.9, 0.9, null, null]), { onDelay: hours(1) })).toBe(0)
    expect(announced(course([0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9]), { onDelay: hours(1) })).toBe(1)
  })
  it('look ahead: before the refill point is reached, and no more when shots have moved it half an hour away', () => {
    const until = (earliest: number) => ({
      known: true as const,
      from: 0.6 as never,
      time: hours(earliest + 1),
      band50: { earliest: hours(earliest) },
      band90: { earliest: hours(earliest) },
    })
    const at = (earliest: number, k: number) => ({
      now: 600 * k,
      diagnosis: diagnosis(null),
      untilRefill: until(earliest),
    })
    const { outputs } = runReducer({ reducer: zoneAlarms({}), inputs: [3, 1.9, 2.2, 1.9, 6, 6, 6, 6, 6].map(at) })
    expect(outputs.map((all) => all.map(({ name, phase }) => `${name} ${phase}`))).toEqual([
      [],
      ...new Array(6).fill(['refill-point-ahead unacknowledged']),
      ['refill-point-ahead returned-unacknowledged'],
      ['refill-point-ahead returned-unacknowledged'],
    ])
  })
  it('go by what is told where nothing is set, to the second and to the weight', () => {
    const phases = (inputs: readonly ZoneAlarmsInput[], settings = {}) =>
      runReducer({ reducer: zoneAlarms(settings), inputs }).outputs.map((all) => all[0]?.phase ?? 'normal')
    const at = (now: number, weight: number | null) => ({ now, diagnosis: diagnosis(weight) })
    const gone = 'returned-unacknowledged'
    // Half an hour gone.
    expect(phases([at(0, 0.9), at(60, null), at(1859, null)])[2]).toBe('unacknowledged')
    expect(phases([at(0, 0.9), at(60, null), at(1860, null)])[2]).toBe(gone)
    // A weight of 0.6, and 0.1 less to stay.
    const none = { offDelay: minutes(0) }
    expect(phases([at(0, 0.599), at(60, 0.6), at(120, 0.5), at(180, 0.499)], none)).toEqual([
      'normal',
      'unacknowledged',
      'unacknowledged',
      gone,
    ])
    // Two hours ahead, and half an hour more to stay.
    const ahead = (earliest: number, k: number) => ({
      ...at(60 * k, null),
      untilRefill: { known: true, from: 0.6, time: 20000, band50: { earliest }, band90: { earliest } } as never,
    })
    expect(phases([7201, 7200, 9000, 9001].map(ahead), none)).toEqual([
      'normal',
      'unacknowledged',
      'unacknowledged',
      gone,
    ])
    // Put away for eight hours at most.
    const shelve = { ...at(60, 0.9), action: { name: 'no-water', action: 'shelve', shelveFor: 1e6 } as never }
    expect(phases([at(0, 0.9), shelve, at(28859, 0.9), at(28860, 0.9)]).slice(1)).toEqual([
      'shelved',
      'shelved',
      'unacknowledged',
    ])
  })
  it('are acknowledged by name, and go on from JSON', () => {
    const inputs: ZoneAlarmsInput[] = [
      ...course([0.9, 0.9]),
      { now: 1200, diagnosis: diagnosis(0.9), action: { name: 'no-water', action: 'acknowledge' } },
    ]
    const reducer = zoneAlarms({})
    const { state, outputs } = runReducer({ reducer, inputs })
    expect(outputs.at(-1)).toMatchObject([{ name: 'no-water', priority: 'high', phase: 'acknowledged' }])
    const again = reducer.step(JSON.parse(JSON.stringify(state)), { now: 1260, diagnosis: diagnosis(0.9) })
    expect(again).toEqual(reducer.step(state, { now: 1260, diagnosis: diagnosis(0.9) }))
    for (const lost of [null, {}, { alarms: { 'no-water': 3 } }])
      expect(reducer.step(lost as never, { now: 1260, diagnosis: diagnosis(0.9) })[1][0]?.announce).toBe(true)
  })
  it('never announce more often than a condition without delays would', () => {
    fc.assert(
      fc.property(fc.array(fc.option(fc.double({ min: 0.4, max: 1, noNaN: true })), { maxLength: 60 }), (weights) => {
        expect(announced(course(weights))).toBeLessThanOrEqual(
          announced(course(weights), { offDelay: minutes(0), deadBand: 0 }),
        )
      }),
    )
  })
  it('refuse delays and weights that make no sense', () => {
    expectDomainError(() => zoneAlarms({ offDelay: -1 as never }))
    expectDomainError(() => zoneAlarms({ minWeight: 2 }))
    expectDomainError(() => zoneAlarms({ deadBand: 0.6 }))
  })
})
