import { describe, expect, it } from 'vitest'
import { lots } from './lots.js'
import { trueWater } from './true-water.js'

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
