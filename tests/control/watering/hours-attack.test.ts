import { controlWatering, hours, litres, type WateringInput, type WateringSettings } from 'porewater'
import { describe, expect, it } from 'vitest'
import { clock, decide, givenUpTo, MIDNIGHT, moment, openings, settings } from './zone.js'

/** Dry readings that move, so that nothing but hours and limits holds the valve back. */
const dry = (now: number, i: number, more: Partial<WateringInput> = {}) => moment(now, 0.45 + 0.002 * (i % 2), more)
const ordered = (now: number, i: number) => dry(now, i, { override: { action: 'water', until: now + 600 } })
const hourOf = (now: number, ahead = 0) => ((((now - MIDNIGHT + ahead) / 3600) % 24) + 24) % 24

function shots(from: number, until: number, changed: Partial<WateringSettings> = {}, step = 60) {
  return openings(decide(from, until, step, ordered, changed).told)
}

describe('allowed hours', () => {
  it.each([
    [20, 4],
    [23.5, 0.5],
    [0, 6],
    [18, 24],
  ])('from %s to %s o’clock hold over midnight, with the whole of each opening', (from, to) => {
    const given = shots(clock(0), clock(72), { allowedHours: [{ from: hours(from), to: hours(to) }] })
    expect(given.length).toBeGreaterThan(2)
    for (const now of given) {
      const since = (hourOf(now) - from + 24) % 24
      expect(since + 0.05).toBeLessThanOrEqual(((to - from + 24) % 24 || 24) + 1e-9)
    }
  })
  it('in several pieces leave the gaps dry', () => {
    const allowedHours = [8, 11, 14].map((from) => ({ from: hours(from), to: hours(from + 0.5) }))
    const given = shots(clock(0), clock(72), { allowedHours })
    expect(given.length).toBeGreaterThan(3)
    for (const now of given)
      expect([8, 11, 14].some((from) => hourOf(now) >= from && hourOf(now) <= from + 0.45)).toBe(true)
  })
  it.each([
    ['none', []],
    ['no length', [{ from: hours(7), to: hours(7) }]],
    ['less than a shot', [{ from: hours(7), to: hours(7.04) }]],
    ['milliseconds', [{ from: 25_200_000, to: 64_800_000 }]],
    ['below zero', [{ from: -3600, to: 3600 }]],
    ['no numbers', [{ from: '07:00', to: '18:00' }]],
    ['no list', 'all day'],
    ['nothing', undefined],
    ['twenty-five pieces', Array.from({ length: 25 }, (_, i) => ({ from: hours(i * 0.9), to: hours(i * 0.9 + 0.5) }))],
  ])('of %s are refused', (_, allowedHours) => {
    expect(() => controlWatering({ ...settings, allowedHours: allowedHours as never })).toThrow(
      expect.objectContaining({ code: expect.stringMatching(/domain|input/i) }),
    )
  })
  it('follow summer time as soon as the settings do, and the water of the day stays counted', () => {
    const before = decide(clock(0), clock(24 + 12), 60, ordered)
    // The clocks go forward: local clocks are an hour further ahead of universal time.
    const after = decide(clock(24 + 12), clock(48), 60, ordered, { ahead: 3600 }, before.state)
    for (const now of openings(after.told)) expect(hourOf(now, 3600)).toBeLessThan(18)
    const all = [...before.told, ...after.told]
    for (const now of openings(all)) expect(givenUpTo(all, now)).toBeLessThanOrEqual(settings.maxPerDay + 1e-9)
  })
  it.each([1, 2, 6])('are not begun anew by a clock that is set back by %s h in the evening', (back) => {
    const until = clock(24 + 17.5)
    const { state } = decide(clock(0), until, 60, dry)
    const { told } = decide(until, until + hours(3.5), 60, (now, i) => ordered(now - back * 3600, i), {}, state)
    for (const now of openings(told)) expect(hourOf(now)).toBeLessThan(18)
  })
  it('let nothing begin that a state stored just before their end would carry beyond it', () => {
    const { state } = decide(clock(0), clock(17.95), 60, (now, i) => moment(now, 0.58 + 0.001 * (i % 2)))
    const stored = JSON.parse(JSON.stringify(state))
    const { told } = decide(clock(17.95) + 30, clock(19), 30, ordered, {}, stored)
    expect(openings(told)).toEqual([])
  })
  it('do not lead a refill into the night either', () => {
    for (const [from, to] of [
      [22, 3],
      [6, 8],
    ] as const) {
      const allowedHours = [{ from: hours(from), to: hours(to) }]
      const told = decide(
        clock(0),
        clock(96),
        60,
        (now, i) => moment(now, 0.55 + 0.002 * (i % 2), { drained: litres(1) }),
        {
          allowedHours,
        },
      ).told
      expect(told.some(({ decision }) => decision.reason === 'refill')).toBe(true)
      for (const now of openings(told)) expect((hourOf(now) - from + 24) % 24).toBeLessThan((to - from + 24) % 24)
    }
  })
})

