import fc from 'fast-check'
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
  it('weighs lying rods by the chords of the round section that they sense', () => {
    // By brute force: even points in a disc of 2 cm radius around the rods, each reading the profile between its heights.
    const centre = 6.3
    const contentAt = (z: number) => {
      const above = profile.findIndex(({ height }) => height >= z)
      const [a, b] = [profile[above - 1], profile[above]]
      if (a === undefined || b === undefined) throw new Error('outside')
      return a.waterContent + ((b.waterContent - a.waterContent) * (z - a.height)) / (b.height - a.height)
    }
    let [sum, count] = [0, 0]
    for (let x = -1.995; x < 2; x += 0.01)
      for (let z = -1.995; z < 2; z += 0.01)
        if (x * x + z * z < 4) {
          sum += contentAt(centre + z)
          count += 1
        }
    const lying = probeReading(profile, { height: centimetres(centre), sensedHeight: centimetres(4), rods: 'lying' })
    expect(lying).toBeCloseTo(sum / count, 6)
    expect(lying).not.toBeCloseTo(
      probeReading(profile, { height: centimetres(centre), sensedHeight: centimetres(4) }),
      6,
    )
  })
  it('reads between the driest and the wettest that it senses, wherever it sits and however it lies', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0.01, max: 40, noNaN: true }),
        fc.constantFrom('upright' as const, 'lying' as const),
        (height, sensed, rods) => {
          const reading = probeReading(profile, {
            height: centimetres(height),
            sensedHeight: centimetres(sensed),
            rods,
          })
          const at = (z: number) => medium.waterContent(centimetresOfSuction(Math.min(Math.max(z, 0), 15)))
          expect(reading).toBeGreaterThanOrEqual(at(height + sensed / 2) - 1e-3)
          expect(reading).toBeLessThanOrEqual(at(height - sensed / 2) + 1e-3)
        },
      ),
      { numRuns: 200 },
    )
  })
  it('says for itself which height tells best before and after shots', () => {
    const heights = [1, 3, 5, 7, 9, 11, 13].map(centimetres)
    const seen = bestProbeHeight({ flow, start, steps, heights, sensedHeight: centimetres(3), rods: 'lying' })
    // Worked out again from the readings themselves.
    let state = start
    const offs = steps.map((during) => {
      state = flow.step(state, during)[0]
      const mean = flow.waterContent(state)
      return heights.map(
        (height) => probeReading(flow.profile(state), { height, sensedHeight: centimetres(3), rods: 'lying' }) - mean,
      )
    })
    const spreadOf = (rows: readonly number[][], i: number) => {
      const values = rows.map((row) => row[i]!)
      const mean = values.reduce((a, b) => a + b, 0) / values.length
      return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length)
    }
    const before = offs.filter((_, k) => k % 13 === 12 && k < steps.length - 1)
    const after = offs.filter((_, k) => k % 13 === 0)
    seen.views.forEach((view, i) => {
      expect(view.spreadBeforeShots).toBeCloseTo(spreadOf(before, i), 12)
      expect(view.spreadAfterShots).toBeCloseTo(spreadOf(after, i), 12)
    })
    const lowest = (rows: readonly number[][]) =>
      heights.reduce((a, b) => (spreadOf(rows, heights.indexOf(b)) < spreadOf(rows, heights.indexOf(a)) ? b : a))
    expect(seen.bestBeforeShots).toBe(lowest(before))
    expect(seen.bestAfterShots).toBe(lowest(after))
  })
  it('lags by as long as the water takes to come down, on average over the shots', () => {
    const { views } = bestProbeHeight({
      flow,
      start,
      steps,
      heights: [13, 2].map(centimetres),
      sensedHeight: centimetres(2),
    })
    expect(views[0]?.lag).toBe(0)
    expect(views[1]?.lag).toBeGreaterThanOrEqual(300)
    const one = bestProbeHeight({
      flow,
      start,
      steps: steps.slice(0, 13),
      heights: [centimetres(2)],
      sensedHeight: centimetres(2),
    })
    expect((one.views[0]?.lag ?? 0) % 300).toBe(0)
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
    const probe = { height: centimetres(3), sensedHeight: centimetres(3), rods: 'across' as never }
    expectInputError(() => probeReading(profile, probe), 'rods')
    expectInputError(
      () => bestProbeHeight({ flow, start, steps, heights: [], sensedHeight: centimetres(3) }),
      'heights',
    )
  })
})
