import { readFileSync } from 'node:fs'
import {
  inMetres,
  tabledCoverFao56,
  tabledCropFao56,
  tabledSoilFao56,
  tabledStagesFao56,
  tabledWettedShareFao56,
  type WettingMethod,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/** A second transcription of FAO-56 (1998), made apart from the one in the code: a slip of the finger in either shows. */
const tables = JSON.parse(readFileSync(new URL('../fixtures/fao56-tables.json', import.meta.url), 'utf8')) as {
  readonly crops: readonly (readonly [string, ...number[]])[]
  readonly stages: readonly (readonly [string, Days, Days, Days, Days, string])[]
  readonly soils: readonly (readonly [string, ...number[]])[]
  readonly wetted: readonly (readonly [WettingMethod, number, number])[]
}
type Days = number | readonly number[]
const asPair = (days: Days): readonly number[] => (typeof days === 'number' ? [days, days] : days)
const named = (rows: readonly (readonly [string, ...number[]])[]) =>
  rows.map(([name, ...printed]) => ({ name, printed }))

describe('every cell of the tables of FAO-56 (1998)', () => {
  it.each(named(tables.crops))('Tables 12, 17 and 22: $name', ({ name, printed }) => {
    const crop = tabledCropFao56(name)
    const got = [
      crop.initialCoefficient,
      crop.middleCoefficient,
      ...crop.endCoefficient,
      crop.initialBasal,
      crop.middleBasal,
      ...crop.endBasal,
      ...[...crop.height, ...crop.rootDepth].map((length) => Number(inMetres(length).toPrecision(12))),
      crop.depletionFraction,
    ]
    expect(got).toEqual(printed)
  })
  // Footnotes of Tables 12 and 17: on stalks of 1.5 to 2 m the coefficient of the middle is higher, and only it and the height.
  it.each([
    ['sweet pepper', 'sweet pepper', 1.15, 1.1],
    ['cucumber', 'cucumber, fresh market', 1.15, 1.1],
    ['green bean', 'green bean', 1.15, 1.1],
    ['tomato', 'tomato', 1.2, 1.15],
    ['dry bean', 'dry bean and pulses', 1.2, 1.15],
    ['pea', 'pea, fresh', 1.2, 1.15],
  ])('%s on supports', (name, plainName, middleCoefficient, middleBasal) => {
    const plain = tabledCropFao56(plainName)
    const tall = tabledCropFao56(`${name}, on supports`)
    expect(tall).toEqual({ ...plain, crop: tall.crop, middleCoefficient, middleBasal, height: [150, 200] })
  })
  // Stages and the printed total of the rows that the second transcription left out; from memory of the table, and the totals agree.
  it.each([
    ['cabbage', 40, 60, 50, 15, 165],
    ['carrot', 30, 50, 90, 30, 200],
    ['cauliflower', 35, 50, 40, 15, 140],
    ['celery', 25, 40, 95, 20, 180],
    ['celery', 25, 40, 45, 15, 125],
    ['celery', 30, 55, 105, 20, 210],
    ['crucifers', 20, 30, 20, 10, 80],
    ['crucifers', 25, 35, 25, 10, 95],
    ['crucifers', 30, 35, 90, 40, 195],
    ['onion, green', 25, 30, 10, 5, 70],
    ['onion, green', 20, 45, 20, 10, 95],
    ['onion, green', 30, 55, 55, 40, 180],
    ['onion, seed', 20, 45, 165, 45, 275],
    ['potato', 25, 30, 45, 30, 130],
    ['potato', 45, 30, 70, 20, 165],
    ['potato', 30, 35, 50, 25, 140],
    ['sweet potato', 20, 30, 60, 40, 150],
    ['sweet potato', 15, 30, 50, 30, 125],
    ['dry bean and pulses', 15, 25, 35, 20, 95],
    ['pea', 35, 25, 30, 20, 110],
  ])('Table 11: %s of %i, %i, %i and %i days', (crop, ...printed) => {
    const total = printed.pop()!
    const rows = tabledStagesFao56(crop).map((row) => [row.initial, row.development, row.middle, row.late])
    expect(rows).toContainEqual(printed.map(asPair))
    expect(printed.reduce((a, b) => a + b)).toBe(total)
  })
  it('Table 21: cover at the beginning and end of each stage', () => {
    const printed = { initial: [0, 0.1], development: [0.1, 0.8], 'mid-season': [0.8, 1], 'late-season': [0.8, 0.2] }
    for (const [stage, cover] of Object.entries(printed)) expect(tabledCoverFao56(stage as 'initial')).toEqual(cover)
  })
  it('Table 11: the stages of each crop at each place', () => {
    expect(tables.stages.length).toBe(69)
    for (const [crop, ...printed] of tables.stages) {
      const rows = tabledStagesFao56(crop).map((row) => [
        row.initial,
        row.development,
        row.middle,
        row.late,
        row.region,
      ])
      expect(rows, crop).toContainEqual(printed.map((cell) => (typeof cell === 'string' ? cell : asPair(cell))))
    }
  })
  it.each(named(tables.soils))('Table 19: $name', ({ name, printed }) => {
    const { soil, ...ranges } = tabledSoilFao56(name)
    expect(Object.values(ranges).flat()).toEqual(printed)
  })
  it.each(tables.wetted)('Table 20: %s', (wetting, min, max) => {
    expect(tabledWettedShareFao56(wetting)).toEqual([min, max])
  })
})
