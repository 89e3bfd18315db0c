import fc from 'fast-check'
import { type DailyUseInput, dailyUse, millimetresPerDay, plantsPerSquareMetre } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

describe('water for a plant, a container and an emitter', () => {
  it('gives all the water of a square metre to its containers and emitters', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 15, noNaN: true }),
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        fc.integer({ min: 1, max: 20 }),
        fc.integer({ min: 1, max: 8 }),
        (et, density, plants, emitters) => {
          const use = dailyUse({
            cropET: millimetresPerDay(et),
            plantDensity: plantsPerSquareMetre(density),
            plantsPerContainer: plants,
            emittersPerContainer: emitters,
          })
          expect((use.perEmitter * emitters * density) / plants).toBeCloseTo(et, 9)
        },
      ),
    )
  })
  it('refuses half a plant and no emitter', () => {
    const good: DailyUseInput = { cropET: millimetresPerDay(4), plantDensity: plantsPerSquareMetre(2) }
    expectDomainError(() => dailyUse({ ...good, plantsPerContainer: 1.5 }), {})
    expectDomainError(() => dailyUse({ ...good, emittersPerContainer: 0 }), {})
    expectDomainError(() => dailyUse({ ...good, cropET: Number.NaN as never }), {})
  })
})
