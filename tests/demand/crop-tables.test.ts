import {
  adjustedCropCoefficientFao56,
  coverFromCoefficient,
  cropCoefficient,
  metres,
  metresPerSecond,
  percent,
  type RelativeHumidity,
  tabledCropFao56,
  tabledCropNames,
  tabledStagesFao56,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

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
    expect(new Set(tabledCropNames()).size).toBe(63)
  })
  it('lists the stages of tomato at five places and refuses names it does not know', () => {
    expect(tabledStagesFao56('tomato')[0]).toMatchObject({ initial: [30, 30], development: [40, 40] })
    expectInputError(() => tabledCropFao56('tomatoe'), 'crop')
    expectInputError(() => tabledCropFao56('constructor'), 'crop')
    expectInputError(() => tabledStagesFao56('tomatoe'), 'crop')
  })
  it('holds every row that Table 11 (1998) prints of these crops: stages add up to the printed totals', () => {
    // Totals as printed, in the order of the table; a printed choice of mid-seasons gives the shorter one.
    const totals: Record<string, number[]> = {
      broccoli: [135],
      cabbage: [165],
      carrot: [100, 150, 200],
      cauliflower: [140],
      celery: [180, 125, 210],
      crucifers: [80, 95, 195],
      lettuce: [75, 105, 100, 140],
      'onion, dry': [150, 210],
      'onion, green': [70, 95, 180],
      'onion, seed': [275],
      spinach: [60, 100],
      radish: [35, 40],
      eggplant: [130, 140],
      'sweet pepper': [120, 210],
      tomato: [135, 155, 155, 180, 145],
      cantaloupe: [120, 120],
      cucumber: [105, 130],
      'pumpkin and winter squash': [100, 120],
      'squash, zucchini': [100, 90],
      'sweet melon': [120, 140, 135, 160],
      watermelon: [110, 80],
      'table beet': [70, 90],
      potato: [115, 130, 145, 165, 140],
      'sweet potato': [150, 125],
      'green bean': [90, 75],
      'dry bean and pulses': [110, 95, 100],
      pea: [90, 100, 110],
      'artichoke, first year': [360],
      'artichoke, second year': [325],
      asparagus: [230, 365],
      'banana, first year': [390],
      'banana, second year': [365],
      pineapple: [790],
      grapes: [240, 205, 180, 210],
      hops: [155],
      citrus: [365],
      'deciduous orchard': [210, 270, 240],
      olive: [270],
    }
    for (const [crop, printed] of Object.entries(totals)) {
      const got = tabledStagesFao56(crop).map((row) =>
        [row.initial, row.development, row.middle, row.late].reduce((sum, [least]) => sum + least, 0),
      )
      expect(got, crop).toEqual(printed)
    }
    // Every row is reached by a crop of the list of names.
    const reached = new Set(tabledCropNames().flatMap((name) => tabledStagesFao56(name).map((row) => row.crop)))
    expect([...reached].sort()).toEqual(Object.keys(totals).sort())
  })
  it('knows every crop of its list of names in both tables, and says where Table 11 prints no stages', () => {
    const without = tabledCropNames().filter((name) => tabledStagesFao56(name).length === 0)
    expect(without).toEqual([
      'garlic',
      'mint',
      'strawberry',
      'turf grass, cool season',
      'turf grass, warm season',
      'coffee, bare ground',
      'palm trees',
      'tea, non-shaded',
      'berries (bushes)',
      'avocado, bare ground',
      'kiwi',
      'conifer trees',
    ])
    for (const name of tabledCropNames()) expect(tabledCropFao56(name).crop).toBe(name)
    expect(tabledStagesFao56('cucumber, fresh market')).toEqual(tabledStagesFao56('cucumber'))
    expect(tabledStagesFao56('artichoke').map((row) => row.crop)).toEqual([
      'artichoke, first year',
      'artichoke, second year',
    ])
    expect(tabledCropFao56('pineapple').crop).toBe('pineapple, bare soil')
    expectInputError(() => tabledCropFao56('cucumber'), 'crop')
  })
  it('has rows for plants on supports (Tables 12 and 17, footnote 2: 1.15 and 1.10, or 1.20 and 1.15, from 1.5 to 2 m)', () => {
    for (const name of ['sweet pepper, on supports', 'cucumber, on supports', 'green bean, on supports']) {
      expect(tabledCropFao56(name)).toMatchObject({ middleCoefficient: 1.15, middleBasal: 1.1, height: [150, 200] })
    }
    for (const name of ['tomato, on supports', 'dry bean, on supports', 'pea, on supports']) {
      expect(tabledCropFao56(name)).toMatchObject({ middleCoefficient: 1.2, middleBasal: 1.15, height: [150, 200] })
    }
    const { crop, height, middleBasal, middleCoefficient, ...rest } = tabledCropFao56('tomato, on supports')
    expect(tabledCropFao56('tomato')).toMatchObject(rest)
  })
  it('moves no coefficient below 0.45 to another climate (FAO-56, Example 29: basal 1.10 becomes 1.14, 0.25 stays)', () => {
    const climate = {
      windSpeed: metresPerSecond(2.2),
      minHumidity: percent<RelativeHumidity>(30),
      height: metres(0.4),
    }
    const moved = (tabled: number) => adjustedCropCoefficientFao56({ ...climate, coefficient: cropCoefficient(tabled) })
    expect(moved(1.1)).toBeCloseTo(1.14, 2)
    expect(moved(0.25)).toBe(0.25)
    expect(moved(0.4499)).toBe(0.4499)
    expect(moved(0.45)).toBeGreaterThan(0.45)
    expectDomainError(
      () => adjustedCropCoefficientFao56({ ...climate, coefficient: cropCoefficient(0.2), windSpeed: -1 as never }),
      { quantity: 'wind speed at 2 m' },
    )
  })
  it('gives a cover of at most 0.99 (FAO-56, 1998, chapter 7: fc is limited to < 0.99; Eq. 76: 0 to 0.99)', () => {
    const cover = (basal: number) =>
      coverFromCoefficient({
        basalCoefficient: cropCoefficient(basal),
        maxCoefficient: cropCoefficient(1.2),
        height: metres(0.5),
      })
    expect(cover(1.2)).toBe(0.99)
    expect(cover(1.199)).toBe(0.99)
    expect(cover(1)).toBeLessThan(0.99)
  })
})
