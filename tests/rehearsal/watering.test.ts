import {
  type FaultName,
  perfectPlanner,
  rehearsalFaults,
  rehearsalScenario,
  rehearsedWatering,
  rehearseMany,
  seconds,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/** The short form of `npm run rehearse`: each fault once, in one of four media by turns, and some pairs. */
const scenarios = (['stone-wool', 'coir-dust', 'sphagnum-peat-moss', 'pine-bark'] as const).map(rehearsalScenario)
const names = rehearsalFaults().map(({ fault }) => fault)

function inside(faults: readonly FaultName[], turn: number, pollEvery = 60) {
  const scenario = scenarios[turn % 4]!
  const [row] = rehearseMany({
    controllerFor: rehearsedWatering,
    scenarios: [scenario],
    faults: [faults],
    seeds: 1,
    firstSeed: 1000 + turn,
    days: 3,
    pollEvery: seconds(pollEvery),
  })
  expect(row?.worstDayShare).toBeLessThanOrEqual(1.05)
  expect(row?.maxOpeningShare).toBeLessThanOrEqual(1)
  expect(row?.outsideByBothClocks).toBe(0)
  expect(row?.refusals).toBe(0)
  return row
}

describe('controlWatering in rehearsal stays inside every limit, nobody repairing anything', () => {
  it.each(names.map((name, i) => [name, i] as const))('%s', (name, i) => {
    inside([name], i)
  })
  it.each(
    names.filter((_, i) => i % 6 === 0).map((name, i) => [name, names[(i * 11 + 29) % names.length]!, i] as const),
  )('%s with %s', (one, other, i) => {
    inside([one, other], i)
  })
  it.each(names.filter((_, i) => i % 9 === 0).map((name, i) => [name, i] as const))(
    '%s, polled every quarter of an hour',
    (name, i) => {
      inside([name], i, 900)
    },
  )
})

describe('a healthy week', () => {
  it('has no stress, hardly any time over-wet, and about the water of a perfect planner', () => {
    for (const scenario of scenarios) {
      const many = { scenarios: [scenario], faults: [[]], seeds: 1, days: 7 }
      const [ours] = rehearseMany({ ...many, controllerFor: rehearsedWatering })
      const [planner] = rehearseMany({ ...many, controllerFor: perfectPlanner })
      expect(ours?.stressTime).toBe(0)
      expect(ours?.fullTime).toBeLessThanOrEqual(0.3 * 3600)
      expect(Math.abs((ours?.given ?? 0) / (planner?.given ?? 1) - 1)).toBeLessThan(0.1)
      expect(ours?.falseAlarms).toBe(0)
    }
  })
})
