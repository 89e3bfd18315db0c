import fc from 'fast-check'
import {
  type AlarmInput,
  alarmLifeCycle,
  announceAlarms,
  type CheckWateringInput,
  checkWatering,
  explainControlFinding,
  hours,
  litres,
  millilitres,
  minutes,
  percent,
  planRecovery,
  type RecoveryInput,
  runReducer,
  seconds,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { safeWatering as safe } from '../support/safe-watering.js'

const json = <T>(state: T): T => JSON.parse(JSON.stringify(state)) as T

describe('the check before water flows', () => {
  it('lets a safe shot pass', () => {
    expect(checkWatering(safe)).toEqual({ allowed: true, refusals: [] })
  })
  it.each([
    ['beyond-limit-of-day', { givenInDay: litres(4.7) }],
    ['too-soon', { sinceLastShot: minutes(14) }],
    ['reading-unknown', { waterContent: Number.NaN as never }],
    ['old-reading', { age: minutes(21) }],
    ['doubtful-reading', { flag: 3 }],
    ['full', { waterContent: waterContent(0.62) }],
    ['clock-unknown', { clockRanOn: false }],
    ['leaks-while-closed', { flowWhileClosed: true }],
    ['zone-locked', { locked: true }],
    ['alarm', { alarms: ['leak'] }],
  ])('refuses with the reason %s', (code, fact) => {
    const check = checkWatering({ ...safe, facts: { ...safe.facts, ...fact } })
    expect(check.allowed).toBe(false)
    expect(check.refusals.map((refusal) => refusal.code)).toEqual([code])
  })
  it.each([
    ['given-unknown', 'givenInDay'],
    ['last-shot-unknown', 'sinceLastShot'],
    ['reading-unknown', 'waterContent'],
    ['old-reading', 'age'],
    ['doubtful-reading', 'flag'],
    ['clock-unknown', 'clockRanOn'],
    ['leak-unknown', 'flowWhileClosed'],
    ['lock-unknown', 'locked'],
    ['alarms-unknown', 'alarms'],
  ])('refuses with the reason %s where it does not know %s', (code, name) => {
    const facts = Object.fromEntries(Object.entries(safe.facts).filter(([key]) => key !== name))
    const check = checkWatering({ ...safe, facts })
    expect(check.allowed).toBe(false)
    expect(check.refusals.map((refusal) => refusal.code).filter((other) => other !== 'full')).toEqual([code])
  })
  it('refuses an alarm that cannot be put into text, instead of throwing', () => {
    const facts = { ...safe.facts, alarms: [Object.create(null) as string, Symbol('leak') as unknown as string] }
    const { refusals } = checkWatering({ ...safe, facts })
    expect(refusals.map(({ code }) => code)).toEqual(['alarm', 'alarm'])
  })
  it('lets a shot pass that is at every limit and beyond none', () => {
    const check = checkWatering({
      request: { volume: litres(0.5), runTime: minutes(7.5) },
      limits: { ...safe.limits, maxRunTime: minutes(7.5) },
      facts: { ...safe.facts, givenInDay: litres(4.5), sinceLastShot: minutes(15), age: minutes(20) },
    })
    expect(check).toEqual({ allowed: true, refusals: [] })
  })
  it('does not call a container full on the word of an old or a doubtful reading', () => {
    const full = { waterContent: waterContent(0.63) }
    for (const fact of [{ age: minutes(21) }, { flag: 3 }]) {
      const facts = { ...safe.facts, ...full, ...fact }
      expect(checkWatering({ ...safe, facts }).refusals).toHaveLength(1)
      expect(checkWatering({ ...safe, facts }).refusals[0]?.code).not.toBe('full')
      expect(checkWatering({ ...safe, facts, backUp: true }).allowed).toBe(true)
    }
    const justInTime = { ...safe.facts, ...full, age: minutes(20) }
    expect(checkWatering({ ...safe, facts: justInTime, backUp: true }).refusals.map(({ code }) => code)).toEqual([
      'full',
    ])
    const { age, ...undated } = safe.facts
    expect(age).toBe(180)
    expect(checkWatering({ ...safe, facts: { ...undated, ...full }, backUp: true }).allowed).toBe(true)
  })
  it('says by how much, in sentences with numbers', () => {
    const said = (input: Partial<CheckWateringInput>) =>
      checkWatering({ ...safe, ...input }).refusals.map((refusal) => explainControlFinding(refusal).message)
    const because = (facts: Partial<CheckWateringInput['facts']>) => said({ facts: { ...safe.facts, ...facts } })
    expect(said({ request: { volume: litres(0.60004), runTime: minutes(9) } })).toEqual([
      expect.stringMatching(/\(0\.6 L, limit 0\.5 L\)$/),
    ])
    expect(because({ givenInDay: litres(4.7) })).toEqual([expect.stringMatching(/\(5\.1 L, limit 5 L\)$/)])
    expect(because({ sinceLastShot: minutes(14) })).toEqual([expect.stringMatching(/\(14 min, limit 15 min\)$/)])
    expect(because({ age: minutes(21) })).toEqual([expect.stringMatching(/\(21 min, limit 20 min\)$/)])
    expect(because({ flag: 3 })).toEqual([expect.stringMatching(/\(3\)$/)])
    expect(because({ alarms: ['leak'] })).toEqual([expect.stringMatching(/^leak: /)])
    const { age, flag, ...rest } = safe.facts
    expect(said({ facts: { ...rest, ...(flag && { flag }) } })).toEqual([expect.stringMatching(/of unknown age$/)])
    expect(said({ facts: { ...rest, ...(age && { age }) } })).toEqual([expect.stringMatching(/tests$/)])
    expectInputError(() => explainControlFinding({ code: 'too-sonn' as never, level: 'note' }), 'finding')
  })
  it('lets a small back-up shot pass without a reading, but not into a container that is known to be full', () => {
    const { waterContent: level, age, flag, ...blind } = safe.facts
    expect(checkWatering({ ...safe, facts: blind }).allowed).toBe(false)
    expect(checkWatering({ ...safe, facts: blind, backUp: true }).allowed).toBe(true)
    expect(
      checkWatering({
        ...safe,
        facts: { ...blind, waterContent: waterContent(0.63), ...(age && { age }), flag: flag ?? 1 },
        backUp: true,
      }).allowed,
    ).toBe(false)
    expect(level).toBe(0.55)
  })
  it('refuses too large and too long shots, and requests that make no sense', () => {
    const codes = (request: CheckWateringInput['request']) =>
      checkWatering({ ...safe, request }).refusals.map((refusal) => refusal.code)
    expect(codes({ volume: litres(0.6), runTime: minutes(9) })).toEqual(['shot-too-large'])
    expect(codes({ volume: litres(0.6), runTime: minutes(11) })).toEqual(['shot-too-large', 'run-too-long'])
    expect(codes({ volume: litres(0.4), runTime: minutes(0) })).toEqual(['volume-not-run-time'])
    expect(codes({ volume: litres(0), runTime: minutes(6) })).toEqual(['volume-not-run-time'])
    expect(codes({ volume: litres(0), runTime: minutes(0) })).toEqual([])
    expect(codes({ volume: -1 as never, runTime: minutes(1) })).toEqual(['request-unclear'])
  })
})

const alarmSettings = { onDelay: minutes(5), offDelay: minutes(5), maxShelving: hours(8) }
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
    ).toEqual(['normal', 'unacknowledged', 'unacknowledged', 'returned-unacknowledged', 'normal'])
  })
  it('stays acknowledged while its condition lasts, and is normal once the condition has been gone for the delay', () => {
    const inputs: AlarmInput[] = [
      { now: 0, condition: true },
      { now: 300, condition: true },
      { now: 400, action: 'acknowledge' },
      { now: 500, condition: true, action: 'acknowledge' },
      { now: 600, condition: false },
      { now: 899, condition: false },
      { now: 900, condition: false },
    ]
    const { outputs } = runReducer({ reducer: alarmLifeCycle(alarmSettings), inputs })
    expect(outputs.map(({ phase }) => phase)).toEqual([
      'normal',
      'unacknowledged',
      ...Array(4).fill('acknowledged'),
      'normal',
    ])
    expect(outputs.map(({ announce }) => announce)).toEqual([false, true, false, false, false, false, false])
    expect(outputs.map(({ changed }) => changed)).toEqual([false, true, true, false, false, false, true])
  })
  it('that returned unseen stays on the list, and is told again when its condition comes back', () => {
    const inputs: AlarmInput[] = [
      { now: 0, condition: true },
      { now: 300, condition: true },
      { now: 310, condition: false },
      { now: 610, condition: false },
      { now: 5000, condition: false },
      { now: 5001, condition: true },
      { now: 5301, condition: true },
    ]
    const { outputs } = runReducer({ reducer: alarmLifeCycle(alarmSettings), inputs })
    expect(outputs.map(({ phase }) => phase)).toEqual([
      'normal',
      'unacknowledged',
      'unacknowledged',
      ...Array(3).fill('returned-unacknowledged'),
      'unacknowledged',
    ])
    expect(outputs.at(-1)).toMatchObject({ announce: true })
  })
  it('is normal where its condition was never known', () => {
    expect(phases([{ now: 0 }, { now: 9000 }])).toEqual(['normal', 'normal'])
  })
  it('stays on the shelf for as long as was asked for; neither acknowledging nor shelving again changes that', () => {
    expect(
      phases([
        { now: 0, condition: true },
        { now: 300, condition: true, action: 'shelve', shelveFor: 600 },
        { now: 500, condition: true, action: 'acknowledge' },
        { now: 600, condition: true, action: 'shelve' },
        { now: 899, condition: true },
        { now: 900, condition: true },
        { now: 1000, condition: true, action: 'acknowledge' },
        { now: 1001, condition: true, action: 'unshelve' },
        { now: 1002, condition: true, action: 'shelve' },
        { now: 1002 + 28799, condition: true },
        { now: 1002 + 28800, condition: true },
      ]),
    ).toEqual([
      'normal',
      ...Array(4).fill('shelved'),
      'unacknowledged',
      'acknowledged',
      'acknowledged',
      'shelved',
      'shelved',
      'unacknowledged',
    ])
  })
  it('is not silenced by a time on the shelf that makes no sense', () => {
    for (const shelveFor of [0, -60, Number.NaN])
      expect(
        phases([
          { now: 0, condition: true },
          { now: 300, condition: true },
          { now: 400, action: 'shelve', shelveFor },
          { now: 401, condition: true },
        ]).at(-1),
      ).toBe('unacknowledged')
  })
  it('keeps what it waited for, and what is left of the shelf, when a clock goes back', () => {
    const back: AlarmInput[] = [
      { now: 10000, condition: true },
      { now: 10200, condition: true },
      { now: 5000, condition: true },
      { now: 5099, condition: true },
      { now: 5100, condition: true },
    ]
    const raised = runReducer({ reducer: alarmLifeCycle(alarmSettings), inputs: back })
    expect(raised.outputs.map(({ phase }) => phase)).toEqual([...Array(4).fill('normal'), 'unacknowledged'])
    expect(raised.state.shelvedUntil).toBeNull()
    expect(
      phases([
        ...back,
        { now: 5200, condition: true, action: 'shelve', shelveFor: 600 },
        { now: 5300, condition: true },
        { now: 1000, condition: true },
        { now: 1499, condition: true },
        { now: 1500, condition: true },
      ]).slice(5),
    ).toEqual([...Array(4).fill('shelved'), 'unacknowledged'])
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
        const { outputs } = runReducer({ reducer: announceAlarms({ maxAlarms: 5, window: minutes(10) }), inputs })
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

describe('an input that was lost', () => {
  it('is refused by name by the life cycle of an alarm', () => {
    const { start, step } = alarmLifeCycle({ onDelay: minutes(5), offDelay: minutes(5), maxShelving: hours(8) })
    for (const lost of [null, undefined, 5]) expectInputError(() => step(start, lost as never), 'input')
  })
  it('leaves no endless number in the reasons of a refusal', () => {
    for (const flag of [-Infinity, Infinity, Number.NaN]) {
      const facts = { ...safe.facts, flag, waterContent: flag as never }
      const { allowed, refusals } = checkWatering({ ...safe, facts })
      expect(allowed).toBe(false)
      expect(refusals.filter(({ value }) => value !== undefined && !Number.isFinite(value))).toEqual([])
    }
  })
})

describe('a flood of alarms', () => {
  const reducer = announceAlarms({ maxAlarms: 3, window: minutes(10) })
  const named = (names: string, priority: 'high' | 'medium' | 'low' = 'low') =>
    [...names].map((name) => ({ name, priority }))
  const run = (inputs: { now: number; alarms: ReturnType<typeof named> }[]) => runReducer({ reducer, inputs })
  const told = (inputs: Parameters<typeof run>[0]) =>
    run(inputs).outputs.map(({ tell, held, flood }) => `${tell.join('')}|${held.join('')}${flood ? '!' : ''}`)
  it('is told first come, first told, the urgent before the others', () => {
    expect(told([{ now: 0, alarms: [...named('abcd'), ...named('xy', 'medium')] }])).toEqual(['xya|bcd!'])
    expect(told([{ now: 0, alarms: named('ab') }])).toEqual(['ab|'])
  })
  it('is told the moment the window has room, and not before', () => {
    expect(
      told([
        { now: 0, alarms: named('ab') },
        { now: 60, alarms: named('cd') },
        { now: 599, alarms: [] },
        { now: 600, alarms: named('e') },
        { now: 660, alarms: [] },
      ]),
    ).toEqual(['ab|', 'c|d!', '|d!', 'de|', '|'])
  })
  it('has no more room when several come at the same moment', () => {
    expect(
      told([
        { now: 0, alarms: named('ab') },
        { now: 0, alarms: named('cd') },
      ]),
    ).toEqual(['ab|', 'c|d!'])
  })
  it('does not wait for times of a clock that was set back', () => {
    expect(
      told([
        { now: 9000, alarms: named('abcd') },
        { now: 1000, alarms: [] },
      ]),
    ).toEqual(['abc|d!', 'd|'])
  })
  it('is refused by name where its message is torn, instead of dropping an alarm without a name', () => {
    const step = (input: unknown) => () => reducer.step(reducer.start, input as Parameters<typeof reducer.step>[1])
    for (const torn of [null, undefined]) expectInputError(step(torn), 'input')
    for (const alarms of [null, undefined, 5]) expectInputError(step({ now: 0, alarms }), 'alarms')
    expectInputError(step({ now: 0, alarms: [null] }), /alarms\[0\]/)
    expectInputError(step({ now: 0, alarms: [{ priority: 'high' }] }), 'name')
  })
  it('is not counted with limits that make no sense', () => {
    for (const most of [0, 101, 1.5])
      expectDomainError(() => announceAlarms({ maxAlarms: most, window: minutes(10) }), {
        quantity: 'most alarms at a time',
      })
    for (const window of [0, 86401])
      expectDomainError(() => announceAlarms({ maxAlarms: 3, window: seconds(window) }), {
        quantity: 'time in which alarms are counted',
      })
  })
  it('keeps counting while the clock cannot be read, and goes on from a state that was torn', () => {
    const { outputs, state } = run([
      { now: 1000, alarms: named('abc') },
      { now: Number.NaN, alarms: named('d') },
      { now: 1e300, alarms: named('e') },
      { now: 1600, alarms: [] },
    ])
    expect(outputs.map(({ tell }) => tell.join(''))).toEqual(['abc', '', '', 'de'])
    expect(state.recent.every(Number.isFinite)).toBe(true)
    for (const torn of [null, {}, { recent: 5, held: [null, { name: 'x' }] }, { recent: [null, Number.NaN] }])
      expect(reducer.step(torn as never, { now: 2000, alarms: named('f') })[1].tell).toEqual(['f'])
  })
  it.each([500, Number.NaN, Date.UTC(2026, 1, 1)])(
    'is told to its last alarm where the clock stands still at %s',
    (now) => {
      const flood = { now: 500, alarms: named('abcdefgh') }
      const still = Array.from({ length: 30 }, () => ({ now, alarms: named('') }))
      const { outputs, state } = run([flood, ...still])
      expect(outputs.flatMap(({ tell }) => tell).join('')).toBe('abcdefgh')
      expect(state.held).toEqual([])
      // No more at a time than one person can take in, and not at once.
      for (const { tell } of outputs) expect(tell.length).toBeLessThanOrEqual(3)
      expect(outputs.slice(1, 10).flatMap(({ tell }) => tell)).toEqual([])
    },
  )
  it('of one moment, sent one alarm after another, has no room for more until a hundred came', () => {
    const one = (i: number) => ({ now: 500, alarms: named('abcdefghijklmnopqrstuvwxyz'[i % 26]!) })
    const { outputs } = run(Array.from({ length: 90 }, (_, i) => one(i)))
    expect(outputs.flatMap(({ tell }) => tell)).toEqual(['a', 'b', 'c'])
  })
  it('remembers no more moments than it needs', () => {
    const { state, outputs } = run([{ now: 0, alarms: named('abcdefgh', 'high') }])
    expect(outputs[0]?.tell).toHaveLength(8)
    expect(state.recent).toEqual([0, 0, 0])
  })
})

describe('recovery after a power cut', () => {
  const input: RecoveryInput = {
    waterContent: waterContent(0.334),
    fullPoint: waterContent(0.6),
    substrateVolume: litres(3.75),
    drainFraction: percent(10),
    maxPerShot: millilitres(120),
    minPeriod: minutes(5),
    maxTotal: litres(3),
    clockChecked: true,
  }
  it('gives the volume of the reference scenario in its number of shots (reference scenario, recomputed)', () => {
    const plan = planRecovery(input)
    expect(plan.volume).toBeCloseTo(1.10833, 4)
    expect(plan.shots).toBe(10)
    expect(plan.duration / 60).toBe(45)
    expect(plan.allowed).toBe(true)
  })
  it('is not allowed before somebody has looked at the clock, nor beyond the day', () => {
    expect(planRecovery({ ...input, clockChecked: false })).toMatchObject({ allowed: false })
    expect(planRecovery({ ...input, maxTotal: litres(1) })).toMatchObject({ allowed: false })
    expect(planRecovery({ ...input, waterContent: waterContent(0.6) })).toMatchObject({
      volume: 0,
      shots: 0,
      duration: 0,
    })
  })
  it('is not made from the zero of a probe that died with the power', () => {
    for (const dead of [0, -0, 5e-324, 0.004])
      expectDomainError(() => planRecovery({ ...input, waterContent: dead as never }), { argument: 'waterContent' })
  })
  it('needs no shot of its own for what rounding left over', () => {
    // 0.7 - 0.4 and its like differ from 0.3 in the last bits: 3 L are wanted, or a hair more or less, in shots of 1 L.
    for (const [content, full] of [
      [0.4, 0.7],
      [0.1, 0.4],
      [0.2, 0.5],
      [0.5, 0.8],
      [0.3, 0.6],
    ] as const) {
      const plan = planRecovery({
        ...input,
        waterContent: waterContent(content),
        fullPoint: waterContent(full),
        substrateVolume: litres(10),
        drainFraction: percent(0),
        maxPerShot: litres(1),
      })
      expect(plan.shots).toBe(3)
    }
  })
  it('may take all that the day still allows', () => {
    const plan = planRecovery({
      ...input,
      waterContent: waterContent(0.25),
      fullPoint: waterContent(0.5),
      substrateVolume: litres(4),
      drainFraction: percent(0),
      maxTotal: litres(1),
    })
    expect(plan).toMatchObject({ volume: 1, allowed: true })
    expect(plan.findings.map(({ code }) => code)).not.toContain('more-than-allowed')
  })
  it('says what stands against it and what to watch', () => {
    const found = (more: Partial<RecoveryInput>) => planRecovery({ ...input, ...more }).findings
    const codes = (more: Partial<RecoveryInput>) => found(more).map(({ code, level }) => `${code} ${level}`)
    const always = ['watch-first-shots note', 'pump caution']
    expect(codes({})).toEqual(always)
    expect(codes({ clockChecked: false })).toEqual(['clock-not-checked danger', ...always])
    expect(codes({ maxTotal: litres(1) })).toEqual(['more-than-allowed caution', ...always])
    expect(codes({ waterContent: waterContent(0.6) })).toEqual(['already-full note'])
    expect(found({ maxTotal: litres(1) }).map(explainControlFinding)[0]?.message).toMatch(/\(1108 mL, limit 1000 mL\)$/)
  })
  it('tells shots that follow each other within seconds, that take a month, and a full point of 0: each had been allowed without a word', () => {
    const message = (more: Partial<RecoveryInput>, code: string) =>
      planRecovery({ ...input, ...more })
        .findings.filter((found) => found.code === code)
        .map((found) => explainControlFinding(found).message)[0]
    expect(message({ minPeriod: seconds(5) }, 'short-pauses')).toMatch(
      /in seconds, .*\(5(\.00)? s, limit 60(\.0)? s\)$/,
    )
    expect(message({ minPeriod: seconds(60) }, 'short-pauses')).toBeUndefined()
    expect(message({ maxPerShot: litres(0.00012) }, 'takes-days')).toMatch(/^the shots take longer than a day/)
    expect(message({ fullPoint: waterContent(0) }, 'already-full')).toMatch(/check the probe and the full point/)
  })
  it('refuses a largest shot so small that the shots would have no end', () => {
    expectInputError(() => planRecovery({ ...input, maxPerShot: 5e-324 as never }), 'maxPerShot')
  })
  it('conserves water and keeps to the largest shot', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (content, drain, most) => {
          const plan = planRecovery({
            ...input,
            waterContent: waterContent(content),
            drainFraction: percent(drain * 100),
            maxPerShot: litres(most),
          })
          expect(plan.shot).toBeLessThanOrEqual(most * (1 + 1e-9))
          expect(plan.shot * plan.shots).toBeCloseTo(plan.volume, 9)
          expect(plan.volume * (1 - drain)).toBeCloseTo(Math.max(0, 0.6 - content) * 3.75, 9)
        },
      ),
    )
  })
})
