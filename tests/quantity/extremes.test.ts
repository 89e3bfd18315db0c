import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { maxOf, minOf } from '../../src/quantity/extremes.js'

describe('the least and the greatest of a list', () => {
  it('are the ends of the sorted list', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ noNaN: true, noDefaultInfinity: true }), { minLength: 1 }), (list) => {
        const sorted = [...list].sort((a, b) => a - b)
        // Zero and minus zero sort as one.
        expect(minOf(list) + 0).toBe(sorted[0]! + 0)
        expect(maxOf(list) + 0).toBe(sorted.at(-1)! + 0)
      }),
    )
  })
  it('are infinite for none, and NaN where a number is missing', () => {
    expect([minOf([]), maxOf([])]).toEqual([Infinity, -Infinity])
    expect([minOf([1, NaN, 2]), maxOf([1, NaN, 2])]).toEqual([NaN, NaN])
  })
})
