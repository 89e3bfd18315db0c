import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { findingsOfFit } from '../../src/flow/inverse/medium-findings.js'
import { guessedValues, numberAt, soughtNumbers } from '../../src/flow/inverse/medium-numbers.js'
import type { MediumNumber, MediumRecord } from '../../src/flow/inverse/medium-record.js'
import { toldBySearch } from '../../src/flow/inverse/told-by-search.js'
import { quickDrain, type StoreNumbers } from '../../src/flow/store/quick-drain.js'
import { capacitiesAt, minCapacity, possibleOnsets, waterContentsUnfilled } from '../../src/flow/store/store-onsets.js'
import type { StoreRecord } from '../../src/flow/store/store-record.js'
import { toldByRecord } from '../../src/flow/store/told-by-record.js'
import { centimetresPerHour, litres, minutes, perCentimetre, waterContent } from '../../src/quantity/index.js'

const guess = {
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.05),
  n: 1.8,
  saturatedConductivity: centimetresPerHour(50),
}
const recordOf = (more: object) => ({ guess, fit: [], ...more }) as unknown as MediumRecord
const sought = (fit: readonly MediumNumber[], more: object = {}) => {
  const record = recordOf({ fit, ...more })
  return soughtNumbers(record, guessedValues(record))
}

describe('the numbers that a fit seeks', () => {
  it('have the ends in which they are looked for', () => {
    const all: MediumNumber[] = ['residual', 'saturated', 'alpha', 'n', 'poreConnection', 'saturatedConductivity']
    const rest: MediumNumber[] = ['bypass', 'start', 'probeOffset']
    const numbers = sought([...all, ...rest], { start: waterContent(0.7), probe: {} })
    const ends = numbers.map((number) => [
      number.name,
      number.unit,
      ...[number.low, number.guess, number.high].map((place) => Number(numberAt(number, place).toPrecision(9))),
    ])
    // Saturated and residual keep 0.02 apart, half-way between the guesses; alpha goes to a hundredth and the hundredfold, the conductivity
    // to a thousandth and the thousandfold, n - 1 from 0.05 to 11, the start 0.2 either way.
    expect(ends).toEqual([
      ['residual', 'm³/m³', 0, 0.1, 0.49],
      ['saturated', 'm³/m³', 0.51, 0.9, 1],
      ['alpha', '1/cm', 0.0005, 0.05, 5],
      ['n', '1', 1.05, 1.8, 12],
      ['poreConnection', '1', -1.99, 0.5, 10],
      ['saturatedConductivity', 'cm/h', 0.05, 50, 50000],
      ['bypass', '1', 0, 0, 1],
      ['start', 'm³/m³', 0.5, 0.7, 0.9],
      ['probeOffset', 'm³/m³', -0.3, 0, 0.3],
    ])
  })
  it('come in one order, however they are named, and each once', () => {
    expect(sought(['n', 'residual', 'n']).map(({ name }) => name)).toEqual(['residual', 'n'])
  })
  it('reach as far as their guess where that lies beyond the usual', () => {
    const wide = (n: number) => sought(['n'], { guess: { ...guess, n } })[0]!
    expect(numberAt(wide(1.01), wide(1.01).low)).toBeCloseTo(1.01, 10)
    expect(numberAt(wide(20), wide(20).high)).toBeCloseTo(20, 10)
    const near = (start: number) => sought(['start'], { start })[0]!
    expect([near(0.1).low, near(0.95).high]).toEqual([0, 1])
    const close = sought(['residual'], { guess: { ...guess, residual: waterContent(0.895) } })[0]!
    expect(close.guess).toBeCloseTo(0.8875, 12)
  })
  it('are refused where there is nothing to tell them', () => {
    expect(() => sought([])).toThrow(/names nothing/)
    expect(() => sought(['start'])).toThrow(/start/)
    expect(() => sought(['probeOffset'])).toThrow(/no probe/)
    expect(() => sought(['suction' as MediumNumber])).toThrow(/fit/)
  })
})

