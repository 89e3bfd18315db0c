import {
  bestProbeHeight,
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  litres,
  minutes,
  perCentimetre,
  probeReading,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const medium = vanGenuchten1980({
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.1),
  n: 1.7,
})
const flow = containerFlowRichards1931({
  container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(15) }),
  medium,
  saturatedConductivity: centimetresPerHour(60),
  nodes: 61,
})
const rest = flow.startAt((height) => centimetresOfSuction(height))
const profile = flow.profile(rest)
const pause = (time: number) => ({ duration: minutes(time), applied: litres(0), demand: litres(0) })
const shot = { duration: minutes(4), applied: litres(0.2), demand: litres(0) }
const steps = [1, 2, 3, 4].flatMap(() => [shot, ...Array.from({ length: 12 }, () => pause(5))])
const start = flow.startAt((height) => centimetresOfSuction(height + 15))

describe('what a probe sees of a container', () => {
  it('is the water content where it sits, when it senses next to nothing', () => {
    for (const height of [1, 7, 14])
      expect(probeReading(profile, { height: centimetres(height), sensedHeight: centimetres(0.01) })).toBeCloseTo(
        medium.waterContent(centimetresOfSuction(height)),
        4,
      )
  })
  it('is the mean of the container, when it senses all of it', () => {
    expect(probeReading(profile, { height: centimetres(7.5), sensedHeight: centimetres(15) })).toBeCloseTo(
      flow.waterContent(rest),
      3,
    )
  })
  it('is too wet low down and too dry high up, and follows best in between', () => {
    const heights = [2, 7, 13].map(centimetres)
    const { views, best } = bestProbeHeight({ flow, start, steps, heights, sensedHeight: centimetres(3) })
    expect(views[0]?.bias).toBeGreaterThan(0)
    expect(views[2]?.bias).toBeLessThan(views[0]?.bias as number)
    expect(best).toBe(views.reduce((a, b) => (b.spread < a.spread ? b : a)).height)
    // The water of a shot comes to the top first.
    expect(views[2]?.lag).toBeLessThan(views[0]?.lag as number)
    expect(views[2]?.biasAfterShots).toBeGreaterThan(views[2]?.biasBeforeShots as number)
  })
  it('refuses a probe in the air and a question without heights', () => {
    expectInputError(() => probeReading(profile, { height: centimetres(30), sensedHeight: centimetres(3) }), 'height')
    expectDomainError(() => probeReading(profile, { height: centimetres(3), sensedHeight: centimetres(0) }), {
      quantity: 'sensed height',
    })
    expectInputError(
      () => bestProbeHeight({ flow, start, steps, heights: [], sensedHeight: centimetres(3) }),
      'heights',
    )
  })
})
