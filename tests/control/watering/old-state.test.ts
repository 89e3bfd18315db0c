import { drawFaults, minutes, rehearsalScenario, rehearse, rehearsedWatering } from 'porewater'
import { expect, it } from 'vitest'

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
