import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rootMeanSquare } from '../../src/flow/inverse/medium-findings.js'
import { saltOutcome } from '../../src/flow/salt/salt-account.js'

const amount = fc.double({ min: 0, max: 1e4, noNaN: true })

describe('the account of salt', () => {
  it('gives and drains alike what runs past the medium, with the concentration of the feed', () => {
    fc.assert(
      fc.property(amount, amount, (past, feed) => {
        const nothing = { given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: 0 }
        const { given, drained } = saltOutcome(nothing as never, past, feed, 0)
        expect(given).toBeCloseTo((past * feed) / 1000, 9)
        expect(drained).toBe(given)
      }),
    )
  })
  it('adds it to what went into the medium and what came out of it', () => {
    const passed = { given: 3000, drained: 1500, taken: 200, runOff: 100, fromBelow: 500 }
    expect(saltOutcome(passed as never, 2, 1000, 4)).toMatchObject({ given: 5, drained: 3, taken: 0.2, ranOff: 0.1 })
  })
})

describe('the root of the mean square', () => {
  it('is the length of a vector over the root of its dimension, and zero of nothing', () => {
    expect(rootMeanSquare(Float64Array.of(3, 4))).toBeCloseTo(5 / Math.SQRT2, 12)
    expect(rootMeanSquare(Float64Array.of(-2))).toBe(2)
    expect(rootMeanSquare(new Float64Array(0))).toBe(0)
  })
})
