import fc from 'fast-check'
import {
  boxContainer,
  type ConductiveModel,
  campbell1974,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type DrainFraction,
  type Duration,
  days,
  drainageTimes,
  fraction,
  frustumContainer,
  gardner1958,
  hours,
  infiltrationSrivastavaYeh1991,
  litres,
  millimetresPerHour,
  minutes,
  perCentimetre,
  type RichardsContainer,
  steadySuctionGardner1958,
  vanGenuchten1980,
  type WaterFlux,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { limits } from '../support/uptake-limits.js'

const NOTHING = litres(0)
const coir: ConductiveModel = vanGenuchten1980({
  residual: waterContent(0.15),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.12),
  n: 1.7,
})
const pot = boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(15) })
const usual: RichardsContainer = {
  container: pot,
  medium: coir,
  saturatedConductivity: centimetresPerHour(120),
  roots: { limits },
  nodes: 31,
}

const media = fc
  .record({
    residual: fc.double({ min: 0, max: 0.2, noNaN: true }),
    saturated: fc.double({ min: 0.4, max: 0.95, noNaN: true }),
    alpha: fc.double({ min: 0.01, max: 0.3, noNaN: true }),
    n: fc.double({ min: 1.2, max: 3, noNaN: true }),
  })
  .map((it) =>
    vanGenuchten1980({
      residual: waterContent(it.residual),
      saturated: waterContent(it.saturated),
      alpha: perCentimetre(it.alpha),
      n: it.n,
    }),
  )
const cases = fc.record({
  medium: media,
  saturatedConductivity: fc.double({ min: -1, max: 3, noNaN: true }).map((power) => centimetresPerHour(10 ** power)),
  bottom: fc.double({ min: 0, max: 30, noNaN: true }),
  applied: fc.double({ min: 0, max: 2, noNaN: true }).map(litres),
  demand: fc.double({ min: 0.001, max: 0.1, noNaN: true }).map(litres),
  container: fc.constantFrom(
    pot,
    frustumContainer({
      bottomDiameter: centimetres(16),
      topDiameter: centimetres(22),
      height: centimetres(18),
    }),
  ),
})