describe('what to mind of a fit', () => {
  const numbers = sought(['alpha', 'n', 'saturatedConductivity'])
  const upright = [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ]
  /** Differences in uncertainties, of drains and of readings. */
  const found = (drain: readonly number[], probe: readonly number[], correlation: readonly number[][] = upright) => {
    const steps = (list: readonly number[]) => ({ steps: list.map((_, i) => i), values: [], uncertainty: 1 })
    const differences = Float64Array.of(...drain, ...probe, 99)
    return findingsOfFit({ sought: numbers, drain: steps(drain), readings: steps(probe) }, differences, correlation)
  }
  const fair = [1, -1, 1, -1, 1, -1]
  it('is nothing where differences alternate, weights are even and numbers are apart', () => {
    expect(found(fair, fair)).toEqual([])
    expect(found(fair, [])).toEqual([])
    expect(found([], fair)).toEqual([])
  })
  it('is that two numbers move together beyond 0.95, either way', () => {
    const at = (r: number) =>
      found(fair, fair, [
        [1, 0.5, -0.95],
        [0.5, 1, r],
        [-0.95, r, 1],
      ])
    expect(at(0.95)).toEqual([])
    for (const r of [0.96, -0.96, 1])
      expect(at(r)).toEqual([
        {
          code: 'numbers-move-together',
          level: 'caution',
          first: 'n',
          second: 'saturatedConductivity',
          correlation: r,
        },
      ])
    expect(at(Number.NaN)).toEqual([])
  })
  it('is that differences come in runs, from 2.33 deviations of independent ones', () => {
    // Nine of ten products along are 1: 9/10 against 2.33/√10 = 0.74; with one change of sign 7/10.
    const run = Array.from({ length: 10 }, () => 1)
    expect(found(run, [])).toEqual([
      { code: 'differences-in-runs', level: 'caution', series: 'drain', autocorrelation: 0.9 },
    ])
    expect(
      found(
        [],
        run.map((one, i) => (i < 5 ? one : -one)),
      ),
    ).toEqual([])
    expect(found(fair, run)).toEqual([
      { code: 'differences-in-runs', level: 'caution', series: 'probe', autocorrelation: 0.9 },
    ])
    expect(found([0, 0, 0, 0], [])).toEqual([])
    // Products along of 233, squares of 400: 2.33/√16, which is no more than that.
    const just = [-7, -7, -8, 0, 3, 2, -1, -1, 4, 8, 8, 5, 1, 0, 2, -7]
    expect(found(just, [])).toEqual([])
    // Their last counts in the squares alone.
    expect(found([...just.slice(0, -1), -6.9], [])).toHaveLength(1)
  })
  it('is that one series is fitted more than three times as badly as the other, for what was told of them', () => {
    const scaled = (factor: number) => fair.map((one) => factor * one)
    expect(found(scaled(3), fair)).toEqual([])
    expect(found(fair, scaled(3))).toEqual([])
    expect(found(scaled(3.5), fair)).toEqual([{ code: 'weights-off', level: 'caution', series: 'drain', ratio: 3.5 }])
    expect(found(fair, scaled(4))).toEqual([{ code: 'weights-off', level: 'caution', series: 'probe', ratio: 4 }])
  })
})

describe('how well a search tells its numbers', () => {
  const two = sought(['bypass', 'probeOffset'], { probe: {} })
  const end = (curvature: number[][], more: object = {}) => ({
    parameters: [0.4, 0],
    curvature,
    sumOfSquares: 5,
    free: [0, 1],
    iterations: 3,
    ...more,
  })
  const STUDENT_10 = 2.228139 // two-sided 95 % of ten degrees of freedom, Student (1908)'s table as in any handbook, from memory
  it('is the inverse of their curvature, scaled by the scatter, times Student’s t', () => {
    // Variance 5/10; the inverse of [[a, b], [b, c]] by hand.
    const [a, b, c] = [4e4, 1e4, 2e4]
    const { told, correlation } = toldBySearch(
      two,
      end([
        [a, b],
        [b, c],
      ]),
      10,
      0.95,
    )
    const determinant = a * c - b * b
    const half = [c, a].map((other) => STUDENT_10 * Math.sqrt((0.5 * other) / determinant))
    told.forEach((one, i) => {
      if (!one.known) throw new Error('is not told')
      expect(one.interval.min).toBeCloseTo(end([]).parameters[i]! - half[i]!, 5)
      expect(one.interval.max).toBeCloseTo(end([]).parameters[i]! + half[i]!, 5)
    })
    expect(correlation[0]![1]).toBeCloseTo(-b / Math.sqrt(a * c), 4)
    expect(correlation[1]![0]).toBe(correlation[0]![1])
    expect([correlation[0]![0], correlation[1]![1]]).toEqual([1, 1])
  })
  it('is not told where the interval reaches an end, or the number is held there', () => {
    const wide = toldBySearch(
      two,
      end([
        [10, 0],
        [0, 4e4],
      ]),
      10,
      0.95,
    ).told
    expect(wide[0]).toMatchObject({ known: false, reason: 'interval-reaches-limit', range: { min: 0 } })
    expect(wide[1]).toMatchObject({ known: true })
    const held = toldBySearch(
      two,
      end(
        [
          [4e4, 0],
          [0, 4e4],
        ],
        { free: [1] },
      ),
      10,
      0.95,
    ).told
    expect(held[0]).toMatchObject({ known: false, reason: 'at-its-limit' })
    expect(held[1]).toMatchObject({ known: true })
  })
  it('is the whole range where the record says nothing, and where two numbers say the same', () => {
    const [nothing, other] = toldBySearch(
      two,
      end([
        [0, 0],
        [0, 4e4],
      ]),
      10,
      0.95,
    ).told
    // The other is told as well as alone.
    expect(other).toMatchObject({
      known: true,
      interval: { max: expect.closeTo(STUDENT_10 * Math.sqrt(0.5 / 4e4), 6) },
    })
    expect(nothing).toMatchObject({ known: false, reason: 'interval-reaches-limit', range: { min: 0, max: 1 } })
    const same = toldBySearch(
      two,
      end([
        [1e30, 1e30],
        [1e30, 1e30],
      ]),
      10,
      0.95,
    )
    for (const one of same.told) expect(one.known).toBe(false)
    expect(same.correlation).toEqual([
      [1, 0],
      [0, 1],
    ])
  })
})

