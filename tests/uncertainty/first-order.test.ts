import fc from 'fast-check'
import {
  coverageFactor,
  propagateFirstOrder,
  propagateMonteCarlo,
  type UncertainInput,
  type UncertainInputs,
  waterContent,
  waterContentTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

type Values = Record<string, number>

/** GUM H.1: inputs in nm, kelvin and 1/K; u from the half widths of the rectangular and arcsine spreads named there. */
const gauge = {
  inputs: {
    standard: { estimate: 50000623, standardUncertainty: 25, degreesOfFreedom: 18 },
    observed: { estimate: 215, standardUncertainty: 5.8, degreesOfFreedom: 24 },
    random: { estimate: 0, standardUncertainty: 3.9, degreesOfFreedom: 5 },
    systematic: { estimate: 0, standardUncertainty: 6.7, degreesOfFreedom: 8 },
    alpha: { estimate: 11.5e-6, standardUncertainty: 2e-6 / Math.sqrt(3) },
    alphaDifference: { estimate: 0, standardUncertainty: 1e-6 / Math.sqrt(3), degreesOfFreedom: 50 },
    mean: { estimate: -0.1, standardUncertainty: 0.2 },
    cycle: { estimate: 0, standardUncertainty: 0.5 / Math.SQRT2 },
    temperatureDifference: { estimate: 0, standardUncertainty: 0.05 / Math.sqrt(3), degreesOfFreedom: 2 },
  } satisfies Record<string, UncertainInput>,
  of: (v: Values) =>
    v.standard! +
    v.observed! +
    v.random! +
    v.systematic! -
    v.standard! * (v.alphaDifference! * (v.mean! + v.cycle!) + v.alpha! * v.temperatureDifference!),
}

describe('the worked examples of JCGM 100:2008 (GUM)', () => {
  it('H.1, end gauge: inputs and components as read in the documentation of MSLNZ/GTC', () => {
    const result = propagateFirstOrder<Values>({ ...gauge, confidence: 0.99 })
    expect(result.value).toBeCloseTo(50000838, 6)
    // Printed: 32 nm; components 25, 16.599, 6.7, 5.8, 3.9, 2.88679 and three times 0.
    expect(Math.round(result.standardUncertainty)).toBe(32)
    const components = Object.fromEntries(
      result.budget.map(({ input, contribution }) => [input, Math.abs(contribution)]),
    )
    expect(components.standard).toBeCloseTo(25, 3)
    expect(components.temperatureDifference).toBeCloseTo(16.599, 3)
    expect(components.systematic).toBeCloseTo(6.7, 6)
    expect(components.observed).toBeCloseTo(5.8, 6)
    expect(components.random).toBeCloseTo(3.9, 6)
    expect(components.alphaDifference).toBeCloseTo(2.88679, 4)
    for (const name of ['alpha', 'mean', 'cycle']) expect(components[name], name).toBeLessThan(1e-6)
    expect(result.budget[0]?.input).toBe('standard')
    // GUM H.1.6: 16.7 effective degrees of freedom, taken as 16, and k = 2.92 [not confirmed, source not seen].
    expect(result.degreesOfFreedom).toBeGreaterThan(16)
    expect(result.degreesOfFreedom).toBeLessThan(17)
    expect(coverageFactor({ confidence: 0.99, degreesOfFreedom: 16 })).toBeCloseTo(2.92, 2)
  })
  it('H.1.7, the second order that raises it to 34 nm is seen by the Monte Carlo method', () => {
    const { standardUncertainty } = propagateMonteCarlo<Values>({ ...gauge, seed: 17, draws: 200000 })
    expect(Math.round(standardUncertainty)).toBe(34)
  })
  it('H.2, resistance, reactance and impedance: inputs and results as read in the documentation of MSLNZ/GTC', () => {
    const inputs = {
      volts: { estimate: 4.999, standardUncertainty: 3.2e-3 },
      amperes: { estimate: 19.661e-3, standardUncertainty: 9.5e-6 },
      phase: { estimate: 1.04446, standardUncertainty: 7.5e-4 },
    }
    const correlations = [
      { between: ['volts', 'amperes'], coefficient: -0.36 },
      { between: ['volts', 'phase'], coefficient: 0.86 },
      { between: ['amperes', 'phase'], coefficient: -0.65 },
    ] as const
    const resistance = (v: Values) => (v.volts! / v.amperes!) * Math.cos(v.phase!)
    const reactance = (v: Values) => (v.volts! / v.amperes!) * Math.sin(v.phase!)
    const impedance = (v: Values) => v.volts! / v.amperes!
    const u = (of: (v: Values) => number) => propagateFirstOrder<Values>({ inputs, correlations, of })
    const [r, x, z] = [u(resistance), u(reactance), u(impedance)]
    expect(r.value).toBeCloseTo(127.732, 3)
    expect(r.standardUncertainty).toBeCloseTo(0.07, 3)
    expect(x.value).toBeCloseTo(219.85, 2)
    expect(x.standardUncertainty).toBeCloseTo(0.3, 2)
    expect(z.value).toBeCloseTo(254.26, 2)
    expect(z.standardUncertainty).toBeCloseTo(0.24, 2)
    // Correlations of the results from the uncertainty of their sums; printed -0.59, -0.49 and 0.99.
    const between = (f: typeof resistance, g: typeof resistance) => {
      const both = u((v) => f(v) + g(v)).standardUncertainty ** 2
      const [a, b] = [u(f).standardUncertainty, u(g).standardUncertainty]
      return (both - a * a - b * b) / (2 * a * b)
    }
    expect(between(resistance, reactance)).toBeCloseTo(-0.59, 2)
    expect(between(resistance, impedance)).toBeCloseTo(-0.49, 2)
    expect(between(reactance, impedance)).toBeCloseTo(0.99, 2)
  })
})

describe('first-order propagation', () => {
  const normal = fc.double({ min: -3, max: 3, noNaN: true })
  const positive = fc.double({ min: 0.01, max: 2, noNaN: true })
  it('is exact for sums, and its shares sum to 1, whatever the correlation', () => {
    fc.assert(
      fc.property(
        normal,
        normal,
        positive,
        positive,
        fc.double({ min: -1, max: 1, noNaN: true }),
        (a, b, ua, ub, r) => {
          const variance = a * a * ua * ua + b * b * ub * ub + 2 * a * b * ua * ub * r
          fc.pre(variance > 1e-6)
          const result = propagateFirstOrder<{ p: number; q: number }>({
            inputs: { p: { estimate: 1, standardUncertainty: ua }, q: { estimate: 2, standardUncertainty: ub } },
            of: ({ p, q }) => a * p + b * q,
            correlations: [{ between: ['p', 'q'], coefficient: r }],
          })
          expect(Math.abs(result.standardUncertainty ** 2 - variance)).toBeLessThan(1e-10)
          expect(result.budget.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9)
          expect(result.findings).toEqual([])
        },
      ),
    )
  })
  it('finds the slope of a smooth function to eight digits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 3, max: 40, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (e, u) => {
          const { budget } = propagateFirstOrder<{ e: never }>({
            inputs: { e: { estimate: e as never, standardUncertainty: u } },
            of: ({ e }) => waterContentTopp1980(e),
          })
          const slope = 2.92e-2 - 2 * 5.5e-4 * e + 3 * 4.3e-6 * e * e
          expect(Math.abs((budget[0]?.sensitivity ?? 0) / slope - 1)).toBeLessThan(1e-8)
        },
      ),
    )
  })
  it('takes the slope from one side at the end of a range and says so', () => {
    const result = propagateFirstOrder<{ dry: never }>({
      inputs: { dry: { estimate: 0 as never, standardUncertainty: 0.01 } },
      of: ({ dry }) => 3 * waterContent(dry) + 1,
    })
    expect(result.standardUncertainty).toBeCloseTo(0.03, 12)
    expect(result.findings).toMatchObject([{ code: 'input-near-its-end', about: 'dry' }])
  })
  it('warns where the function bends, and not where it does not', () => {
    const square = (estimate: number) =>
      propagateFirstOrder<{ x: number }>({ inputs: { x: { estimate, standardUncertainty: 1 } }, of: ({ x }) => x * x })
    expect(square(0).findings).toMatchObject([{ code: 'not-straight', about: 'x' }])
    expect(square(100).findings).toEqual([])
  })
  it('keeps an exact input exact', () => {
    const inputs = { x: { estimate: 2, standardUncertainty: 0 }, y: { estimate: 3, standardUncertainty: 0.1 } }
    const result = propagateFirstOrder<{ x: number; y: number }>({ inputs, of: ({ x, y }) => x * y })
    expect(result.standardUncertainty).toBeCloseTo(0.2, 10)
    expect(result.budget.find(({ input }) => input === 'x')).toMatchObject({ contribution: 0, share: 0 })
    const exact = { ...inputs, y: { estimate: 3, standardUncertainty: 0 } }
    expect(propagateFirstOrder<{ x: number; y: number }>({ inputs: exact, of: ({ x, y }) => x * y })).toMatchObject({
      value: 6,
      standardUncertainty: 0,
      expandedUncertainty: 0,
    })
  })
  it('combines degrees of freedom as Welch and Satterthwaite do', () => {
    const inputs = {
      a: { estimate: 0, standardUncertainty: 3, degreesOfFreedom: 4 },
      b: { estimate: 0, standardUncertainty: 4, degreesOfFreedom: 9 },
    }
    const of = (v: Values) => v.a! + v.b!
    const { degreesOfFreedom, coverageFactor: k, findings } = propagateFirstOrder<Values>({ inputs, of })
    expect(degreesOfFreedom).toBeCloseTo(625 / (81 / 4 + 256 / 9), 9)
    expect(k).toBeCloseTo(coverageFactor({ confidence: 0.95, degreesOfFreedom: 625 / (81 / 4 + 256 / 9) }), 9)
    expect(findings).toEqual([])
    const correlations = [{ between: ['a', 'b'], coefficient: 0.5 }] as const
    expect(propagateFirstOrder<Values>({ inputs, of, correlations }).findings).toMatchObject([
      { code: 'correlated-degrees-of-freedom' },
    ])
  })
  it('refuses what cannot be', () => {
    const inputs: UncertainInputs<Values> = {
      a: { estimate: 1, standardUncertainty: 1 },
      b: { estimate: 1, standardUncertainty: 1 },
      c: { estimate: 1, standardUncertainty: 1 },
    }
    const of = (v: Values) => v.a! + v.b!
    const pair = (x: string, y: string, coefficient: number) => ({ between: [x, y] as const, coefficient })
    const first = (changes: object) => () => propagateFirstOrder<Values>({ inputs, of, ...changes })
    expectInputError(first({ inputs: {} }), 'inputs')
    expectInputError(first({ correlations: [pair('a', 'x', 0.1)] }), 'correlations')
    expectInputError(first({ correlations: [pair('a', 'a', 0.1)] }), 'correlations')
    expectInputError(
      first({ correlations: [pair('a', 'b', 1), pair('b', 'c', 1), pair('a', 'c', -1)] }),
      'correlations',
    )
    expectInputError(
      first({ correlations: [pair('a', 'b', 0.9), pair('b', 'c', 0.9), pair('a', 'c', 0)] }),
      'correlations',
    )
    expect(
      first({ correlations: [pair('a', 'b', 1), pair('b', 'c', 1), pair('a', 'c', 1)] })().standardUncertainty,
    ).toBeCloseTo(2, 9)
    expectInputError(first({ of: () => Number.NaN }), 'of')
    expectDomainError(first({ correlations: [pair('a', 'b', 1.1)] }), { quantity: 'correlation coefficient' })
    expectDomainError(first({ inputs: { a: { estimate: Number.NaN, standardUncertainty: 1 } } }), {
      quantity: 'estimate',
    })
    expectDomainError(first({ inputs: { a: { estimate: 1, standardUncertainty: -1 } } }), {
      quantity: 'standard uncertainty',
    })
    expectDomainError(first({ confidence: 1 }), { quantity: 'confidence' })
    expectDomainError(first({ of: (v: Values) => waterContent(v.a! + 1) }), { quantity: 'volumetric water content' })
    expect(
      first({
        of: () => {
          throw new RangeError('a fault')
        },
      }),
    ).toThrow(RangeError)
  })
})
