import {
  boxContainer,
  type CropET,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type DayPlanRequest,
  demandCourse,
  fraction,
  instant,
  litres,
  litresPerHour,
  millimetresPerDay,
  minutes,
  perCentimetre,
  percent,
  planDay,
  replanDay,
  seconds,
  vanGenuchten1980,
  waterAndAirAtRest,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

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
    limits: {
      h1: centimetresOfSuction(0),
      h2: centimetresOfSuction(1),
      h3HighDemand: centimetresOfSuction(100),
      h3LowDemand: centimetresOfSuction(300),
      h4: centimetresOfSuction(8000),
      highDemand: millimetresPerDay<CropET>(5),
      lowDemand: millimetresPerDay<CropET>(1),
    },
  },
  nodes: 15,
  tolerance: 1e-3,
})
const capacity = waterAndAirAtRest({ container, medium, porosity: fraction(0.93) }).waterContent
const midnight = 1779148800
const step = minutes(15)
const light = Array.from({ length: 96 }, (_, i) => Math.max(0, Math.sin((Math.PI * ((i + 0.5) / 4 - 6)) / 14)))
const request: DayPlanRequest = {
  start: instant(midnight),
  step,
  demand: demandCourse({ total: litres(3.5), light, evenShare: fraction(0.15) }),
  container: {
    substrateVolume: litres(14),
    containerCapacity: capacity,
    minWaterContent: waterContent(0.15),
    bypass: fraction(0),
    drainLag: minutes(15),
  },
  waterContent: waterContent(capacity - 0.02),
  refillPoint: waterContent(capacity - 0.03),
  fullPoint: capacity,
  drainFraction: percent(25),
  firstShot: instant(midnight + 7.5 * 3600),
  lastShot: instant(midnight + 18 * 3600),
  emitters: 2,
  emitterFlow: litresPerHour(2),
  lineFill: seconds(8),
  minRunTime: minutes(2),
  maxRunTime: minutes(15),
  minRest: minutes(30),
  maxPerDay: litres(9),
  trigger: { by: 'level' },
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