describe('water in a container by the equation of Richards', () => {
  it('keeps, drains or hands to the plants all that it is given, in any medium and shape', () => {
    fc.assert(
      fc.property(cases, ({ bottom, applied, demand, ...column }) => {
        const flow = containerFlowRichards1931({ ...usual, ...column, nodes: 21, tolerance: 1e-3 })
        let state = flow.startAt((height) => centimetresOfSuction(bottom + height))
        let stored = flow.waterContent(state) * column.container.volume
        for (const [duration, water] of [
          [minutes(5), applied],
          [hours(3), NOTHING],
        ] as const) {
          const [next, after] = flow.step(state, { duration, applied: water, demand })
          const now = flow.waterContent(next) * column.container.volume + after.standing
          const passed = after.entered - after.drained - after.taken
          expect(after.entered).toBeCloseTo(water, 12)
          expect(Math.abs(now - stored - passed)).toBeLessThanOrEqual(1e-7 * column.container.volume)
          expect(Math.abs(now - stored - passed - after.imbalance)).toBeLessThanOrEqual(1e-11)
          expect(after.drained).toBeGreaterThanOrEqual(0)
          expect(after.taken).toBeGreaterThanOrEqual(0)
          expect(after.taken).toBeLessThanOrEqual(demand * (1 + 1e-12))
          state = next
          stored = now
        }
      }),
      { numRuns: 60 },
    )
  })
  it('balances a day of twenty shots to a billionth of what is given', () => {
    const flow = containerFlowRichards1931(usual)
    let state = flow.startFrom(waterContent(0.6))
    const before = flow.waterContent(state) * pot.volume
    let [given, gone] = [0, 0]
    for (let shot = 0; shot < 20; shot++) {
      for (const [duration, applied] of [
        [minutes(3), litres(0.12)],
        [minutes(69), NOTHING],
      ] as const) {
        const [next, after] = flow.step(state, { duration, applied, demand: litres((0.9 * duration) / 86400) })
        given += after.entered
        gone += after.drained + after.taken
        state = next
      }
    }
    const left = flow.waterContent(state) * pot.volume - before
    expect(given).toBeCloseTo(2.4, 12)
    expect(Math.abs(given - gone - left)).toBeLessThanOrEqual(1e-9 * given)
  })
  it('lets a container at rest be', () => {
    const flow = containerFlowRichards1931(usual)
    const state = flow.startAt((height) => centimetresOfSuction(3 + height))
    const [next, after] = flow.step(state, { duration: days(1), applied: NOTHING, demand: NOTHING })
    expect(after.drained).toBe(0)
    next.pressureHeads.forEach((head, i) => {
      expect(head).toBeCloseTo(state.pressureHeads[i]!, 9)
    })
  })
  it('begins at rest with the water that it is told, also above container capacity', () => {
    fc.assert(
      fc.property(media, fc.double({ min: 0.2, max: 0.999, noNaN: true }), (medium, share) => {
        const flow = containerFlowRichards1931({ ...usual, medium })
        const content = waterContent(medium.residual + share * (medium.saturated - medium.residual))
        const state = flow.startFrom(content)
        expect(flow.waterContent(state)).toBeCloseTo(content, 10)
        const profile = flow.profile(state)
        const [first] = profile
        for (const { height, pressureHead } of profile)
          expect(pressureHead + height).toBeCloseTo(first?.pressureHead as number, 6)
      }),
      { numRuns: 50 },
    )
  })
  it('comes to the steady flux to a water table that Gardner (1958) gives', () => {
    const model = { residual: waterContent(0.1), saturated: waterContent(0.6), alpha: perCentimetre(0.08) }
    const column = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(40) })
    const flow = containerFlowRichards1931({
      container: column,
      medium: gardner1958(model),
      saturatedConductivity: centimetresPerHour(5),
      base: centimetresOfSuction(0),
      nodes: 161,
      tolerance: 1e-6,
    })
    let state = flow.startAt((height) => centimetresOfSuction(height))
    // 2 cm an hour on 100 cm² is 0.2 L.
    for (let day = 0; day < 4; day++)
      state = flow.step(state, { duration: days(1), applied: litres(0.2 * 24), demand: NOTHING })[0]
    for (const { height, suction } of flow.profile(state)) {
      const exact = steadySuctionGardner1958({
        saturatedConductivity: centimetresPerHour(5),
        alpha: model.alpha,
        downwardFlux: millimetresPerHour<WaterFlux>(20),
        height,
      })
      expect(suction).toBeCloseTo(exact, 3)
    }
  })
  it('comes with few nodes to the steady rise that Gardner (1958) gives, with the fourth power of their distance', () => {
    const model = { residual: waterContent(0.1), saturated: waterContent(0.6), alpha: perCentimetre(0.08) }
    const saturatedConductivity = centimetresPerHour(5)
    const worst = (nodes: number) => {
      const flow = containerFlowRichards1931({
        container: boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(40) }),
        medium: gardner1958(model),
        saturatedConductivity,
        base: centimetresOfSuction(0),
        nodes,
        tolerance: 1e-6,
      })
      let state = flow.startAt((height) => centimetresOfSuction(height))
      // A millimetre an hour from 100 cm² is 0.01 L.
      const air = { duration: days(1), applied: NOTHING, demand: NOTHING, evaporation: litres(0.01 * 24) }
      for (let day = 0; day < 4; day++) state = flow.step(state, air)[0]
      return flow.profile(state).reduce((most, { height, suction }) => {
        const downwardFlux = millimetresPerHour<WaterFlux>(-1)
        const exact = steadySuctionGardner1958({ saturatedConductivity, alpha: model.alpha, downwardFlux, height })
        return Math.max(most, Math.abs(suction - exact))
      }, 0)
    }
    const [few, more] = [worst(11), worst(21)]
    expect(few).toBeLessThan(0.01)
    expect(few / more).toBeGreaterThan(12)
  })
  it('wets towards a water table as the series of Srivastava and Yeh (1991) says', () => {
    const model = { residual: waterContent(0.06), saturated: waterContent(0.4), alpha: perCentimetre(0.1) }
    const column = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(100) })
    const problem = {
      ...model,
      saturatedConductivity: centimetresPerHour(1),
      columnHeight: centimetres(100),
      fluxBefore: millimetresPerHour<WaterFlux>(1),
      fluxSince: millimetresPerHour<WaterFlux>(9),
    }
    const flow = containerFlowRichards1931({
      container: column,
      medium: gardner1958(model),
      saturatedConductivity: centimetresPerHour(1),
      base: centimetresOfSuction(0),
      nodes: 401,
      tolerance: 1e-6,
    })
    let state = flow.startAt((height) =>
      steadySuctionGardner1958({
        saturatedConductivity: problem.saturatedConductivity,
        alpha: model.alpha,
        downwardFlux: problem.fluxBefore,
        height,
      }),
    )
    for (const [duration, time] of [
      [hours(5), hours(5)],
      [hours(5), hours(10)],
    ] as const) {
      // 0.9 cm an hour on 100 cm² is 0.09 L.
      state = flow.step(state, { duration, applied: litres(0.09 * 5), demand: NOTHING })[0]
      const profile = flow.profile(state)
      for (const height of [20, 50, 80, 95]) {
        const node = profile.find((layer) => layer.height >= height)!
        const exact = infiltrationSrivastavaYeh1991({ ...problem, height: node.height, time })
        expect(Math.abs(node.suction - exact.suction)).toBeLessThan(0.02)
      }
    }
  })
  it('comes closer with the square of the distance between nodes', () => {
    const drain = (nodes: number) => {
      const flow = containerFlowRichards1931({ ...usual, nodes, tolerance: 1e-7 })
      const state = flow.startAt((height) => centimetresOfSuction(height))
      return flow.step(state, { duration: minutes(20), applied: litres(0.2), demand: NOTHING })[1].drained
    }
    const [coarse, fine, finer] = [drain(11), drain(21), drain(41)]
    const order = Math.log2(((fine - coarse) / (finer - fine)) as number)
    expect(order).toBeGreaterThan(1.5)
    expect(order).toBeLessThan(2.6)
  })
  it('drains earlier and more when the container is wetter', () => {
    const flow = containerFlowRichards1931(usual)
    const drained = [0.5, 0.6, 0.65, 0.7].map(
      (content) =>
        flow.step(flow.startFrom(waterContent(content)), {
          duration: minutes(30),
          applied: litres(0.5),
          demand: NOTHING,
        })[1].drained,
    )
    for (let i = 1; i < drained.length; i++) expect(drained[i]).toBeGreaterThanOrEqual(drained[i - 1]!)
    expect(drained.at(-1)).toBeGreaterThan(0.1)
  })
  it('goes on the same from a state that was written down and read again', () => {
    const flow = containerFlowRichards1931(usual)
    const during = { duration: minutes(10), applied: litres(0.3), demand: litres(0.01) }
    const state = flow.step(flow.startFrom(waterContent(0.55)), during)[0]
    const restored = JSON.parse(JSON.stringify(state)) as typeof state
    expect(flow.step(restored, during)).toEqual(flow.step(state, during))
    expect(containerFlowRichards1931(usual).step(restored, during)).toEqual(flow.step(state, during))
  })
  it('lets water stand where the medium cannot take it, and sink in later', () => {
    const flow = containerFlowRichards1931({ ...usual, saturatedConductivity: centimetresPerHour(0.5) })
    const state = flow.startFrom(waterContent(0.5))
    const [wet, first] = flow.step(state, { duration: minutes(5), applied: litres(2), demand: NOTHING })
    expect(first.standing).toBeGreaterThan(0.5)
    const [, later] = flow.step(wet, { duration: days(1), applied: NOTHING, demand: NOTHING })
    expect(later.standing).toBe(0)
  })
  it('keeps all water in a closed container and lets it come to rest', () => {
    const flow = containerFlowRichards1931({ ...usual, base: 'closed' })
    let state = flow.startAt((height) => centimetresOfSuction(height < 7.5 ? 60 : 5))
    const before = flow.waterContent(state)
    for (let day = 0; day < 30; day++) {
      const [next, after] = flow.step(state, { duration: days(1), applied: NOTHING, demand: NOTHING })
      expect(after.drained).toBe(0)
      state = next
    }
    expect(flow.waterContent(state)).toBeCloseTo(before, 9)
    const bottom = state.pressureHeads[0]!
    for (const { height, pressureHead } of flow.profile(state)) expect(pressureHead).toBeCloseTo(bottom - height, 3)
  })
  it('draws water up from a mat into a dry container', () => {
    const flow = containerFlowRichards1931({ ...usual, base: centimetresOfSuction(5) })
    const state = flow.startAt((height) => centimetresOfSuction(100 + height))
    const [next, after] = flow.step(state, { duration: hours(6), applied: NOTHING, demand: NOTHING })
    expect(after.drained).toBeLessThan(-0.05)
    expect(flow.waterContent(next)).toBeGreaterThan(flow.waterContent(state))
  })
  it('takes water where the roots are', () => {
    const shallow = containerFlowRichards1931({ ...usual, roots: { limits, density: (z) => (z > 10 ? 1 : 0) } })
    const even = containerFlowRichards1931(usual)
    const start = even.startFrom(waterContent(0.5))
    const during = { duration: hours(4), applied: NOTHING, demand: litres(0.2) }
    const top = (flow: typeof even) => -(flow.step(start, during)[0].pressureHeads.at(-1) as number)
    expect(top(shallow)).toBeGreaterThan(top(even))
    expect(shallow.step(start, during)[1].taken).toBeCloseTo(0.2, 6)
  })
  it('follows a medium whose curve has a kink at its air entry', () => {
    const medium = campbell1974({ saturated: waterContent(0.6), airEntry: centimetresOfSuction(6), b: 3 })
    const flow = containerFlowRichards1931({ ...usual, medium })
    let state = flow.startAt(() => centimetresOfSuction(0))
    const first = flow.waterContent(state)
    const [after, { drained }] = flow.step(state, { duration: days(1), applied: NOTHING, demand: NOTHING })
    state = after
    expect(first - flow.waterContent(state)).toBeCloseTo(drained / pot.volume, 9)
    // At rest the top is as far over the bottom in suction as in height.
    expect(state.pressureHeads.at(-1)).toBeCloseTo(-15, 1)
  })
  it('refuses what cannot be', () => {
    expectDomainError(() => containerFlowRichards1931({ ...usual, nodes: 4 }), { quantity: 'nodes' })
    expectDomainError(() => containerFlowRichards1931({ ...usual, tolerance: 0.1 }), { quantity: 'tolerance' })
    expectInputError(() => containerFlowRichards1931({ ...usual, roots: { limits, density: () => 0 } }), 'roots')
    expectDomainError(() => containerFlowRichards1931({ ...usual, roots: { limits, density: () => -1 } }), {
      quantity: 'root density',
    })
    const flow = containerFlowRichards1931(usual)
    expectDomainError(() => flow.startFrom(waterContent(0.95)), { quantity: 'water content', max: 0.9 })
    expectDomainError(() => flow.startFrom(waterContent(0.1)), { quantity: 'water content' })
    expectInputError(() => flow.waterContent({ pressureHeads: [], water: [] }), 'state')
    const state = flow.startFrom(waterContent(0.5))
    expectDomainError(
      () => flow.waterContent({ ...state, pressureHeads: state.water.map(() => Number.NaN as never) }),
      {
        quantity: 'pressure head of the state',
      },
    )
    expectDomainError(() => flow.waterContent({ ...state, water: state.water.map(() => Number.NaN as never) }), {
      quantity: 'water of the state',
    })
    // Twice the water does not belong to the heads.
    expectInputError(() => flow.waterContent({ ...state, water: state.water.map((it) => litres(2 * it)) }), 'state')
    expectInputError(() => containerFlowRichards1931({ ...usual, base: 'Seepage' as 'seepage' }), 'base')
    expectInputError(() => containerFlowRichards1931({ ...usual, surface: 'rain' as 'shots' }), 'surface')
    const { roots: _, ...unplanted } = usual
    const bare = containerFlowRichards1931(unplanted)
    expectInputError(() => bare.step(state, { duration: hours(1), applied: NOTHING, demand: litres(0.1) }), 'demand')
    const held = containerFlowRichards1931({ ...usual, surface: centimetresOfSuction(10) })
    expectInputError(() => held.step(state, { duration: hours(1), applied: litres(1), demand: NOTHING }), 'applied')
  })
})

