import fc from 'fast-check'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  days,
  hours,
  layeredFlowRichards1931,
  layersAtRest,
  litres,
  minutes,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

const NOTHING = litres(0)
const medium = (alpha: number, n: number) =>
  vanGenuchten1980({ residual: waterContent(0.05), saturated: waterContent(0.9), alpha: perCentimetre(alpha), n })
const box = (height: number, length = 20) =>
  boxContainer({ length: centimetres(length), width: centimetres(10), height: centimetres(height) })
const fine = { medium: medium(0.04, 1.6), saturatedConductivity: centimetresPerHour(30) }
const coarse = { medium: medium(0.2, 2.5), saturatedConductivity: centimetresPerHour(600) }
const total = (state: { water: readonly number[] }) => state.water.reduce((sum, part) => sum + part, 0)

describe('water in layers by the equation of Richards', () => {
  it('of one medium is water in one container', () => {
    const one = containerFlowRichards1931({ container: box(12), ...fine, nodes: 41, tolerance: 1e-6 })
    const two = layeredFlowRichards1931({
      layers: [
        { container: box(6), ...fine },
        { container: box(6), ...fine },
      ],
      nodes: 41,
      tolerance: 1e-6,
    })
    const during = { duration: minutes(40), applied: litres(0.15), demand: NOTHING }
    const [a, b] = [one, two].map((flow) =>
      flow.step(
        flow.startAt((z) => centimetresOfSuction(z + 8)),
        during,
      ),
    )
    expect(b?.[1].drained).toBeCloseTo(a?.[1].drained as number, 5)
    expect(b?.[0].pressureHeads.at(-1)).toBeCloseTo(a?.[0].pressureHeads.at(-1) as number, 2)
  })
  it('has one suction at a boundary and a water content for either side', () => {
    const flow = layeredFlowRichards1931({
      layers: [
        { container: box(8), ...coarse },
        { container: box(6), ...fine },
      ],
    })
    const [state] = flow.step(
      flow.startAt((z) => centimetresOfSuction(z + 4)),
      { duration: minutes(20), applied: litres(0.3), demand: NOTHING },
    )
    const [below, above] = flow.profile(state).filter(({ height }) => height === 8)
    expect([below?.layer, above?.layer]).toEqual([0, 1])
    expect(below?.suction).toBe(above?.suction)
    const suction = centimetresOfSuction(below?.suction as number)
    expect(below?.waterContent).toBeCloseTo(coarse.medium.waterContent(suction), 5)
    expect(above?.waterContent).toBeCloseTo(fine.medium.waterContent(suction), 5)
  })
  it('lets as much through a boundary as comes out below it, whatever the sections, when the flow is steady', () => {
    const flow = layeredFlowRichards1931({
      layers: [
        { container: box(8, 40), ...coarse },
        { container: box(6, 10), ...fine },
      ],
      base: centimetresOfSuction(10),
    })
    let state = flow.startAt(() => centimetresOfSuction(15))
    for (let k = 0; k < 5; k++)
      state = flow.step(state, { duration: days(1), applied: litres(4.8), demand: NOTHING })[0]
    const [, after] = flow.step(state, { duration: hours(1), applied: litres(0.2), demand: NOTHING })
    expect(after.drained).toBeCloseTo(0.2, 8)
  })
  it('comes to rest with the water that hydrostatics gives to each layer', () => {
    const layers = [
      { container: box(8), ...coarse },
      { container: box(6), ...fine },
    ]
    const flow = layeredFlowRichards1931({ layers, nodes: 141, base: centimetresOfSuction(0) })
    let state = flow.startAt((z) => centimetresOfSuction(Math.max(0, z - 2)))
    for (let day = 0; day < 300; day++)
      state = flow.step(state, { duration: days(1), applied: NOTHING, demand: NOTHING })[0]
    const held = layersAtRest({ layers }).reduce((sum, { water }) => sum + water, 0)
    expect(Math.abs(total(state) - held) / held).toBeLessThan(2e-6)
  })
  it('keeps a fine layer wet over a coarse one, which lets water in only when its own pores fill', () => {
    const gravel = { medium: medium(0.5, 3.5), saturatedConductivity: centimetresPerHour(3000) }
    const capped = layeredFlowRichards1931({
      layers: [
        { container: box(15), ...gravel },
        { container: box(6), ...fine },
      ],
    })
    const alone = containerFlowRichards1931({ container: box(21), ...fine })
    const boundary = (flow: typeof alone) => {
      const [state] = flow.step(
        flow.startAt((z) => centimetresOfSuction(z + 2)),
        { duration: hours(12), applied: litres(0.12), demand: NOTHING },
      )
      return flow.profile(state).find(({ height }) => height >= 15)?.suction as number
    }
    expect(boundary(capped)).toBeLessThan(boundary(alone) - 2)
  })
  it('comes closer with the square of the distance between nodes', () => {
    const drain = (nodes: number) => {
      const flow = layeredFlowRichards1931({
        layers: [
          { container: box(8), ...coarse },
          { container: box(8), ...fine },
        ],
        nodes,
        tolerance: 1e-8,
      })
      const start = flow.startAt((z) => centimetresOfSuction(z))
      return flow.step(start, { duration: minutes(20), applied: litres(0.3), demand: NOTHING })[1].drained
    }
    const [a, b, c] = [33, 65, 129].map(drain) as number[] as [number, number, number]
    const order = Math.log2((b - a) / (c - b))
    expect(order).toBeGreaterThan(1.5)
  })
  it('keeps all water in any stack', () => {
    const layer = fc.record({
      alpha: fc.double({ min: 0.01, max: 0.4, noNaN: true }),
      n: fc.double({ min: 1.15, max: 3.5, noNaN: true }),
      power: fc.double({ min: -1, max: 3, noNaN: true }),
      height: fc.double({ min: 2, max: 12, noNaN: true }),
      length: fc.double({ min: 5, max: 50, noNaN: true }),
    })
    fc.assert(
      fc.property(
        fc.array(layer, { minLength: 1, maxLength: 4 }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (rows, bottom) => {
          const flow = layeredFlowRichards1931({
            layers: rows.map(({ alpha, n, power, height, length }) => ({
              container: box(height, length),
              medium: medium(alpha, n),
              saturatedConductivity: centimetresPerHour(10 ** power),
            })),
            tolerance: 1e-3,
          })
          const start = flow.startAt((z) => centimetresOfSuction(z + bottom))
          const [next, after] = flow.step(start, { duration: minutes(30), applied: litres(0.3), demand: NOTHING })
          expect(Math.abs(total(next) - total(start) - after.entered + after.drained)).toBeLessThan(3e-10)
          expect(Math.abs(after.imbalance)).toBeLessThan(3e-10)
        },
      ),
      { numRuns: 40 },
    )
  })
  it('refuses a stack without a layer', () => {
    expectInputError(() => layeredFlowRichards1931({ layers: [] }), 'layers')
  })
})
