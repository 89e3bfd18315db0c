import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerCapacity,
  containerFlowRichards1931,
  litres,
  minutes,
  perCentimetre,
  type RichardsFlow,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { usualNodes } from '../../src/flow/column/grid/usual-nodes.js'

/** Invented media in a bag: pores of many sizes, and pores that are nearly all of one size. */
const bag = boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(14) })
const medium = (alpha: number, n: number) =>
  vanGenuchten1980({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(alpha), n })
const flowOf = (alpha: number, n: number, around: { nodes?: number; tolerance?: number } = {}) =>
  containerFlowRichards1931({
    container: bag,
    medium: medium(alpha, n),
    saturatedConductivity: centimetresPerHour(280),
    ...around,
  })
const nodesOf = (flow: RichardsFlow) => flow.startFrom(waterContent(0.3)).pressureHeads.length

describe('the nodes of a simulation that is not told how many', () => {
  it('are 27 where the conductivity falls gently, more where it falls steeply, and never more than 61', () => {
    expect(nodesOf(flowOf(0.1, 1.7))).toBe(27)
    const steep = nodesOf(flowOf(0.32, 3.2))
    expect(steep).toBeGreaterThan(40)
    expect(steep).toBeLessThan(61)
    expect(nodesOf(flowOf(0.5, 4))).toBe(61)
  })

  it('are one for every 0.23 e-folds of a conductivity at rest, from a tenth of the height on', () => {
    const layer = (height: number, perCm: number) => ({
      container: boxContainer({ length: 20, width: 20, height } as never),
      medium: { ...medium(0.1, 1.7), relativeConductivity: (s: number) => Math.exp(-perCm * s) as never },
    })
    // 12.6 of 14 cm; below 27 there are 27.
    expect(usualNodes([layer(14, 0.7)])).toBe(1 + Math.ceil((12.6 * 0.7) / 0.23))
    expect(usualNodes([layer(14, 0.46)])).toBe(27)
    expect(usualNodes([layer(14, 0.49)])).toBe(28)
    // The upper of two layers of 10 cm falls by more than the lower from 2 cm on, and twenty nodes lie in each.
    expect(usualNodes([layer(10, 0.4), layer(10, 0.4)])).toBe(1 + Math.ceil((2 * 4) / 0.23))
    expect(usualNodes([layer(10, 0.5), layer(10, 0)])).toBe(1 + Math.ceil((2 * 4) / 0.23))
    // Below a billionth nothing counts: 20.7 e-folds.
    expect(usualNodes([layer(14, 0.1), layer(60, 2)])).toBe(27)
    expect(usualNodes([layer(140, 0.7)])).toBe(1 + Math.ceil((Math.log(1e9) - 9.8) / 0.23))
  })

  it('are as many as can be where a medium conducts nothing any more', () => {
    const dead = { ...medium(0.1, 1.7), relativeConductivity: (s: number) => (s > 1 ? 0 : 1) as never }
    const flow = containerFlowRichards1931({
      container: bag,
      medium: dead,
      saturatedConductivity: centimetresPerHour(280),
    })
    expect(nodesOf(flow)).toBe(27)
    const falling = { ...dead, relativeConductivity: (s: number) => (s > 5 ? 0 : 1) as never }
    const other = containerFlowRichards1931({
      container: bag,
      medium: falling,
      saturatedConductivity: centimetresPerHour(280),
    })
    expect(nodesOf(other)).toBe(61)
  })

  it('follow the first shot that drains of a steep medium to a thousandth, as 31 do', () => {
    const start = waterContent(containerCapacity({ container: bag, medium: medium(0.32, 3.2) }) - 0.02)
    const drain = (flow: RichardsFlow) => {
      let [state, drained] = [flow.startFrom(start), 0]
      for (let shot = 0; shot < 6 && drained < 0.1; shot++) {
        drained = 0
        for (const [duration, applied] of [
          [minutes(4), litres(0.8)],
          [minutes(30), litres(0)],
        ] as const) {
          const [next, after] = flow.step(state, { duration, applied, demand: litres(0) })
          state = next
          drained += after.drained
        }
      }
      return drained
    }
    // Beside a grid of a fifth of the distance, whose error is a twenty-fifth.
    const exact = drain(flowOf(0.32, 3.2, { nodes: 151, tolerance: 3e-5 }))
    const off = (flow: RichardsFlow) => Math.abs(drain(flow) / exact - 1)
    expect(exact).toBeGreaterThan(0.1)
    for (const nodes of [{ nodes: 31 }, {}])
      expect(off(flowOf(0.32, 3.2, { ...nodes, tolerance: 1e-4 }))).toBeLessThan(1e-3)
  })
})