describe('times of drainage', () => {
  const shares = [0.1, 0.5, 0.9, 0.99].map((share) => fraction<DrainFraction>(share))
  const times = (conductivity: number, more = shares) =>
    drainageTimes({
      container: pot,
      medium: coir,
      saturatedConductivity: centimetresPerHour(conductivity),
      shares: more,
      nodes: 41,
    })
  it('rise with the share, from nothing for no share', () => {
    const [none, ...rest] = times(120, [fraction(0), ...shares])
    expect(none).toBe(0)
    for (let i = 1; i < rest.length; i++) expect(rest[i]).toBeGreaterThan(rest[i - 1]!)
  })
  it('are as much shorter as the medium conducts better', () => {
    const [slow, fast] = [times(60), times(180)]
    slow.forEach((time, i) => {
      expect(time / fast[i]!).toBeCloseTo(3, 6)
    })
  })
  it('are those of the same drainage followed step by step', () => {
    const flow = containerFlowRichards1931({ ...usual, nodes: 41 })
    const start = flow.startAt(() => centimetresOfSuction(0))
    const all = flow.waterContent(start) - flow.waterContent(flow.startAt((height) => centimetresOfSuction(height)))
    const [, half] = times(120)
    const [, { drained }] = flow.step(start, { duration: half as Duration, applied: NOTHING, demand: NOTHING })
    expect(drained / (all * pot.volume)).toBeCloseTo(0.5, 3)
  })
  it('refuses all of the drain, and shares that fall', () => {
    expectDomainError(() => times(120, [fraction(1)]), { quantity: 'share of the drain' })
    expectInputError(() => times(120, [fraction(0.5), fraction(0.2)]), 'shares')
  })
})
