/** Attacks by somebody who did not write the controller: what truly ran, by a true clock, stays inside every limit. */
import { controlWatering, litres, type WateringInput, type WateringState } from 'porewater'
import { describe, expect, it } from 'vitest'
import { askForWater, type TrueRun, trueWater } from './attacked-water.js'
import { clock, moment, settings, settled } from './zone.js'

/** A day and a half goes well, and then it begins. */
const late = (time: number) => time > clock(36)
const NOON = clock(36)

function expectInside(run: TrueRun, isHourKnown = true) {
  const { worst, longest, outside, openings } = trueWater(run)
  expect(worst).toBeLessThanOrEqual(1.05)
  expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
  if (isHourKnown) expect(outside).toBe(0)
  return openings
}

describe.each([60, 900])('a clock that goes wrong at noon, asked every %i s', (poll) => {
  const base = { poll, days: 4, more: askForWater }
  it.each<[string, (time: number, i: number) => unknown]>([
    ['goes back by an hour', (time) => time - 3500],
    ['goes back by six hours', (time) => time - 21600],
    ['runs backwards', (time) => 2 * NOON - time],
    ['stands still', () => NOON],
    ['flaps by two decisions', (time, i) => time + 2 * poll * (i % 2)],
    ['leaps by six decisions every third time', (time, i) => time + (i % 3 === 0 ? 6 * poll : 0)],
    ['counts milliseconds', (time) => time * 1000],
    ['says nothing', () => null],
  ])('and %s gives no second day', (_, wrong) => {
    // Where every decision came late there is no true hour to tell: a quarter of an hour is left.
    expectInside({ ...base, now: (time, i) => (late(time) ? wrong(time, i) : time) }, poll === 60)
  })
  it('and goes back by ten minutes gives no second day', () => {
    // So small a step may have put the clock right: its hours are followed.
    expectInside({ ...base, now: (time) => (late(time) ? time - 600 : time) }, false)
  })
  it.each([600, 1800, 3500, 5400, 21600, 43200])('and leaps ahead by %i s gives no second day', (ahead) => {
    // The hours of a clock that leaps once and then runs on are nobody's to know.
    expectInside({ ...base, now: (time) => (late(time) ? time + ahead : time) }, false)
  })
  it('and is acknowledged at each decision gives no second day', () => {
    const more = (time: number) => ({ ...askForWater(time), acknowledge: ['clock-doubtful', 'no-flow'] })
    expectInside({ ...base, more, now: (time) => (late(time) ? time + 43200 : time) }, false)
  })
})

describe('a drain gauge that lies', () => {
  const lies: readonly [string, (time: number, i: number, given: number) => unknown][] = [
    ['in millilitres', (_, __, given) => 200 * given],
    ['in cubic metres', (_, __, given) => given / 5000],
    ['of another zone', (time) => Math.floor(time / 1800) * 0.1],
    ['of all that is given', (_, __, given) => given],
    ['that is stuck', () => 5],
    ['that begins anew again and again', (_, i) => (i % 17) * 0.05],
    ['in text', () => '1'],
  ]
  it.each(lies)('%s floods nothing, whether the zone is dry or in its band', (_, drained) => {
    const more = (time: number, i: number, given: number) => ({ drained: drained(time, i, given) })
    const run = { poll: 300, days: 4 }
    expectInside({ ...run, more: (time, i, given) => ({ ...askForWater(time), ...more(time, i, given) }) })
    const level = (time: number, i: number) => 0.52 + 0.05 * Math.sin(time / 9000) + 0.001 * (i % 2)
    expect(expectInside({ ...run, more, level })).toBeGreaterThan(0)
  })
})

describe('meters, people and valves that lie', () => {
  it.each<[string, (time: number, i: number, given: number) => object]>([
    ['a meter that dies', (time, _, given) => ({ metered: litres(late(time) ? 4 : given), drained: litres(0) })],
    ['a meter in millilitres', (_, __, given) => ({ metered: 1000 * given })],
    ['a meter that runs backwards', (_, __, given) => ({ metered: Math.max(0, 100 - given) })],
    ['a valve whose word alternates', (_, i) => ({ valve: i % 2 === 0 ? 'closed' : 'open' })],
    [
      'everything acknowledged at once',
      () => ({ acknowledge: ['flow-while-closed', 'no-flow', 'shots-without-rise'] }),
    ],
    ['a can every hour', (time) => (time % 3600 === 0 ? { byHand: litres(0.3) } : {})],
  ])('%s opens nothing beyond a limit', (_, wrong) => {
    expectInside({ poll: 120, days: 3, more: (time, i, given) => ({ ...askForWater(time), ...wrong(time, i, given) }) })
  })
})

/** The state with one field, at any depth, gone or of another type. */
function torn(state: WateringState): [string, unknown][] {
  const all: [string, unknown][] = []
  const visit = (node: Record<string, unknown>, path: readonly string[]) => {
    for (const [key, value] of Object.entries(node)) {
      for (const [how, other] of [
        ['gone', undefined],
        ['text', `${String(value)}`],
        ['no number', Number.NaN],
        ['an object', {}],
        ['endless', Infinity],
      ] as const) {
        if (how === 'text' && typeof value === 'string') continue
        const copy = structuredClone(state) as unknown as Record<string, unknown>
        const holder = path.reduce((at, step) => at[step] as Record<string, unknown>, copy)
        if (how === 'gone') delete holder[key]
        else holder[key] = other
        all.push([`${[...path, key].join('.')} ${how}`, copy])
      }
      if (typeof value === 'object' && value !== null) visit(value as Record<string, unknown>, [...path, key])
    }
  }
  visit(state as unknown as Record<string, unknown>, [])
  return all
}

describe('a state that was torn while the valve was open', () => {
  const reducer = controlWatering(settings)
  const { state: before, now } = settled(0.505)
  let state = before
  let at = now
  for (let i = 0; state.valve.opened === null && i < 600; i++, at += 60)
    state = reducer.step(state, moment(at, 0.45 + 0.001 * (i % 2)))[0]
  it('closes at once, whichever field is gone, text, or no number', () => {
    expect(state.valve.opened).not.toBeNull()
    const states = torn(state)
    expect(states.length).toBeGreaterThan(1000)
    const open = states.flatMap(([what, damaged]) => {
      const { open, reason, closeAfter, givenInDay } = reducer.step(damaged as WateringState, moment(at, 0.45))[1]
      const isClosed = !open && reason === 'state-lost' && closeAfter === 0 && Number.isFinite(givenInDay)
      return isClosed ? [] : [what]
    })
    expect(open).toEqual([])
  })
  it('is changed by no decision: what was stored stays as it was', () => {
    const kept = JSON.stringify(state)
    const freeze = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return
      Object.freeze(value)
      Object.values(value).forEach(freeze)
    }
    const frozen = JSON.parse(kept)
    freeze(frozen)
    const input: WateringInput = moment(at, 0.45, { acknowledge: ['no-flow'], byHand: litres(0.1) })
    freeze(input)
    expect(() => reducer.step(frozen, input)).not.toThrow()
    expect(JSON.stringify(frozen)).toBe(kept)
  })
})