describe('the pace of a day', () => {
  it('lets no 24 hours have more than the limit, however often the state is lost and whatever the hours are', () => {
    for (const allowedHours of [[{ from: hours(0), to: hours(24) }], [{ from: hours(21), to: hours(2) }]])
      for (const every of [37, 200, 700]) {
        const reducer = controlWatering({ ...settings, allowedHours })
        let state = reducer.start
        const given: { readonly at: number; readonly litres: number }[] = []
        let last = 0
        for (let i = 0, now = clock(0); now < clock(60); i++, now += 60) {
          if (i % every === every - 1) state = reducer.start
          const [next, decision] = reducer.step(state, ordered(now, i))
          if (decision.open && (decision.opening !== last || !state.valve.opened))
            given.push({ at: now, litres: (decision.closeAfter / 3600) * settings.flow })
          last = decision.opening
          state = next
        }
        for (const { at: now } of given) {
          const ofDay = given.filter(({ at }) => at <= now && at > now - 86400)
          expect(ofDay.reduce((sum, { litres: volume }) => sum + volume, 0)).toBeLessThanOrEqual(
            1.05 * settings.maxPerDay,
          )
        }
      }
  })
})

describe('a line that is dry', () => {
  const flow = 4 / 3600
  /** Runs a valve and a meter that sees water only from a moment on; gives openings with their length. */
  function tries(wet: number, until: number) {
    const reducer = controlWatering(settings)
    let state = reducer.start
    let metered = 0
    let [open, opened, last] = [false, 0, 0]
    const runs: { readonly at: number; readonly lasts: number }[] = []
    for (let i = 0, now = clock(0); now < until; i++, now += 30) {
      if (open && now - 30 >= wet) metered += 30 * flow
      const [next, decision] = reducer.step(state, dry(now, i, { metered: litres(metered) }))
      if (decision.open && decision.opening !== last) opened = now
      if (open && !decision.open) runs.push({ at: opened, lasts: now - opened })
      last = decision.opening
      open = decision.open
      state = next
    }
    return runs
  }
  it('is tried by openings that are shorter than a shot, seldom enough for the limit, and told', () => {
    const runs = tries(Infinity, clock(48))
    const late = runs.filter(({ at }) => at > clock(24 + 8))
    expect(late.length).toBeGreaterThan(2)
    for (const { lasts } of late) expect(lasts).toBeLessThan(100)
    for (const { at } of late) {
      const ran = runs.filter((one) => one.at <= at && one.at > at - 86400).reduce((sum, one) => sum + one.lasts, 0)
      expect(ran * flow).toBeLessThanOrEqual(settings.maxPerDay)
    }
  })
  it('gives whole shots again within an hour and a half of the water’s return', () => {
    const runs = tries(clock(24 + 10), clock(24 + 14))
    const whole = runs.find(({ at, lasts }) => at > clock(24 + 10) && lasts >= 175)
    expect(whole?.at).toBeLessThan(clock(24 + 11.5))
  })
})

describe('an upper limit the medium never reaches', () => {
  /** A container that holds 0.6 m³/m³ at most; what is more drains. */
  function weekWith(upper: number, gauge: boolean) {
    const reducer = controlWatering({ ...settings, upper: upper as never })
    let state = reducer.start
    let [level, drained, last] = [0.55, 0, 0]
    const at: number[] = []
    for (let i = 0, now = clock(0); now < clock(96); i++, now += 60) {
      const isDay = hourOf(now) >= 7 && hourOf(now) < 18
      level -= isDay ? 2 / 11 / 60 / 10 : 0
      const shown = level + 0.001 * (i % 2)
      const sent = moment(now, shown, gauge ? { drained: litres(drained) } : {})
      const [next, decision] = reducer.step(state, sent)
      if (decision.open && decision.opening !== last) {
        at.push(now)
        const over = Math.max(0, level + 0.02 - 0.6)
        level += 0.02 - over
        drained += over * 10
      }
      last = decision.opening
      state = next
    }
    return { at }
  }
  it('ends after some shots that raise nothing, until the zone is at its lower limit again', () => {
    for (const upper of [0.65, 0.7, 0.79])
      for (const gauge of [false, true]) {
        const { at } = weekWith(upper, gauge)
        const aDay = (at.filter((now) => now >= clock(24)).length * 0.2) / 3
        expect(aDay).toBeGreaterThan(0.8 * settings.usualPerDay)
        // Without an end it would be the limit of the day, twice the use; four shots in vain and a refill are left.
        expect(aDay).toBeLessThanOrEqual(1.6 * settings.usualPerDay)
      }
  })
})
