import fc from 'fast-check'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerCapacity,
  containerFlowRichards1931,
  days,
  hours,
  litres,
  minutes,
  perCentimetre,
  type RichardsFlow,
  type RichardsState,
  scanningCurvesScott1983,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const NOTHING = litres(0)
const drying = { residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 2.2 }
const medium = vanGenuchten1980(drying)
const wetting = wettingCurveKoolParker1987(drying)
const container = boxContainer({ length: centimetres(20), width: centimetres(10), height: centimetres(12) })
const usual = { container, medium, wetting, saturatedConductivity: centimetresPerHour(120) }

/** A state after some days in which nothing is given. */
function rested(flow: RichardsFlow, state: RichardsState, count: number): RichardsState {
  let now = state
  for (let day = 0; day < count; day++)
    now = flow.step(now, { duration: days(1), applied: NOTHING, demand: NOTHING })[0]
  return now
}

describe('a medium that drains and wets on different curves', () => {
  it('that was full rests at container capacity, the integral of its drying curve', () => {
    const flow = containerFlowRichards1931({ ...usual, nodes: 61, tolerance: 1e-6 })
    const full = flow.startAt(() => centimetresOfSuction(0))
    const held = flow.waterContent(rested(flow, full, 60))
    expect(Math.abs(held - containerCapacity({ container, medium }))).toBeLessThan(1e-6)
  })
  it('that drinks from a mat rests at the integral of its wetting curve', () => {
    const flow = containerFlowRichards1931({ ...usual, base: centimetresOfSuction(0), nodes: 61, tolerance: 1e-6 })
    const dry = flow.startAt((z) => centimetresOfSuction(40 + z), 'wetted')
    const held = flow.waterContent(rested(flow, dry, 60))
    expect(Math.abs(held - containerCapacity({ container, medium: wetting }))).toBeLessThan(1e-6)
    expect(held).toBeLessThan(containerCapacity({ container, medium }) - 0.1)
  })
  it('rests between its curves when shots wet only a part of it', () => {
    const flow = containerFlowRichards1931(usual)
    let state = flow.startAt((z) => centimetresOfSuction(25 + z))
    for (let shot = 0; shot < 4; shot++) {
      state = flow.step(state, { duration: minutes(4), applied: litres(0.12), demand: NOTHING })[0]
      state = flow.step(state, { duration: hours(1), applied: NOTHING, demand: NOTHING })[0]
    }
    for (const { suction, waterContent } of flow.profile(state)) {
      expect(waterContent).toBeGreaterThan(wetting.waterContent(suction) - 1e-4)
      expect(waterContent).toBeLessThan(medium.waterContent(suction) + 1e-4)
    }
  })
  it('is one of one curve where the two are one', () => {
    const during = { duration: minutes(40), applied: litres(0.4), demand: NOTHING }
    const [two, one] = [
      containerFlowRichards1931({ ...usual, wetting: medium, nodes: 61, tolerance: 1e-6 }),
      containerFlowRichards1931({
        container,
        medium,
        saturatedConductivity: usual.saturatedConductivity,
        nodes: 61,
        tolerance: 1e-6,
      }),
    ].map((flow) =>
      flow.step(
        flow.startAt((z) => centimetresOfSuction(10 + z)),
        during,
      ),
    )
    expect(Math.abs(two![1].drained - one![1].drained)).toBeLessThan(1e-5)
    two![0].pressureHeads.forEach((head, i) => {
      expect(Math.abs(head - one![0].pressureHeads[i]!)).toBeLessThan(1e-3)
    })
  })
  it('goes on the same from a state that was written down and read again', () => {
    const flow = containerFlowRichards1931(usual)
    let state = flow.startAt((z) => centimetresOfSuction(20 + z))
    for (let k = 0; k < 6; k++) {
      const during = { duration: minutes(7), applied: litres(k % 2 === 0 ? 0.15 : 0), demand: NOTHING }
      const restored = JSON.parse(JSON.stringify(state)) as RichardsState
      const [kept, read] = [flow.step(state, during), containerFlowRichards1931(usual).step(restored, during)]
      expect(read).toEqual(kept)
      state = kept[0]
    }
  })
  it('keeps its water to 1e-9 of what is given, wetted and dried in any order', () => {
    const spans = fc.array(
      fc.record({
        minutes: fc.double({ min: 1, max: 300, noNaN: true }),
        given: fc.oneof(fc.constant(0), fc.double({ min: 0.01, max: 0.5, noNaN: true })),
      }),
      { minLength: 2, maxLength: 8 },
    )
    fc.assert(
      fc.property(spans, fc.double({ min: 1, max: 3, noNaN: true }), (list, alphaRatio) => {
        const flow = containerFlowRichards1931({
          ...usual,
          wetting: wettingCurveKoolParker1987({ ...drying, alphaRatio }),
        })
        let state = flow.startAt((z) => centimetresOfSuction(30 + z))
        const sum = ({ water }: RichardsState) => water.reduce((total, part) => total + part, 0)
        for (const { minutes: span, given } of list) {
          const [next, after] = flow.step(state, { duration: minutes(span), applied: litres(given), demand: NOTHING })
          const miss = sum(next) - sum(state) - after.entered + after.drained
          expect(Math.abs(miss)).toBeLessThan(1e-9 * Math.max(given, 0.01))
          state = next
        }
      }),
      { numRuns: 15 },
    )
  })
})

