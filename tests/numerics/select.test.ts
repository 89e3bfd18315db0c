import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { medianInPlace, selectInPlace } from '../../src/numerics/select.js'

// Few values, so that many are equal, and any at all.
const lists = fc.array(fc.oneof(fc.integer({ min: -3, max: 3 }), fc.double({ noNaN: true })), {
  minLength: 1,
  maxLength: 40,
})

describe('the k-th smallest', () => {
  it('is the one of the sorted list, with none larger before it and none smaller behind it', () => {
    fc.assert(
      fc.property(lists, fc.nat(), (list, place) => {
        const k = place % list.length
        const values = Float64Array.from(list)
        const sorted = Float64Array.from(list).sort()
        // Which of two zeros it is does not matter.
        expect(selectInPlace(values, k) + 0).toBe(sorted[k]! + 0)
        expect(values.slice(0, k).every((value) => value <= values[k]!)).toBe(true)
        expect(values.slice(k).every((value) => value >= values[k]!)).toBe(true)
        expect(values.sort()).toEqual(sorted)
      }),
    )
  })
  it('leaves what stands behind the end alone', () => {
    const values = Float64Array.of(5, 3, 4, -1)
    expect(selectInPlace(values, 0, 3)).toBe(3)
    expect(values[3]).toBe(-1)
  })
})

describe('the median', () => {
  it('is the middle of the sorted list, or the mean of the two in the middle', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 40 }), (list) => {
        const sorted = [...list].sort((a, b) => a - b)
        const half = list.length >> 1
        const middle = list.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
        expect(medianInPlace(Float64Array.from(list)) + 0).toBe(middle + 0)
      }),
    )
  })
  it('takes the first numbers only', () => {
    expect(medianInPlace(Float64Array.of(4, 2, 100, 200), 2)).toBe(3)
    expect(medianInPlace(Float64Array.of(4, 2, 9, 200), 3)).toBe(4)
  })
})
