import { describe, expect, it } from 'vitest'
import type { SoughtNumber } from '../../src/flow/inverse/medium-numbers.js'
import type { MediumProblem } from '../../src/flow/inverse/medium-problem.js'
import { searchMedium } from '../../src/flow/inverse/search-medium.js'
import { quickDrain, type StoreNumbers } from '../../src/flow/store/quick-drain.js'
import { bestCapacity } from '../../src/flow/store/search-store.js'

const number = (logarithmic: boolean, more: Partial<SoughtNumber> = {}): SoughtNumber => {
  return { name: 'alpha', unit: '1/cm', logarithmic, above: 0, guess: 0, low: -5, high: 5, move: 1e-4, ...more }
}

/** Looks for where a height is least; the places that are tried are kept. */
function problemOf(
  sought: readonly SoughtNumber[],
  residuals: (place: readonly number[]) => readonly number[],
): { problem: MediumProblem; tried: number[][] } {
  const tried: number[][] = []
  const problem = {
    sought,
    lower: sought.map(({ low }) => low),
    upper: sought.map(({ high }) => high),
    count: residuals(sought.map(({ guess }) => guess)).length,
    settled: 1e-12,
    residuals: (place: readonly number[], out: Float64Array) => {
      tried.push([...place])
      out.set(residuals(place))
    },
  } as unknown as MediumProblem
  return { problem, tried }
}

describe('the search for a medium', () => {
  it('tries half and double of all that is sought by its logarithm, within its ends', () => {
    const sought = [number(true), number(false, { guess: 0.3 }), number(true, { guess: 1, low: 0.5, high: 1.2 })]
    const { problem, tried } = problemOf(sought, (place) => place)
    searchMedium(problem)
    const places = [-0.7, 0, 0.7].flatMap((first) => [0.5, 1, 1.2].map((third) => [first, 0.3, third]))
    expect(tried.slice(0, 9)).toEqual(places)
  })
  it('ends in the deeper of the valleys that begin at the two best trials', () => {
    // Valleys at -0.6 and 0.6 with floors of one and of a half, or the other way round; the deeper is steeper, and its trial the worse.
    const valley = (deep: number) => {
      const { problem } = problemOf([number(true)], ([x]) => [
        (x! - 0.6) * (x! + 0.6) * (x! * deep > 0 ? 8 : 3),
        x! * deep > 0 ? Math.SQRT1_2 : 1,
      ])
      return searchMedium(problem)
    }
    for (const deep of [-1, 1]) {
      const { parameters, sumOfSquares } = valley(deep)
      expect(parameters[0]).toBeCloseTo(0.6 * deep, 6)
      expect(sumOfSquares).toBeCloseTo(0.5, 10)
    }
  })
  it('begins at the two best trials', () => {
    // A straight line to zero from two of them, and a plain above it.
    const { problem, tried } = problemOf([number(true)], ([x]) => (x! > 0.5 ? [3, 1] : [1, x!]))
    expect(searchMedium(problem).parameters[0]).toBeCloseTo(0, 8)
    expect(tried.filter(([x]) => x! > 0.6)).toEqual([[0.7]])
  })
  it('passes over trials that cannot be simulated, and says so where none can be', () => {
    const only = (possible: (x: number) => boolean) =>
      searchMedium(problemOf([number(true)], ([x]) => [possible(x!) ? 1 + (x! - 0.65) ** 2 : Number.NaN]).problem)
    expect(only((x) => x > 0.5).parameters[0]).toBeCloseTo(0.65, 3)
    expect(() => only(() => false)).toThrow('simulating the guess')
    expect(() => only(() => false)).toThrow(expect.objectContaining({ code: 'no-convergence', iterations: 0 }))
  })
  it('fails only where no search ends', () => {
    // A search never comes to rest on a residual that is a thousandth less each time it is asked for.
    const restless = (to: number) => {
      let asked = 0
      return problemOf([number(true, { low: -1e4 })], ([x]) => [x! > to ? x! - 0.9 : 5 * 0.999 ** ++asked]).problem
    }
    expect(searchMedium(restless(0.5)).parameters[0]).toBeCloseTo(0.9, 6)
    expect(() => searchMedium(restless(9))).toThrow(expect.objectContaining({ method: 'least squares' }))
  })
})

describe('the capacity of least squares', () => {
  // Ten litres that hold five, and get three.
  const record = (drained: readonly number[], more: object = {}) =>
    ({
      substrateVolume: 10,
      minWaterContent: 0.1,
      start: 0.5,
      steps: drained.map((_, k) => ({ duration: 60, applied: k === 0 ? 3 : 0, demand: 0 })),
      drained,
      ...more,
    }) as never
  const best = (of: never, range: readonly [number, number], pair: readonly [number, number], rounds = 1) =>
    bestCapacity(of, quickDrain(of) as (at: StoreNumbers) => Float64Array, range, pair, rounds)
  it('is that of which all overflows that was caught', () => {
    // Two of eight litres, the last of them long after: six stay.
    const caught = record([2, 0])
    expect(best(caught, [0.5, 0.8], [0, 0])).toBeCloseTo(0.6, 12)
    expect(best(caught, [0.65, 0.8], [0, 0])).toBe(0.65)
    expect(best(caught, [0.5, 0.58], [0, 0])).toBeCloseTo(0.58, 12)
    expect(best(caught, [0.7, 0.7], [0, 0])).toBe(0.7)
  })
  it('is looked for in as many rounds as told, of two drains each', () => {
    const of = record([2, 0])
    const drain = quickDrain(of)
    for (const rounds of [1, 2]) {
      let asked = 0
      bestCapacity(
        of,
        (at) => {
          asked++
          return drain(at)
        },
        [0.5, 0.8],
        [0, 0],
        rounds,
      )
      expect(asked).toBe(2 * rounds)
    }
  })
  it('is the lowest where it changes nothing', () => {
    // All runs past, and the store never fills.
    expect(best(record([2, 1]), [0.6, 0.8], [1, 3])).toBe(0.6)
    expect(best(record([0, 0]), [0.85, 0.9], [0, 3], 2)).toBe(0.85)
  })
})
