/** Settings and kept states of which a part throws when it is read: refused by name, and never asked again. */
import {
  alarmLifeCycle,
  announceAlarms,
  checkWateringSettings,
  controlWatering,
  deadBand,
  diagnoseRecord,
  fraction,
  hours,
  minutes,
  planRecovery,
  runReducer,
  type WateringSettings,
  watchZone,
  waterContent,
  waterContentChange,
  zoneAlarms,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { throwing, withThrowing, withThrowingLater } from '../support/hostile.js'
import { expectInputError } from '../support/refusals.js'
import { SETTINGS, scripted } from './scripted-zone.js'
import { MIDNIGHT, moment, settings } from './watering/zone.js'

const whole: WateringSettings = {
  ...settings,
  ...{ zone: 'north', probes: [{ name: 'A', offset: waterContentChange(0) }], drainFraction: fraction(0.2) },
  ...{ decideEvery: minutes(1), maxDisagreement: waterContentChange(0.08), ahead: 3600 },
}

/** What was an object before it was revoked: a closed handle. */
function revoked(target: object): never {
  const { proxy, revoke } = Proxy.revocable(target, {})
  revoke()
  return proxy as never
}

describe('settings that throw when they are read', () => {
  it.each(Object.keys(whole))('are refused where it is their %s, before anything is watered', (name) => {
    for (const of of [controlWatering, checkWateringSettings])
      expectInputError(() => of(withThrowing(whole, name)), 'settings')
  })
  it('are refused as a whole, and where a list, a probe or hours of theirs were revoked', () => {
    const { probes, allowedHours } = whole
    const torn = [
      ...[throwing(), revoked({}), { ...whole, probes: revoked([]) }, { ...whole, allowedHours: revoked([]) }],
      ...[
        { ...whole, probes: [revoked(probes![0]!)] },
        { ...whole, allowedHours: [revoked(allowedHours[0]!)] },
      ],
    ]
    for (const one of torn) expectInputError(() => controlWatering(one), /settings|probes|allowedHours/)
  })
  it.each(Object.keys(whole))('later change nothing: a decision does not ask for %s again', (name) => {
    const reducer = controlWatering(withThrowingLater(whole, name))
    expect(reducer.step(reducer.start, moment(MIDNIGHT + 36000, 0.5))[1].open).toBe(false)
  })
  it('of a diagnosis, of alarms, of a dead-band and of a recovery are refused as well', () => {
    for (const name of Object.keys(SETTINGS))
      expectInputError(() => watchZone(withThrowing(SETTINGS, name)), 'settings')
    for (const of of [deadBand, alarmLifeCycle, announceAlarms, zoneAlarms, planRecovery, watchZone, diagnoseRecord])
      for (const torn of [throwing(), revoked({})]) expectInputError(() => of(torn), /settings|limits|input/)
  })
})

it('a list of probes that its owner adds a name to is still that of the zone', () => {
  const names = ['A', 'B']
  const zone = watchZone({ ...SETTINGS, probes: names })
  names.push('D')
  const readings = [{ probe: 'D', waterContent: waterContent(0.6), time: 0 }]
  expect(zone.step(zone.start, { now: 0, open: false, readings })[1].unreadable).toBeUndefined()
})

describe('a kept state of a diagnosis', () => {
  const zone = watchZone(SETTINGS)
  const shots = [100, 200, 300, 400]
  const { state } = runReducer({ reducer: zone, inputs: scripted({ minutes: 500, probes: SETTINGS.probes, shots }) })
  const { step } = zone

  it.each(Object.keys(state))('whose %s throws or was revoked is refused, and that part begins anew', (name) => {
    const torn = [withThrowing(state, name), { ...state, [name]: revoked({}) }, { ...state, [name]: revoked([]) }]
    for (const one of torn) {
      expectInputError(() => zone.restore(one), 'state')
      const [next, told] = step(one as never, { now: 60 * 501, open: false, readings: [] })
      expect(told.unreadable).toBeUndefined()
      expect(zone.restore(JSON.parse(JSON.stringify(next)))).toEqual(next)
    }
  })
  it('is named by the field in a deeper part', () => {
    const [probe, ...others] = state.probes
    const torn = { ...state, probes: [withThrowing(probe!, 'count'), ...others] }
    expectInputError(() => zone.restore(torn), /^state\.probes\[0\]\.count$/)
  })
  it('is read once: what a getter gives the second time is not believed', () => {
    const clock = withThrowingLater(state.clock, 'last')
    expect(zone.restore({ ...state, clock })).toEqual(state)
  })
})

it('a time that an alarm waits for is read once', () => {
  const life = alarmLifeCycle(
    withThrowingLater({ onDelay: minutes(1), offDelay: minutes(1), maxShelving: hours(1) }, 'onDelay'),
  )
  expect(life.step(life.start, { now: 0, condition: true })[1].phase).toBe('normal')
})