describe('the simulation with two curves comes closer', () => {
  const held = (nodes: number, tolerance: number) => {
    const flow = containerFlowRichards1931({ ...usual, nodes, tolerance })
    let state = flow.startAt((z) => centimetresOfSuction(15 + z))
    let drained = 0
    for (const [duration, applied] of [
      [minutes(15), litres(0.5)],
      [minutes(45), NOTHING],
      [minutes(15), litres(0.4)],
      [minutes(45), NOTHING],
    ] as const) {
      const [next, after] = flow.step(state, { duration, applied, demand: NOTHING })
      state = next
      drained += after.drained
    }
    return [flow.waterContent(state), drained] as const
  }
  it('with the square of the distance between nodes', () => {
    const [exact] = held(161, 1e-6)
    const errors = [11, 21, 41].map((nodes) => Math.abs(held(nodes, 1e-6)[0] - exact))
    // Two halvings of the distance: sixteen times as close, less what turns at nodes scatter.
    expect(errors[0]! / errors[2]!).toBeGreaterThan(9)
  })
  it('with the square of the step in time', () => {
    const [exact] = held(31, 1e-8)
    // The step goes with the third root of the tolerance: a thousandth of it is a tenth of the step.
    const errors = [1e-3, 1e-6].map((tolerance) => Math.abs(held(31, tolerance)[0] - exact))
    expect(errors[0]! / errors[1]!).toBeGreaterThan(100)
  })
})

describe('a thin layer that is wetted and dried between two suctions again and again', () => {
  it('goes by the scanning curves, and creeps as they do: loops do not close at first', () => {
    const thin = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(0.5) })
    const mat = (suction: number) =>
      containerFlowRichards1931({
        ...usual,
        container: thin,
        base: centimetresOfSuction(suction),
        nodes: 5,
        tolerance: 1e-6,
      })
    const [moist, dry] = [mat(10), mat(40)]
    const [wettest, driest] = [centimetresOfSuction(10), centimetresOfSuction(40)]
    let expected = medium.waterContent(driest)
    const first = expected
    let state = dry.startAt((z) => centimetresOfSuction(40 + z))
    const gaps: number[] = []
    for (let loop = 0; loop < 10; loop++) {
      state = rested(moist, state, 2)
      expected = scanningCurvesScott1983({
        drying: medium,
        wetting,
        suction: driest,
        waterContent: expected,
      }).whileWetting(wettest)
      expect(moist.profile(state)[0]!.waterContent).toBeCloseTo(expected, 4)
      state = rested(dry, state, 2)
      expected = scanningCurvesScott1983({
        drying: medium,
        wetting,
        suction: wettest,
        waterContent: expected,
      }).whileDraining(driest)
      expect(dry.profile(state)[0]!.waterContent).toBeCloseTo(expected, 4)
      gaps.push(expected - first)
    }
    // The first loop ends well below where it began, and after ten the way is the same each time.
    expect(gaps[0]).toBeCloseTo(-0.0488, 3)
    expect(gaps[9]).toBeLessThan(gaps[0]!)
    expect(gaps[9]! - gaps[8]!).toBeCloseTo(0, 5)
  })
})

describe('what cannot be two curves of one medium', () => {
  it('is refused', () => {
    expectInputError(() => containerFlowRichards1931({ ...usual, medium: wetting, wetting: medium }), 'wetting')
    const other = vanGenuchten1980({ ...drying, saturated: waterContent(0.8) })
    expectInputError(() => containerFlowRichards1931({ ...usual, wetting: other }), 'wetting')
    const flow = containerFlowRichards1931(usual)
    const start = flow.startAt((z) => centimetresOfSuction(z))
    expectInputError(() => flow.startAt(() => centimetresOfSuction(1), 'dry' as 'drained'), 'by')
    const { curves: _, ...bare } = start
    expectInputError(() => flow.waterContent(bare), 'state')
    expectInputError(() => flow.waterContent({ ...start, curves: start.curves!.map(() => 0) }), 'state')
    expectDomainError(() => flow.waterContent({ ...start, turns: start.turns!.map(() => Number.NaN) }), {
      quantity: 'turn of the state',
    })
  })
})
