import { describe, expect, it } from 'vitest'
import { season } from './containers.js'
import { lots } from './lots.js'
import { trueWater } from './true-water.js'
import { MIDNIGHT } from './zone.js'

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
