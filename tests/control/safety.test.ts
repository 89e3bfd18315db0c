import fc from 'fast-check'
import {
  type AlarmInput,
  alarmLifeCycle,
  announceAlarms,
  type CheckWateringInput,
  checkWatering,
  hours,
  litres,
  litresPerHour,
  millilitres,
  minutes,
  percent,
  planRecovery,
  type RecoveryInput,
  runReducer,
  seconds,
  troubleOfFlow,
  troubleOfZone,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const json = <T>(state: T): T => JSON.parse(JSON.stringify(state)) as T
const safe: CheckWateringInput = {
  request: { volume: litres(0.4), runTime: minutes(6) },
  limits: {
    mostPerShot: litres(0.5),
    mostPerDay: litres(5),
    mostRunTime: minutes(10),
    leastOffTime: minutes(15),
    oldestReading: minutes(20),
    fullPoint: waterContent(0.62),
  },
  facts: {
    givenToday: litres(2),
    sinceLastShot: minutes(40),
    content: waterContent(0.55),
    age: minutes(3),
    flag: 1,
    clockRanOn: true,
    flowWhileClosed: false,
    locked: false,
    alarms: [],
  },
}

describe('the check before water flows', () => {
  it('lets a safe shot pass', () => {
    expect(checkWatering(safe)).toEqual({ allowed: true, refusals: [] })
  })
  it.each([
    ['day-used-up', { givenToday: litres(4.7) }],
    ['too-soon', { sinceLastShot: minutes(14) }],
    ['no-reading', { content: Number.NaN as never }],
    ['old-reading', { age: minutes(21) }],
    ['doubtful-reading', { flag: 3 }],
    ['full', { content: waterContent(0.62) }],
    ['clock-doubtful', { clockRanOn: false }],
    ['flow-while-closed', { flowWhileClosed: true }],
    ['locked', { locked: true }],
    ['alarm', { alarms: ['leak'] }],
  ])('refuses with the reason %s', (code, fact) => {
    const check = checkWatering({ ...safe, facts: { ...safe.facts, ...fact } })
    expect(check.allowed).toBe(false)
    expect(check.refusals.map((refusal) => refusal.code)).toEqual([code])
  })
  it('refuses whatever it does not know', () => {
    for (const name of Object.keys(safe.facts)) {
      const facts = Object.fromEntries(Object.entries(safe.facts).filter(([key]) => key !== name))
      expect(checkWatering({ ...safe, facts }).allowed, name).toBe(false)
    }
    expect(checkWatering({ ...safe, facts: {} }).refusals.length).toBeGreaterThan(6)
  })
  it('lets a small back-up shot pass without a reading, but not into a container that is known to be full', () => {
    const { content, age, flag, ...blind } = safe.facts
    expect(checkWatering({ ...safe, facts: blind }).allowed).toBe(false)
    expect(checkWatering({ ...safe, facts: blind, backUp: true }).allowed).toBe(true)
    expect(
      checkWatering({
        ...safe,
        facts: { ...blind, content: waterContent(0.63), ...(age && { age }), flag: flag ?? 1 },
        backUp: true,
      }).allowed,
    ).toBe(false)
    expect(content).toBe(0.55)
  })
  it('refuses too large and too long shots, and requests that make no sense', () => {
    const codes = (request: CheckWateringInput['request']) =>
      checkWatering({ ...safe, request }).refusals.map((refusal) => refusal.code)
    expect(codes({ volume: litres(0.6), runTime: minutes(6) })).toEqual(['shot-too-large'])
    expect(codes({ volume: litres(0.4), runTime: minutes(11) })).toEqual(['run-too-long'])
    expectInputError(() => codes({ volume: litres(0.4), runTime: minutes(0) }), 'request')
    expectDomainError(() => codes({ volume: -1 as never, runTime: minutes(1) }), { quantity: 'volume of water' })
  })
})

const alarmSettings = { onDelay: minutes(5), offDelay: minutes(5), longestShelf: hours(8) }
const phases = (inputs: readonly AlarmInput[]) =>
  runReducer({ reducer: alarmLifeCycle(alarmSettings), inputs }).outputs.map(({ phase }) => phase)

describe('an alarm', () => {
  it('that returned to normal unseen waits for its acknowledgement', () => {
    expect(
      phases([
        { now: 0, condition: true },
        { now: 300, condition: true },
        { now: 310, condition: false },
        { now: 620, condition: false },
        { now: 700, action: 'acknowledge' },
      ]),
    ).toEqual(['normal', 'unacknowledged', 'unacknowledged', 'returned, unacknowledged', 'normal'])
  })
  it('is not raised again and again by a condition that flickers', () => {
    const inputs = Array.from({ length: 500 }, (_, i) => ({ now: 60 * i, condition: i > 10 && i % 3 !== 0 }))
    const { outputs } = runReducer({ reducer: alarmLifeCycle(alarmSettings), inputs })
    expect(outputs.filter(({ announce }) => announce)).toHaveLength(0)
    const slow = Array.from({ length: 500 }, (_, i) => ({ now: 60 * i, condition: i > 10 && i % 9 !== 0 }))
    const raised = runReducer({ reducer: alarmLifeCycle(alarmSettings), inputs: slow })
    expect(raised.outputs.filter(({ announce }) => announce)).toHaveLength(1)
  })
  it('comes back from the shelf by itself, and stays there no longer than allowed', () => {
    expect(
      phases([
        { now: 0, condition: true },
        { now: 300, condition: true },
        { now: 400, action: 'shelve', shelveFor: 1e9 },
        { now: 400 + 28799, condition: true },
        { now: 400 + 28800, condition: true },
        { now: 30000, action: 'shelve', shelveFor: 60 },
        { now: 30010, action: 'unshelve' },
      ]),
    ).toEqual(['normal', 'unacknowledged', 'shelved', 'shelved', 'unacknowledged', 'shelved', 'unacknowledged'])
  })
  it('stays as it is where its condition is not known', () => {
    expect(phases([{ now: 0, condition: true }, { now: 300 }, { now: 9000 }])).toEqual([
      'normal',
      'unacknowledged',
      'unacknowledged',
    ])
  })
  it('goes on after its state was written down, and its shelf does not grow when a clock goes back', () => {
    const input = fc.record(
      {
        now: fc.integer({ min: 0, max: 50000 }),
        condition: fc.boolean(),
        action: fc.constantFrom('acknowledge', 'shelve', 'unshelve'),
      },
      { requiredKeys: ['now'] },
    )
    fc.assert(
      fc.property(fc.array(input, { maxLength: 60 }), fc.nat(), (list, cut) => {
        const inputs = list as AlarmInput[]
        const reducer = alarmLifeCycle(alarmSettings)
        const at = cut % (inputs.length + 1)
        const first = runReducer({ reducer, inputs: inputs.slice(0, at) })
        const rest = runReducer({ reducer, inputs: inputs.slice(at), state: json(first.state) })
        expect([...first.outputs, ...rest.outputs]).toEqual(runReducer({ reducer, inputs }).outputs)
        const { shelvedUntil, last } = rest.state
        if (shelvedUntil !== null) expect(shelvedUntil - (last as number)).toBeLessThanOrEqual(28800)
      }),
    )
  })
})

describe('many alarms at a time', () => {
  it('are told by urgency, held back beyond the limit, and none is lost', () => {
    const priority = fc.constantFrom('high' as const, 'medium' as const, 'low' as const)
    const steps = fc.array(
      fc.record({ wait: fc.integer({ min: 0, max: 400 }), priorities: fc.array(priority, { maxLength: 8 }) }),
    )
    fc.assert(
      fc.property(steps, (list) => {
        let now = 0
        let count = 0
        const inputs = list.map(({ wait, priorities }) => {
          now += wait
          return { now, alarms: priorities.map((p) => ({ name: `${count++} ${p}`, priority: p })) }
        })
        const { outputs } = runReducer({ reducer: announceAlarms({ most: 5, window: minutes(10) }), inputs })
        const told = outputs.flatMap(({ tell }) => tell)
        expect(new Set(told).size).toBe(told.length)
        expect(told.length + (outputs.at(-1)?.held.length ?? 0)).toBe(count)
        for (const { held } of outputs) expect(held.some((name) => name.endsWith('high'))).toBe(false)
        inputs.forEach((input, i) => {
          const lately = outputs.filter((_, j) => j <= i && input.now - (inputs[j]?.now as number) < 600)
          const mild = lately.flatMap(({ tell }) => tell).filter((name) => !name.endsWith('high'))
          expect(mild.length).toBeLessThanOrEqual(5)
        })
      }),
    )
  })
})

describe('troubles', () => {
  const flow = { sinceCommand: minutes(3), settle: minutes(1), expectedFlow: litresPerHour(400) }
  const codes = (input: Parameters<typeof troubleOfFlow>[0]) => troubleOfFlow(input).map((trouble) => trouble.code)
  it('of flow are told apart', () => {
    expect(codes({ ...flow, commandedOpen: true, meteredFlow: litresPerHour(395) })).toEqual([])
    expect(codes({ ...flow, commandedOpen: true, meteredFlow: litresPerHour(10) })).toEqual(['no-water'])
    expect(codes({ ...flow, commandedOpen: true, meteredFlow: litresPerHour(300) })).toEqual(['low-flow'])
    expect(codes({ ...flow, commandedOpen: true, meteredFlow: litresPerHour(600) })).toEqual(['leak'])
    expect(codes({ ...flow, commandedOpen: false, meteredFlow: litresPerHour(0) })).toEqual([])
    expect(codes({ ...flow, commandedOpen: false, meteredFlow: litresPerHour(30) })).toEqual(['valve-does-not-close'])
    expect(codes({ ...flow, commandedOpen: false, drainRunning: hours(3), drainStops: hours(1) })).toEqual([
      'drain-does-not-stop',
    ])
    expect(codes({ ...flow, commandedOpen: true, sinceCommand: seconds(20), meteredFlow: litresPerHour(0) })).toEqual(
      [],
    )
  })
  it('of a zone are told apart', () => {
    const zone = (seen: number[], more: object = {}) =>
      troubleOfZone({ shots: 6, probes: seen.map((n, i) => ({ name: `P${i}`, seen: n })), ...more }).map(
        (trouble) => trouble.code,
      )
    expect(zone([6, 6, 5])).toEqual([])
    expect(zone([0, 0], { drained: false })).toEqual(['no-water'])
    expect(zone([0, 0], { drained: true })).toEqual(['by-pass'])
    expect(zone([6, 1, 6])).toEqual(['one-place-dry'])
    expect(zone([6, 6], { risesWithoutShot: 2 })).toEqual(['rise-without-shot'])
    expect(zone([])).toEqual([])
    expectDomainError(() => zone([1.5]), { unit: '1' })
  })
})

describe('recovery after a power cut', () => {
  const input: RecoveryInput = {
    content: waterContent(0.334),
    fullPoint: waterContent(0.6),
    substrateVolume: litres(3.75),
    drainFraction: percent(10),
    mostPerShot: millilitres(120),
    betweenShots: minutes(5),
    mostInAll: litres(3),
    clockChecked: true,
  }
  it('gives the volume of the reference scenario in its number of shots (reference scenario, recomputed)', () => {
    const plan = planRecovery(input)
    expect(plan.volume).toBeCloseTo(1.10833, 4)
    expect(plan.shots).toBe(10)
    expect(plan.lasts / 60).toBe(45)
    expect(plan.allowed).toBe(true)
  })
  it('is not allowed before somebody has looked at the clock, nor beyond the day', () => {
    expect(planRecovery({ ...input, clockChecked: false })).toMatchObject({ allowed: false })
    expect(planRecovery({ ...input, mostInAll: litres(1) })).toMatchObject({ allowed: false })
    expect(planRecovery({ ...input, content: waterContent(0.6) })).toMatchObject({ volume: 0, shots: 0, lasts: 0 })
  })
  it('conserves water and keeps to the largest shot', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (content, drain, most) => {
          const plan = planRecovery({
            ...input,
            content: waterContent(content),
            drainFraction: percent(drain * 100),
            mostPerShot: litres(most),
          })
          expect(plan.shot).toBeLessThanOrEqual(most * (1 + 1e-9))
          expect(plan.shot * plan.shots).toBeCloseTo(plan.volume, 9)
          expect(plan.volume * (1 - drain)).toBeCloseTo(Math.max(0, 0.6 - content) * 3.75, 9)
        },
      ),
    )
  })
})
