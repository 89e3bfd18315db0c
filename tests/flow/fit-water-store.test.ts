import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type FlowStep,
  fitWaterStore,
  fitWaterStoreToFlow,
  fraction,
  hours,
  litres,
  minutes,
  perCentimetre,
  seconds,
  vanGenuchten1980,
  waterContent,
  waterStore,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

/** A day of shots, drawn at random, in steps of some minutes. */
function day(seed: number, volume: number): FlowStep[] {
  const { uniform } = randomNumbers(seed)
  const use = volume * (0.1 + 0.1 * uniform())
  const shots = 8 + Math.floor(8 * uniform())
  return Array.from({ length: shots }, (_, k) => {
    const size = (use / shots) * (k < 2 ? 0.6 : 1.1 + 0.6 * uniform())
    const demand = (time: number) => litres((use * time) / (shots * 60))
    return [
      { duration: minutes(4), applied: litres(size), demand: demand(4) },
      { duration: minutes(6), applied: litres(0), demand: demand(6) },
      { duration: minutes(20), applied: litres(0), demand: demand(20) },
      { duration: minutes(30), applied: litres(0), demand: demand(30) },
    ]
  }).flat()
}

describe('fitting the storage model', () => {
  it.each([
    [0.4, 0.195, 127, 466],
    [0.7, 0.2, 900, 5],
    [0.6, 0.05, 2500, 8],
  ])('finds the store that made the record: capacity %d, bypass %d, lag %d s', (capacity, bypass, lag, seed) => {
    const common = { substrateVolume: litres(10), minContent: waterContent(0.1) }
    const flow = waterStore({
      ...common,
      containerCapacity: waterContent(capacity),
      bypass: fraction(bypass),
      drainLag: seconds(lag),
    })
    const start = waterContent(capacity - 0.01)
    const { store, drainError } = fitWaterStoreToFlow({ ...common, flow, start, steps: day(seed, 10) })
    expect(store.containerCapacity).toBeCloseTo(capacity, 4)
    expect(store.bypass).toBeCloseTo(bypass, 3)
    expect(store.drainLag / lag).toBeCloseTo(1, 2)
    expect(drainError).toBeLessThan(1e-4)
  })
  it('stands for a simulated container on a day that it was not fitted to', () => {
    const container = boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) })
    const flow = containerFlowRichards1931({
      container,
      medium: vanGenuchten1980({
        residual: waterContent(0.15),
        saturated: waterContent(0.9),
        alpha: perCentimetre(0.12),
        n: 1.7,
      }),
      saturatedConductivity: centimetresPerHour(60),
      roots: {
        limits: {
          h1: centimetresOfSuction(0),
          h2: centimetresOfSuction(1),
          h3HighDemand: centimetresOfSuction(300),
          h3LowDemand: centimetresOfSuction(800),
          h4: centimetresOfSuction(8000),
          highDemand: 5 as never,
          lowDemand: 1 as never,
        },
      },
    })
    const start = waterContent(0.8)
    const common = { substrateVolume: container.volume, minContent: waterContent(0.16), start }
    const { store, told } = fitWaterStoreToFlow({ ...common, flow, steps: day(1, 15) })
    expect(told.containerCapacity.known).toBe(true)
    const totals = [flow, waterStore(store)].map((model) => {
      let [state, drained] = [model.start(start) as never, 0]
      for (const during of day(2, 15)) {
        const after = model.step(state, during)
        state = after.state as never
        drained += after.drained
      }
      return drained
    }) as [number, number]
    expect(Math.abs(totals[1] / totals[0] - 1)).toBeLessThan(0.2)
  })
  it('says what a record does not tell', () => {
    // All of the drain comes in one long step: any lag would do.
    const common = { substrateVolume: litres(10), minContent: waterContent(0.1), start: waterContent(0.6) }
    const steps = Array.from({ length: 6 }, () => ({ duration: hours(20), applied: litres(1), demand: litres(0) }))
    const { told } = fitWaterStore({ ...common, steps, drained: steps.map(() => litres(1)) })
    expect(told.drainLag.known).toBe(false)
  })
  it('refuses a record without drain and one that does not match', () => {
    const steps = day(1, 10)
    const common = { substrateVolume: litres(10), minContent: waterContent(0.1), start: waterContent(0.6), steps }
    expectInputError(() => fitWaterStore({ ...common, drained: steps.map(() => litres(0)) }), 'drained')
    expectInputError(() => fitWaterStore({ ...common, drained: [] }), 'drained')
    expectDomainError(() => fitWaterStore({ ...common, drained: steps.map(() => -1 as never) }), {
      quantity: 'drain of a step',
    })
  })
})
