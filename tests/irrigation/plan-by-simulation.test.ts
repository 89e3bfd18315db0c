import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type DayPlanRequest,
  demandCourse,
  fraction,
  instant,
  litres,
  minutes,
  perCentimetre,
  planDay,
  replanDay,
  vanGenuchten1980,
  waterAndAirAtRest,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { bagDay, midnight } from '../../docs/tools/bag-day.js'
import { limits } from '../support/uptake-limits.js'

// An invented bag of 14 L, described by its medium instead of by a store with a lag.
const container = boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7) })
const medium = vanGenuchten1980({
  residual: waterContent(0.12),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.12),
  n: 1.7,
})
const flow = containerFlowRichards1931({
  container,
  medium,
  saturatedConductivity: centimetresPerHour(60),
  roots: {
    limits: { ...limits, h3HighDemand: centimetresOfSuction(100), h3LowDemand: centimetresOfSuction(300) },
  },
  nodes: 15,
  tolerance: 1e-3,
})
const capacity = waterAndAirAtRest({ container, medium, porosity: fraction(0.93) }).waterContent
const step = minutes(15)
const light = Array.from({ length: 96 }, (_, i) => Math.max(0, Math.sin((Math.PI * ((i + 0.5) / 4 - 6)) / 14)))
const request: DayPlanRequest = {
  ...bagDay,
  step,
  demand: demandCourse({ total: litres(3.5), light, evenShare: fraction(0.15) }),
  container: { ...bagDay.container, containerCapacity: capacity, bypass: fraction(0), drainLag: minutes(15) },
  waterContent: waterContent(capacity - 0.02),
  refillPoint: waterContent(capacity - 0.03),
  fullPoint: capacity,
  firstShot: instant(midnight + 7.5 * 3600),
  minRest: minutes(30),
}

describe('a plan for a day over a simulation of the container', () => {
  const plan = planDay(request, flow)
  it('meets the wish for drain within its limits, as over the storage model', () => {
    expect(plan.shots.length).toBeGreaterThan(4)
    expect(plan.applied).toBeLessThanOrEqual(9)
    expect(plan.drainFraction).toBeCloseTo(0.25, 1)
    for (const shot of plan.shots) {
      expect(shot.time).toBeGreaterThanOrEqual(request.firstShot)
      expect(shot.time).toBeLessThanOrEqual(request.lastShot)
      expect(shot.runTime).toBeLessThanOrEqual(15 * 60 + 1e-9)
    }
  })
  it('accounts for all water, and for what the plants could not get', () => {
    const stored = ((plan.waterContent.at(-1) as number) - request.waterContent) * 14
    // What still drains after the day is in `drained` and no longer in the container.
    expect(plan.applied - plan.drained - plan.taken).toBeLessThanOrEqual(stored + 1e-6)
    expect(plan.applied - plan.drained - plan.taken).toBeGreaterThan(stored - 0.2)
    expect(plan.taken).toBeLessThanOrEqual(3.5 + 1e-9)
    expect(plan.taken).toBeGreaterThan(3.2)
  })
  it('stays as it is when the day goes as planned', () => {
    const noon = instant(midnight + 12 * 3600)
    const given = plan.shots.filter(({ time }) => time < noon)
    const again = replanDay(request, plan, { now: noon, given }, flow)
    expect(again.shots).toHaveLength(plan.shots.length)
  })
})
