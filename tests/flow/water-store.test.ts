import fc from 'fast-check'
import {
  fraction,
  litres,
  minutes,
  type StoreState,
  seconds,
  type Volume,
  type WaterStore,
  waterContent,
  waterStore,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const pot: WaterStore = {
  substrateVolume: litres(10),
  containerCapacity: waterContent(0.6),
  minWaterContent: waterContent(0.1),
  bypass: fraction(0.1),
  drainLag: minutes(10),
}

const amount = (most: number) => fc.double({ min: 0, max: most, noNaN: true }).map(litres)
const steps = fc.array(
  fc.record({
    duration: fc.double({ min: 1, max: 3600, noNaN: true }).map(seconds),
    applied: amount(2),
    demand: amount(1),
  }),
  { maxLength: 60 },
)

describe('the storage model of a container', () => {
  it('conserves water: applied = kept + drained + taken', () => {
    fc.assert(
      fc.property(steps, fc.double({ min: 0, max: 0.9, noNaN: true }), (during, start) => {
        const flow = waterStore(pot)
        let state = flow.startFrom(waterContent(start))
        let [applied, drained, taken] = [0, 0, 0]
        for (const step of during) {
          const [next, after] = flow.step(state, step)
          state = next
          applied += step.applied
          drained += after.drained
          taken += after.taken
        }
        expect(Math.abs(start * 10 + applied - drained - taken - state.held - state.draining)).toBeLessThan(
          1e-12 * (10 + applied),
        )
      }),
    )
  })
  it('never holds more than its capacity after a step, nor lets plants take it below the lowest content', () => {
    fc.assert(
      fc.property(steps, (during) => {
        const flow = waterStore(pot)
        let state = flow.startFrom(waterContent(0.5))
        for (const step of during) {
          const [next, after] = flow.step(state, step)
          expect(after.drained).toBeGreaterThanOrEqual(0)
          expect(after.taken).toBeLessThanOrEqual(step.demand)
          state = next
          expect(flow.waterContent(state)).toBeLessThanOrEqual(0.6 + 1e-12)
          expect(flow.waterContent(state)).toBeGreaterThanOrEqual(0.1 - 1e-12)
        }
      }),
    )
  })
  it('can be kept as JSON and taken up again at any step', () => {
    fc.assert(
      fc.property(steps, (during) => {
        const flow = waterStore(pot)
        let straight: StoreState = flow.startFrom(waterContent(0.55))
        let restored: StoreState = straight
        for (const step of during) {
          straight = flow.step(straight, step)[0]
          restored = flow.step(JSON.parse(JSON.stringify(restored)) as StoreState, step)[0]
        }
        expect(restored).toEqual(straight)
      }),
    )
  })
  it('drains 63 % of what is on its way in one lag (linear reservoir, Nash 1957)', () => {
    const flow = waterStore({ ...pot, bypass: fraction(0) })
    const [, { drained }] = flow.step(
      { held: litres(6), draining: litres(1) },
      { duration: minutes(10), applied: litres(0), demand: litres(0) },
    )
    expect(drained).toBeCloseTo(1 - 1 / Math.E, 14)
  })
  it('gives the same after one long step as after many short ones, when nothing is applied or taken', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 50 }), fc.double({ min: 0, max: 3, noNaN: true }), (n, draining) => {
        const flow = waterStore(pot)
        const none = { applied: 0 as Volume, demand: 0 as Volume }
        const start = { held: litres(5), draining: litres(draining) }
        let state: StoreState = start
        for (let i = 0; i < n; i++) state = flow.step(state, { duration: seconds(3600 / n), ...none })[0]
        expect(state.draining).toBeCloseTo(flow.step(start, { duration: seconds(3600), ...none })[0].draining, 12)
      }),
    )
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => waterStore({ ...pot, substrateVolume: litres(0) }), { argument: 'substrateVolume' })
    expectDomainError(() => waterStore({ ...pot, bypass: 1.2 as never }), { quantity: 'bypass share' })
    expectInputError(() => waterStore({ ...pot, minWaterContent: waterContent(0.6) }), 'minWaterContent')
    const flow = waterStore(pot)
    const state = flow.startFrom(waterContent(0.5))
    expectDomainError(() => flow.step(state, { duration: seconds(0), applied: litres(0), demand: litres(0) }), {
      quantity: 'duration of the step',
    })
    expectDomainError(
      () => flow.step(state, { duration: seconds(60), applied: Number.NaN as never, demand: litres(0) }),
      { quantity: 'water given' },
    )
    expectDomainError(() => flow.step(state, { duration: seconds(60), applied: litres(0), demand: -1 as never }), {
      quantity: 'water use',
      argument: 'demand',
    })
  })
})
