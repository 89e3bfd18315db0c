import {
  propagateFirstOrder,
  propagateMonteCarlo,
  type WaterContent,
  waterContent,
  waterContentTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

type Values = Record<string, number>

/** Draws whose results are these, whatever the inputs: what is said of them can be counted by hand. */
function resultsOf(list: readonly (number | 'refused')[], confidence = 0.95) {
  let next = 0
  return propagateMonteCarlo<Values>({
    inputs: { x: { estimate: 0, standardUncertainty: 1 } },
    of: () => {
      const result = list[next++]!
      return result === 'refused' ? waterContent(-1) : result
    },
    draws: list.length,
    confidence,
    seed: 1,
  })
}
const counted = (n: number, of: (i: number) => number) => Array.from({ length: n }, (_, i) => of(i))
/** All of them, but not in order. */
const shuffled = (list: readonly number[]) => list.map((_, i) => list[(i * 389) % list.length]!)

describe('what is said of drawn results', () => {
  it('is their mean, their median and their standard deviation', () => {
    // 0 to n - 1: the mean is (n - 1)/2 and the squares about it sum to n (n² - 1)/12.
    for (const n of [1000, 1001]) {
      const said = resultsOf(shuffled(counted(n, (i) => i)))
      expect(said.mean).toBeCloseTo((n - 1) / 2, 9)
      expect(said.median).toBe((n - 1) / 2)
      expect(said.standardUncertainty).toBeCloseTo(Math.sqrt((n * (n * n - 1)) / 12 / (n - 1)), 9)
    }
  })
  // JCGM 101:2008, 7.7 [from memory]: the interval holds q = pM of the M steps between ordered results, and as many lie above as below.
  it.each([
    [1000, 0.95],
    [1000, 0.9],
    [1001, 0.95],
    [1003, 0.683],
  ])('is the interval that leaves as many above as below: %i at %d', (n, p) => {
    const { interval } = resultsOf(shuffled(counted(n, (i) => i)), p)
    expect(interval.high - interval.low).toBe(Math.round(p * n))
    expect(Math.abs(interval.low - (n - 1 - interval.high))).toBeLessThanOrEqual(1)
  })
  it.each([
    ['at the lower end', (i: number) => i * i],
    ['at the upper end', (i: number) => -((999 - i) ** 2)],
    ['inside', (i: number) => (i - 490) ** 3],
  ] as const)('is the shortest interval that holds as many, %s', (_, of) => {
    const values = counted(1000, of)
    const { shortest } = resultsOf(shuffled(values))
    const widths = counted(50, (i) => values[i + 950]! - values[i]!)
    expect(shortest.high - shortest.low).toBe(Math.min(...widths))
    expect(values.indexOf(shortest.high) - values.indexOf(shortest.low)).toBe(950)
  })
  it('ends at the last result where the interval is all of them', () => {
    expect(
      resultsOf(
        counted(1000, (i) => i),
        0.9999,
      ),
    ).toMatchObject({
      interval: { low: 0, high: 999 },
      shortest: { low: 0, high: 999 },
    })
  })
  it('leaves out what was refused, says how many, and gives up beyond a half', () => {
    const refusing = (k: number) => counted(1000, (i) => i).map((i) => (i < k ? 'refused' : i))
    expect(resultsOf(refusing(0)).findings).toEqual([])
    // A hundredth is a note, more a caution.
    for (const [k, level] of [
      [1, 'note'],
      [10, 'note'],
      [11, 'caution'],
      [500, 'caution'],
    ] as const) {
      const said = resultsOf(refusing(k))
      expect(said).toMatchObject({ draws: 1000 - k, refused: k, mean: expect.closeTo((k + 999) / 2, 9) })
      expect(said.findings).toEqual([
        { code: 'draws-refused', level, about: 'draws', value: k, limit: 1000, unit: '1' },
      ])
    }
    expectInputError(() => resultsOf(refusing(501)), 'inputs')
  })
  it('takes results without an end as refused', () => {
    const list = counted(1000, (i) => i).map((i) => (i < 2 ? [Number.POSITIVE_INFINITY, Number.NaN][i]! : i))
    expect(resultsOf(list)).toMatchObject({ draws: 998, refused: 2 })
  })
})

describe('draws of correlated inputs', () => {
  it('have the mean, spread and correlation that were asked for', () => {
    const moment = (of: (v: Values) => number) =>
      propagateMonteCarlo<Values>({
        inputs: { x: { estimate: 3, standardUncertainty: 2 }, y: { estimate: -1, standardUncertainty: 0.5 } },
        correlations: [{ between: ['y', 'x'], coefficient: 0.6 }],
        of,
        seed: 3,
        draws: 100000,
      })
    expect(moment((v) => v.y!).standardUncertainty).toBeCloseTo(0.5, 2)
    expect(moment((v) => v.x!).mean).toBeCloseTo(3, 1)
    expect(moment((v) => (v.x! - 3) * (v.y! + 1)).mean).toBeCloseTo(0.6 * 2 * 0.5, 1)
  })
  it('may have any spread where the correlation is none', () => {
    const inputs = {
      x: { estimate: 0, standardUncertainty: 1, spread: 'rectangular' },
      y: { estimate: 0, standardUncertainty: 1 },
    } as const
    const correlations = [{ between: ['x', 'y'], coefficient: 0 }] as const
    const { shortest } = propagateMonteCarlo<Values>({ inputs, correlations, of: (v) => v.x!, seed: 1, draws: 1000 })
    expect(shortest.high).toBeLessThanOrEqual(Math.sqrt(3))
  })
})

describe('slopes', () => {
  const contributionOf = (of: (x: number) => number, estimate: number, standardUncertainty: number) =>
    propagateFirstOrder<Values>({ inputs: { x: { estimate, standardUncertainty } }, of: (v) => of(v.x!) })
  it('are exact for a cubic, from both sides, however large the uncertainty', () => {
    // d/dx (x³ - 2 x² + x) = 3 x² - 4 x + 1
    for (const [x, u] of [
      [3, 2],
      [-2, 5],
      [0, 1],
    ] as const)
      expect(contributionOf((v) => v ** 3 - 2 * v * v + v, x, u).budget[0]!.sensitivity).toBeCloseTo(
        3 * x * x - 4 * x + 1,
        10,
      )
  })
  it('are exact for a parabola from one side, at either end of a range', () => {
    const inside = (of: (w: number) => number) => (x: number) => of(waterContent(x))
    const parabola = inside((w) => 5 * w * w + w)
    expect(contributionOf(parabola, 0, 0.5)).toMatchObject({ standardUncertainty: expect.closeTo(0.5, 10) })
    expect(contributionOf(parabola, 1, 0.5)).toMatchObject({ standardUncertainty: expect.closeTo(5.5, 10) })
    expect(contributionOf(parabola, 1, 0.5).findings).toEqual([
      { code: 'input-near-its-end', level: 'caution', about: 'x' },
    ])
  })
  it('of an exact input are those at its estimate', () => {
    expect(contributionOf((v) => v * v, 1000, 0).budget[0]).toMatchObject({
      sensitivity: expect.closeTo(2000, 4),
      contribution: 0,
      share: 0,
    })
    expect(contributionOf((v) => v * v + 3 * v, 0, 0).budget[0]!.sensitivity).toBeCloseTo(3, 6)
  })
  it('that bend by a tenth of the standard uncertainty are said to bend, with by how much', () => {
    // f = x + b x² at 0 with u = 1: the slope is 1, the bend b.
    for (const b of [0.0999, 0.1001, -0.1001]) {
      const { findings, standardUncertainty } = contributionOf((x) => x + b * x * x, 0, 1)
      expect(standardUncertainty).toBeCloseTo(1, 10)
      const bent = [
        { code: 'not-straight', level: 'caution', about: 'x', unit: 'result', value: expect.closeTo(b, 12) },
      ]
      expect(findings).toEqual(Math.abs(b) > 0.1 ? bent : [])
    }
  })
  it('come in the order of what they bring, whatever their sign', () => {
    const { budget, degreesOfFreedom, findings } = propagateFirstOrder<Values>({
      inputs: {
        small: { estimate: 0, standardUncertainty: 1 },
        large: { estimate: 0, standardUncertainty: 3 },
        against: { estimate: 0, standardUncertainty: 2 },
      },
      of: (v) => v.small! + v.large! - v.against!,
      correlations: [{ between: ['large', 'against'], coefficient: 0.9 }],
    })
    // Variance 1 + 9 + 4 - 2 × 5.4 = 3.2: shares 1/3.2, (9 - 5.4)/3.2 and (4 - 5.4)/3.2.
    expect(budget.map(({ input, share }) => [input, share])).toEqual([
      ['large', expect.closeTo(1.125, 10)],
      ['against', expect.closeTo(-0.4375, 10)],
      ['small', expect.closeTo(0.3125, 10)],
    ])
    expect(degreesOfFreedom).toBeUndefined()
    expect(findings).toEqual([])
  })
  it('belong to the input that is named, where a function takes several', () => {
    const { value, budget } = propagateFirstOrder<{ e: never; offset: WaterContent }>({
      inputs: {
        e: { estimate: 20 as never, standardUncertainty: 0 },
        offset: { estimate: 0.1 as never, standardUncertainty: 0.02 },
      },
      of: ({ e, offset }) => waterContentTopp1980(e) - offset,
    })
    expect(value).toBeCloseTo(waterContentTopp1980(20 as never) - 0.1, 12)
    expect(budget[0]).toMatchObject({ input: 'offset', share: 1, sensitivity: expect.closeTo(-1, 9) })
  })
})

describe('correlations', () => {
  const first = (correlations: readonly object[]) => () =>
    propagateFirstOrder<Values>({
      inputs: { a: { estimate: 1, standardUncertainty: 1 }, b: { estimate: 1, standardUncertainty: 1 } },
      of: (v) => v.a! + v.b!,
      correlations: correlations as never,
    })
  it('that name one input, or none, are refused', () => {
    for (const between of [[], ['a'], ['b', 'x'], ['x', 'a'], ['b', 'b']])
      expectInputError(first([{ between, coefficient: 0.1 }]), 'correlations')
  })
  it('may be complete, either way', () => {
    const u = (coefficient: number) => first([{ between: ['a', 'b'], coefficient }])().standardUncertainty
    expect(u(1)).toBeCloseTo(2, 12)
    expect(u(-1)).toBeCloseTo(0, 12)
    expect(u(0)).toBeCloseTo(Math.SQRT2, 12)
  })
})

describe('faults of the function itself', () => {
  /** A function with a fault that shows only away from the estimates. */
  const broken = (v: Values) => {
    if (v.x !== 1) throw new RangeError('a fault')
    return 1
  }
  it('are not taken for a refusal', () => {
    const inputs = { x: { estimate: 1, standardUncertainty: 0.1 } }
    expect(() => propagateFirstOrder<Values>({ inputs, of: broken })).toThrow(RangeError)
    expect(() => propagateMonteCarlo<Values>({ inputs, of: broken, seed: 1, draws: 1000 })).toThrow(RangeError)
  })
})

describe('an input far from zero that is exact', () => {
  it('has the slope of its own size', () => {
    const inputs = { x: { estimate: 1e8, standardUncertainty: 0 } }
    const { budget } = propagateFirstOrder<Values>({ inputs, of: (v) => v.x! * v.x! })
    expect(budget[0]!.sensitivity / 2e8).toBeCloseTo(1, 6)
  })
  it('leaves the degrees of freedom of one of two correlated inputs a guide', () => {
    const inputs = {
      a: { estimate: 0, standardUncertainty: 1, degreesOfFreedom: 5 },
      b: { estimate: 0, standardUncertainty: 1 },
    }
    const correlations = [{ between: ['a', 'b'], coefficient: 0.5 }] as const
    const { findings } = propagateFirstOrder<Values>({ inputs, correlations, of: (v) => v.a! + v.b! })
    expect(findings).toEqual([{ code: 'correlated-degrees-of-freedom', level: 'note', about: 'degreesOfFreedom' }])
  })
})
