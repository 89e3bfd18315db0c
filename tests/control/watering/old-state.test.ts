import {
  drawFaults,
  minutes,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
  type WateringState,
  waterContent,
} from 'porewater'
import { expect, it } from 'vitest'
import { trueWater, wanted } from './true-water.js'
import { MIDNIGHT } from './zone.js'

it('a state of yesterday that is taken up twice a day, asked every quarter of an hour, starves nobody', () => {
  // What the meter counted since was taken for a leak of a whole day, and the day was used up: 55 to 112 hours of stress.
  for (const seed of [721, 723]) {
    const { zone, limits, ...levels } = rehearsalScenario('coir-dust')
    const controller = rehearsedWatering({ zone, limits, ...levels })
    const faults = drawFaults({ faults: ['restart-old'], seed, days: 7, probes: 2 })
    const outcome = rehearse({
      zone,
      limits,
      controller,
      days: 7,
      seed,
      faults,
      pollEvery: minutes(15),
      keepCourse: false,
    })
    expect(outcome.stressTime).toBe(0)
    expect(outcome.worstDay).toBeLessThanOrEqual(limits.maxPerDay)
    expect(outcome.outsideHours).toBe(0)
  }
})

it.each([
  [4, 1],
  [6, 2],
  [10, 4],
  [12, 5],
  [16, 6],
])('a state of %s hours ago waters no night because a probe scatters', (back, seed) => {
  // Its scatter was heard as plants that drink by the hours of the old state, and against a clock that was right: up to 180 openings in four days.
  let old: WateringState | undefined
  let lot = 12345 * seed
  const random = () => {
    lot = (lot * 1103515245 + 12345) % 2147483648
    return lot / 2147483648
  }
  const at = MIDNIGHT + 55 * 3600
  const { outside, openings } = trueWater({
    days: 6,
    poll: 60,
    more: (time) => ({ ...wanted(time), readings: [{ waterContent: waterContent(0.49 + 0.06 * random()), time }] }),
    stored: (state, time) => {
      if (time === at - back * 3600) old = state
      return time === at ? old : state
    },
  })
  expect(openings).toBeGreaterThan(20)
  expect(outside).toBe(0)
})
