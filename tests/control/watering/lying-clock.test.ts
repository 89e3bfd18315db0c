import { describe, expect, it } from 'vitest'
import { season } from './containers.js'
import { lots } from './lots.js'
import { trueWater, wanted } from './true-water.js'
import { MIDNIGHT, settings } from './zone.js'

const LIES: readonly unknown[] = [-999, 65535, 0, -0.2, Number.NaN, null, Infinity]

describe('a clock that gives any number from the first decision on, as after a lost state', () => {
  // Without a guard one of seven taught a pace of seconds, and an opening of 3 min was ordered anew for hours: 6.2 of 4 L.
  it('teaches no pace, and nothing is opened by it', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const random = lots(seed * 7919)
      const clock = () => LIES[Math.floor(random() * LIES.length)]
      expect(trueWater({ poll: 300, days: 7, clock }).given).toBe(0)
    }
  })
})

describe('a clock that fails while the stored state is damaged twice a day', () => {
  const POLL = 120
  const even = [1, 1, 1]
  const failing = (clock: (now: number) => unknown) =>
    season({
      days: 7,
      drips: even,
      drinks: even,
      probed: [0, 1],
      poll: POLL,
      clock: (now, day) => (day < 2.4 ? now : clock(now)),
      kept: (state, time) => (time > 3 * 86400 && time % 43200 === 7200 ? { ...state, zone: null } : state),
    })
  // A fresh state took the moment of the clock that stood for the true one, and watered by night; one in milliseconds was never watered again.
  it.each<[string, (now: number) => unknown]>([
    ['stands still', () => MIDNIGHT + 2.4 * 86400],
    ['counts milliseconds', (now) => 1000 * now],
    ['gives nothing', () => null],
  ])('waters by the count of before, and by day, where it %s', (_, clock) => {
    const { driest, told } = failing(clock)
    const hours = told.flatMap(({ open }, i) => (open ? [((i * POLL) % 86400) / 3600] : []))
    expect(Math.min(...hours)).toBeGreaterThanOrEqual(7)
    expect(Math.max(...hours)).toBeLessThan(18)
    expect(Math.min(...driest)).toBeGreaterThan(0.45)
  })
})

describe('a clock that fails at one decision and is right at the next', () => {
  const since = 1.2 * 86400
  const even = [1, 1, 1]
  // Each leap took the room for water, and its rest began again: the zone got half of its water. One that could not be read at each third never settled.
  it.each<[string, (now: number, at: number) => unknown]>([
    ['each tenth time by ten minutes', (now, at) => now + (at % 10 === 0 ? 600 : 0)],
    ['each tenth time by a day, back', (now, at) => now - (at % 10 === 0 ? 86400 : 0)],
    ['each tenth time by three hours', (now, at) => now + (at % 10 === 0 ? 10800 : 0)],
    ['each third time beyond all that can be read', (now, at) => (at % 3 === 0 ? 1000 * now : now)],
  ])('leaps %s: the zone gets its water, inside every limit', (_, leaps) => {
    const clock = (now: number, day: number) => (day < since / 86400 ? now : leaps(now, Math.round(now / 60)))
    const { driest, byDay } = season({ days: 6, drips: even, drinks: even, probed: [0, 1], poll: 60, clock })
    expect(Math.min(...driest)).toBeGreaterThan(0.46)
    for (const { given } of byDay) expect(given).toBeLessThanOrEqual(settings.maxPerDay * 1.05)
    const { worst, outside, longest } = trueWater({
      days: 4,
      poll: 60,
      clock: (time, at) => (time < MIDNIGHT + since ? time : leaps(time, at)),
      more: wanted,
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(outside).toBe(0)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
  })
})