const amount = (max: number) => fc.double({ min: 0, max, noNaN: true })
const stores = fc.record({
  start: fc.double({ min: 0.12, max: 0.6, noNaN: true }),
  steps: fc.array(
    fc.record({ duration: fc.constantFrom<number>(300, 300, 1200), applied: amount(0.6), demand: amount(0.2) }),
    {
      minLength: 4,
      maxLength: 12,
    },
  ),
  capacity: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
  bypass: amount(1),
  lag: fc.double({ min: 0, max: 10, noNaN: true }),
})
const asRecord = ({ start, steps }: Pick<typeof stores extends fc.Arbitrary<infer S> ? S : never, 'start' | 'steps'>) =>
  ({ substrateVolume: 10, minWaterContent: 0.1, start, steps, drained: [] }) as unknown as StoreRecord

describe('a store that a search follows', () => {
  it('passes on what runs past and what overflows, with the lag of a linear reservoir', () => {
    // 1 L into 10 L at 0.5 that holds 0.55: a quarter runs past, 0.25 L overflow.
    const record = asRecord({ start: 0.5, steps: [{ duration: 60, applied: 1, demand: 0 }] })
    const steps = [...record.steps, { ...record.steps[0]!, applied: litres(0), demand: litres(2) }, record.steps[0]!]
    const drain = quickDrain({ ...record, steps } as StoreRecord)([0.55, 0.25, Math.log(120)])
    const leaves = 1 - Math.exp(-0.5)
    expect(drain[0]).toBeCloseTo(0.5 * leaves, 12)
    expect(drain[1]).toBeCloseTo(0.5 * (1 - leaves) * leaves, 12)
    // Two litres were drunk: what stays of the next is all but the quarter.
    expect(drain[2]).toBeCloseTo((0.5 * (1 - leaves) ** 2 + 0.25) * leaves, 12)
  })
  it('gives plants no more than it has above its lowest content', () => {
    const drink = { duration: 60, applied: 0, demand: 9 }
    const steps = [drink, { duration: 60, applied: 0.4, demand: 0 }, { duration: 60, applied: 0.3, demand: 0 }]
    const drain = quickDrain(asRecord({ start: 0.3, steps }))([0.15, 0, 0])
    expect(drain[0]).toBe(0)
    expect(drain[1]).toBeCloseTo(0, 12)
    // 1 + 0.4 + 0.3 L over 1.5 L, all but e^-60 of it at once.
    expect(drain[2]).toBeCloseTo(0.2, 10)
  })
  it('is first full at one of the steps that are looked at, with a capacity of the range given for it', () => {
    fc.assert(
      fc.property(stores, ({ capacity, bypass, ...rest }) => {
        const record = asRecord(rest)
        const unfilled = waterContentsUnfilled(record, bypass)
        const onset = unfilled.findIndex((content) => content > capacity)
        fc.pre(onset >= 0 && capacity > rest.start)
        expect(possibleOnsets(record, [bypass])).toContain(onset)
        const [low, high] = capacitiesAt(record, onset, unfilled)
        expect(capacity).toBeGreaterThanOrEqual(low)
        expect(capacity).toBeLessThanOrEqual(high)
        const drain = quickDrain(record)([capacity, 0, Math.log(60)])
        if (bypass === 0) expect(drain.slice(0, onset).every((volume) => volume === 0)).toBe(true)
      }),
    )
  })
  it('is full at no step but those that raise it above all before, and never counts as one of them', () => {
    const shot = (applied: number, demand = 0) => ({ duration: 60, applied, demand })
    const record = asRecord({ start: 0.5, steps: [shot(1), shot(0, 0.5), shot(0.4), shot(0.2), shot(9), shot(1)] })
    // 0.6, 0.55, 0.59, 0.61, 1.51, 1.61: the last is over a store that is full anyway.
    expect(possibleOnsets(record, [0]).sort()).toEqual([0, 3, 4, 6])
    // A store that once holds nothing but water is full at no later step.
    expect(possibleOnsets(asRecord({ start: 0.5, steps: [shot(5), shot(1)] }), [0])).toEqual([2, 0])
    const unfilled = waterContentsUnfilled(record, 0)
    ;[0.6, 0.55, 0.59, 0.61, 1.51, 1.61].forEach((content, k) => {
      expect(unfilled[k]).toBeCloseTo(content, 12)
    })
    const near = (pair: readonly number[], wanted: readonly number[]) =>
      pair.forEach((end, i) => {
        expect(end).toBeCloseTo(wanted[i]!, 12)
      })
    near(capacitiesAt(record, 0, unfilled), [0.101, 0.6])
    near(capacitiesAt(record, 3, unfilled), [0.6, 0.61])
    near(capacitiesAt(record, 4, unfilled), [0.61, 1])
    near(capacitiesAt(record, 6, unfilled), [1, 1])
    expect(waterContentsUnfilled(record, 0.5)[0]).toBeCloseTo(0.55, 12)
    expect(minCapacity({ minWaterContent: waterContent(0.9995) })).toBe(1)
  })
})

