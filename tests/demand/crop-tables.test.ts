import { tabledCropFao56, tabledCropNames, tabledStagesFao56 } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

describe('crop tables of FAO-56', () => {
  it('prints what Tables 12, 17 and 22 print', () => {
    expect(tabledCropFao56('tomato')).toMatchObject({ initialCoefficient: 0.6, middleBasal: 1.1, endBasal: [0.6, 0.8] })
    expect(tabledCropFao56('lettuce')).toMatchObject({ middleCoefficient: 1, depletionFraction: 0.3 })
    expect(tabledCropFao56('strawberry')).toMatchObject({ initialCoefficient: 0.4, middleCoefficient: 0.85 })
  })
  it('has the basal below the single coefficient and its ranges in order, for each crop', () => {
    for (const name of tabledCropNames()) {
      const crop = tabledCropFao56(name)
      expect(crop.middleBasal, name).toBeLessThanOrEqual(crop.middleCoefficient)
      for (const [low, high] of [crop.endCoefficient, crop.endBasal, crop.height, crop.rootDepth]) {
        expect(low, name).toBeLessThanOrEqual(high)
      }
      expect(crop.depletionFraction).toBeGreaterThan(0)
      expect(crop.depletionFraction).toBeLessThan(1)
    }
    expect(new Set(tabledCropNames()).size).toBe(57)
  })
  it('lists the stages of tomato at five places and refuses names it does not know', () => {
    expect(tabledStagesFao56('tomato')[0]).toMatchObject({ initial: [30, 30], development: [40, 40] })
    expectInputError(() => tabledCropFao56('tomatoe'), 'crop')
    expectInputError(() => tabledStagesFao56('tomatoe'), 'crop')
  })
})
