import {
  alarmConditions,
  alarmLifeCycle,
  announceAlarms,
  checkWatering,
  controlWatering,
  type Diagnosis,
  deadBand,
  explainControlFinding,
  hours,
  isPorewaterError,
  litres,
  litresPerHour,
  minutes,
  watchZone,
  waterContent,
  zoneAlarms,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { throwing, withThrowing, withThrowingLater } from '../support/hostile.js'
import { expectInputError } from '../support/refusals.js'
import { safeWatering as safe } from '../support/safe-watering.js'
import { MIDNIGHT, settings } from './watering/zone.js'

const PARTS = ['request', 'limits', 'facts'] as const
const FIELDS = PARTS.flatMap((part) => Object.keys(safe[part]).map((name) => [part, name] as const))

describe('the last gate before the valve', () => {
  it.each(FIELDS)('refuses a shot whose %s has a %s that throws when it is read', (part, name) => {
    const check = checkWatering({ ...safe, [part]: withThrowing(safe[part], name) })
    expect(check).toEqual({ allowed: false, refusals: [{ code: 'input-unreadable', level: 'danger' }] })
  })
  it('refuses what throws as a whole', () => {
    for (const input of [throwing(), ...PARTS.map((part) => ({ ...safe, [part]: throwing() }))])
      expect(checkWatering(input).allowed).toBe(false)
    for (const part of PARTS) expect(checkWatering(withThrowing(safe, part)).allowed).toBe(false)
  })
  it('says in words that it could not read', () => {
    const [refusal] = checkWatering(throwing()).refusals
    expect(explainControlFinding(refusal!).message).toContain('cannot be read')
  })
  it('tells of a limit under a name that it does not know, and takes requests and facts that carry more', () => {
    const { maxPerShot, ...others } = safe.limits
    const slip = checkWatering({ ...safe, limits: { ...safe.limits, backUpAfer: 7200 } as never })
    expect(slip.refusals).toEqual([{ code: 'limit-unknown', level: 'danger', about: 'backUpAfer' }])
    const missing = checkWatering({ ...safe, limits: { ...others, maxPerShots: maxPerShot } as never }).refusals
    expect(missing.map(({ code, about }) => [code, about])).toEqual([
      ['limit-unknown', 'maxPerShots'],
      ['limit-missing', 'maxPerShot'],
    ])
    const carried = { zone: 'north', note: 'by hand' }
    const { request, facts } = safe
    expect(
      checkWatering({ ...safe, request: { ...request, ...carried }, facts: { ...facts, ...carried } }).allowed,
    ).toBe(true)
  })
})

describe('a controller', () => {
  const { start, step } = controlWatering(settings)
  const input = (minute: number) => ({
    now: MIDNIGHT + 9 * 3600 + 60 * minute,
    readings: [{ waterContent: 0.5, time: MIDNIGHT + 9 * 3600 + 60 * minute }],
    locked: false,
  })
  const open = Array.from({ length: 60 }, (_, i) => i).reduce(
    (made, minute) => (made.decision?.open ? made : stepped(made.state, minute)),
    { state: start, decision: undefined as ReturnType<typeof step>[1] | undefined, minute: 0 },
  )
  function stepped(before: typeof start, minute: number) {
    const [state, decision] = step(before, input(minute))
    return { state, decision, minute }
  }

  it('has opened the valve to begin with', () => expect(open.decision?.open).toBe(true))
  it.each(['now', 'readings', 'locked', 'override', 'acknowledge', 'metered', 'valve'])(
    'closes it on a message whose %s throws when it is read, and goes on with the next',
    (name) => {
      const [state, decision] = step(open.state, withThrowing(input(open.minute + 1), name))
      expect(decision).toMatchObject({ open: false, closeAfter: 0, reason: 'message-unreadable' })
      expect(step(state, input(open.minute + 2))[1].reason).not.toBe('message-unreadable')
    },
  )
  it('closes it on a reading that throws, and on a message that throws as a whole', () => {
    const readings = [withThrowing({ waterContent: waterContent(0.5), time: 0 }, 'time')]
    for (const message of [throwing(), { ...input(open.minute + 1), readings }])
      expect(step(open.state, message)[1].open).toBe(false)
  })
  it.each(Object.keys(start))('takes a state whose %s throws for lost, and closes', (name) => {
    const [state, decision] = step(withThrowing(open.state, name), input(open.minute + 1))
    expect(decision).toMatchObject({ open: false, reason: 'state-lost' })
    expect(() => JSON.stringify(state)).not.toThrow()
  })
  it('closes where neither state nor message can be read', () => {
    expect(step(throwing(), throwing())[1]).toMatchObject({ open: false, reason: 'state-lost' })
  })
  it('of the barest kind was not on where its state throws', () => {
    const band = deadBand({ lower: waterContent(0.5), upper: waterContent(0.6) })
    expect(band.step(throwing(), 0.55)).toEqual([{ on: false }, false])
  })
})

describe('a diagnosis', () => {
  const zone = watchZone({
    ...{ probes: ['A'], substrateVolume: litres(10), flow: litresPerHour(6), fullPoint: waterContent(0.74) },
    ...{ minBelievable: waterContent(0.1), maxBelievable: waterContent(0.9) },
  })
  const message = { now: 60, readings: [{ probe: 'A', waterContent: waterContent(0.6), time: 60 }], open: false }
  const [before, told] = zone.step(zone.start, message)
  it.each(Object.keys(message))(
    'kept its state and said so where the %s of a message threw when it was read',
    (name) => {
      const [state, diagnosis] = zone.step(before, withThrowing({ ...message, now: 120 }, name))
      expect(state).toBe(before)
      expect(diagnosis).toEqual({ ...told, unreadable: true })
      expect(zone.step(state, { ...message, now: 120 })[1].unreadable).toBeUndefined()
    },
  )
  it('goes on behind a message, a reading or a state that throws as a whole', () => {
    for (const input of [throwing(), { ...message, readings: [throwing()] }])
      expect(zone.step(before, input)[1].unreadable).toBe(true)
    expect(zone.step(throwing(), message)[1].unreadable).toBeUndefined()
  })
})

describe('alarms', () => {
  const life = alarmLifeCycle({ onDelay: minutes(0), offDelay: minutes(0), maxShelving: hours(8) })
  const full = { known: false, reason: 'no-trusted-probe' } as const
  const diagnosis: Diagnosis = { causes: [], ruledOut: [], cannotTell: [], full }
  const zone = zoneAlarms({})
  it.each(['now', 'condition', 'action', 'shelveFor'])('stay as they are on a message whose %s throws', (name) => {
    const [raised] = life.step(life.start, { now: 0, condition: true })
    const [state, report] = life.step(raised, withThrowing({ now: 60, condition: false }, name))
    expect(report).toEqual({ phase: 'unacknowledged', changed: false, announce: false, unreadable: true })
    expect(life.step(state, { now: 120, condition: false })[1]).toEqual({
      ...{ phase: 'returned-unacknowledged', changed: true, announce: false },
    })
  })
  it('are raised again where their state throws', () => {
    const input = { now: 0, condition: true }
    expect(life.step(throwing(), input)[1].announce).toBe(true)
    expect(zone.step(throwing(), { now: 0, diagnosis })).toEqual([{ alarms: {} }, []])
  })
  it.each(Object.keys(life.start))('read the %s of a state once: what throws at a second look is whole', (name) => {
    const [raised] = life.step(life.start, { now: 0, condition: true })
    const input = { now: 60, condition: false }
    expect(life.step(withThrowingLater(raised, name), input)).toEqual(life.step(raised, input))
  })
  it.each([
    ['nothing', null],
    ['a proxy that throws', throwing()],
    ['a diagnosis that throws', { now: 0, diagnosis: throwing() }],
    ['causes that throw', { now: 0, diagnosis: { ...diagnosis, causes: [throwing()] } }],
    ['a forecast that throws', { now: 0, diagnosis, untilRefill: throwing() }],
    ['an action that throws', { now: 0, diagnosis, action: throwing() }],
  ])('of a zone refuse %s by name', (_, input) => {
    expectInputError(() => zone.step(zone.start, input as never), /input|diagnosis|untilRefill/)
  })
  it('of a diagnosis are refused by name, too, where it throws', () => {
    for (const input of [throwing(), { diagnosis: throwing() }, { diagnosis, untilRefill: throwing() }])
      expectInputError(() => alarmConditions(input), /input|diagnosis|untilRefill/)
  })
  it('are not announced from a list that throws: the list is refused', () => {
    const reducer = announceAlarms({ maxAlarms: 3, window: minutes(10) })
    for (const alarms of [throwing(), [throwing()]])
      expectInputError(() => reducer.step(reducer.start, { now: 0, alarms }), /input|alarms/)
  })
})

describe('an error of somebody else', () => {
  it('that throws when it is asked for its code is none of ours', () => {
    expect(isPorewaterError(throwing())).toBe(false)
    expect(isPorewaterError(withThrowing(new Error('x'), 'code'))).toBe(false)
    const { proxy, revoke } = Proxy.revocable({}, {})
    revoke()
    expect(isPorewaterError(proxy)).toBe(false)
  })
})