describe('how well a record tells a store', () => {
  const durations = Array.from({ length: 9 }, (_, k) => ({
    duration: minutes(10),
    applied: litres(k % 3 ? 0 : [0.2, 0.9, 0.15][k / 3]!),
    demand: litres(0.02),
  }))
  const record = asRecord({ start: 0.55, steps: durations })
  const at: StoreNumbers = [0.58, 0.1, Math.log(900)]
  it('has the errors of least squares, from differences at the minimum', () => {
    const drainOf = quickDrain(record)
    const told = toldByRecord(at, drainOf, 6e-4, 0.101)
    // The same by hand: JᵀJ of three columns, inverted by its adjugate, times squares over 9 - 3.
    const moves = [1e-5, 1e-5, 1e-4]
    const columns = moves.map((h, i) => {
      const [more, less] = [1, -1].map((sign) =>
        drainOf(at.map((value, j) => (i === j ? value + sign * h : value)) as never),
      )
      return [...more!].map((volume, k) => (volume - less![k]!) / (2 * h))
    })
    const m = columns.map((a) => columns.map((b) => a.reduce((sum, value, k) => sum + value * b[k]!, 0)))
    const minor = (i: number, j: number) => {
      const [r, s] = [0, 1, 2].filter((k) => k !== i) as [number, number]
      const [p, q] = [0, 1, 2].filter((k) => k !== j) as [number, number]
      return m[r]![p]! * m[s]![q]! - m[r]![q]! * m[s]![p]!
    }
    const determinant = [0, 1, 2].reduce((sum, j) => sum + (j % 2 ? -1 : 1) * m[0]![j]! * minor(0, j), 0)
    told.forEach((one, i) => {
      if (!one.known) throw new Error('is not told')
      const error = Math.sqrt((1e-4 * minor(i, i)) / determinant)
      expect(Math.abs(one.standardError / error - 1)).toBeLessThan(0.02)
    })
  })
  it('says which ends the numbers stand at, and which numbers change nothing within which range', () => {
    const drainOf = quickDrain(record)
    const reasons = (numbers: StoreNumbers, drain = drainOf) =>
      toldByRecord(numbers, drain, 6e-4, 0.101).map((one) => (one.known ? 'told' : one.reason))
    expect(reasons([0.58, 0, Math.log(900)])).toEqual(['told', 'at-its-limit', 'told'])
    expect(reasons([0.58, 1, Math.log(900)])[1]).toBe('at-its-limit')
    expect(reasons([0.58, 0.1, 11.36])[2]).toBe('at-its-limit')
    // A store that is never full: any capacity above its highest content will do.
    const dry = toldByRecord([0.9, 0.1, Math.log(900)], drainOf, 6e-4, 0.101)[0]!
    if (dry.known) throw new Error('is told')
    const highest = waterContentsUnfilled(record, 0.1).reduce((a, b) => Math.max(a, b), 0)
    expect(dry.reason).toBe('not-told-by-record')
    expect(Math.abs(dry.range.min - highest)).toBeLessThan(1e-5)
    expect(dry.range.max).toBe(1)
  })
  it('tells neither of two numbers that stand for each other', () => {
    const both = ([capacity, bypass, lag]: StoreNumbers) =>
      Float64Array.of(capacity + bypass, 2 * (capacity + bypass), lag, 1)
    const told = toldByRecord([0.5, 0.5, 5], both, 1, 0.1)
    expect(told.map((one) => one.known || one.reason)).toEqual(Array(3).fill('not-told-by-record'))
  })
})
