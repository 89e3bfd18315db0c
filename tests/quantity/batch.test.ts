import fc from 'fast-check'
import * as porewater from 'porewater'
import {
  ConvergenceError,
  convertInto,
  DomainError,
  InputError,
  type Permittivity,
  permittivityTopp1980,
  waterContentTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { loopOf } from '../../src/quantity/loop-of.js'
import { expectInputError } from '../support/refusals.js'

describe('convertInto', () => {
  const run = (values: number[], convert: (x: Permittivity) => number = waterContentTopp1980) => {
    const output = new Float64Array(values.length).fill(-1)
    return { counts: convertInto({ readings: Float64Array.from(values), output, convert }), output }
  }
  it('converts, keeps gaps in place and counts refusals by reason', () => {
    const { counts, output } = run([20, Number.NaN, 0.2, 30, Number.POSITIVE_INFINITY, 95, 0])
    expect(counts).toMatchObject({ rows: 7, converted: 2, missing: 1, refused: 4 })
    expect(counts.refusals).toMatchObject([
      { code: 'outside-domain', about: 'apparent permittivity below its range', count: 2, first: 2 },
      { code: 'outside-domain', about: 'apparent permittivity above its range', count: 2, first: 4 },
    ])
    expect(counts.refusals[0]?.message).toContain('0.2')
    expect([...output]).toEqual([
      waterContentTopp1980(20 as Permittivity),
      Number.NaN,
      Number.NaN,
      waterContentTopp1980(30 as Permittivity),
      Number.NaN,
      Number.NaN,
      Number.NaN,
    ])
  })
  it('counts a result that is not finite, from a conversion of the caller', () => {
    const { counts, output } = run([1, 2, 0], (x) => 1 / x)
    expect(counts).toMatchObject({ converted: 2, missing: 0, refused: 1, refusals: [{ code: 'not-finite', first: 2 }] })
    expect(output[2]).toBeNaN()
  })
  it('names the argument of contradicting inputs and lets other errors pass', () => {
    const contradict = () => {
      throw new InputError('a, b', 'they differ', 'make them equal')
    }
    expect(run([1, 2], contradict).counts.refusals).toMatchObject([{ code: 'bad-input', about: 'a, b', count: 2 }])
    const endless = () => {
      throw new ConvergenceError('fit', 9, 0.1, 'start elsewhere')
    }
    expect(run([1, 2], endless).counts.refusals).toMatchObject([{ code: 'no-convergence', about: 'fit', count: 2 }])
    const fault = () => {
      throw new TypeError('a fault')
    }
    expect(() => run([1], fault)).toThrow(TypeError)
  })
  it('counts an open lower end as below the range', () => {
    const open = (value: number) => {
      throw new DomainError(value, { quantity: 'depth', unit: 'm', min: 0, max: 1, ends: '()', hint: 'give a depth' })
    }
    expect(run([0, 1], open).counts.refusals.map(({ about }) => about)).toEqual([
      'depth below its range',
      'depth above its range',
    ])
  })
  it('may write over the readings', () => {
    const series = Float64Array.of(20, Number.NaN, 30)
    convertInto({ readings: series, output: series, convert: waterContentTopp1980 })
    expect([...series]).toEqual([
      waterContentTopp1980(20 as Permittivity),
      Number.NaN,
      waterContentTopp1980(30 as Permittivity),
    ])
  })
  it('leaves a longer output as it is behind the readings', () => {
    const output = Float64Array.of(7, 7, 7)
    convertInto({ readings: Float64Array.of(20), output, convert: waterContentTopp1980 })
    expect([...output].slice(1)).toEqual([7, 7])
  })
  it('refuses an output that is too short', () => {
    expectInputError(
      () =>
        convertInto({
          readings: new Float64Array(3),
          output: new Float64Array(2),
          convert: permittivityTopp1980,
        }),
      'output',
    )
  })
  it('loses no row and gives what single calls give (independent oracle)', () => {
    const reading = fc.oneof(fc.double({ min: -5, max: 100, noNaN: true }), fc.constant(Number.NaN))
    fc.assert(
      fc.property(fc.array(reading, { maxLength: 50 }), (values) => {
        const { counts, output } = run(values)
        const single = values.map((value) => {
          try {
            return waterContentTopp1980(value as Permittivity)
          } catch {
            return Number.NaN
          }
        })
        expect([...output]).toEqual(single)
        expect(counts.rows).toBe(values.length)
        expect(counts.converted + counts.missing + counts.refused).toBe(counts.rows)
        expect(counts.missing).toBe(values.filter(Number.isNaN).length)
        expect(counts.refusals.reduce((total, { count }) => total + count, 0)).toBe(counts.refused)
      }),
    )
  })
  it('gives the same whatever the conversion is called', () => {
    const halved = (x: number) => {
      if (x === 3) throw new InputError('x', 'is three', 'give another')
      return x === 4 ? Infinity : x / 2
    }
    const outcomes = Array.from({ length: 200 }, (_, i) => {
      const convert = Object.defineProperty((x: number) => halved(x), 'name', { value: `n${i}` })
      const { counts, output } = run([1, Number.NaN, 3, 4, 5], convert)
      return { loop: loopOf(convert), counts, output }
    })
    for (const { counts, output } of outcomes) {
      expect([...output]).toEqual([0.5, Number.NaN, Number.NaN, Number.NaN, 2.5])
      expect(counts).toMatchObject({ rows: 5, converted: 2, missing: 1, refused: 2 })
      expect(counts.refusals).toMatchObject([
        { code: 'bad-input', first: 2 },
        { code: 'not-finite', first: 3 },
      ])
    }
    // Each loop was asked.
    expect(new Set(outcomes.map(({ loop }) => loop)).size).toBe(32)
  })
  it('has a loop of its own for each relation that takes the permittivity alone', () => {
    const relations = [
      porewater.waterContentJacobsenSchjonning1993,
      porewater.waterContentKellnerLundin2001,
      porewater.waterContentLedieu1986,
      porewater.waterContentMyllysSimojoki1996,
      porewater.waterContentNagare2011,
      porewater.waterContentPepin1992,
      porewater.waterContentRothMineral1992,
      porewater.waterContentRothOrganic1992,
      porewater.waterContentTopp1980,
    ] as unknown as ((reading: number) => number)[]
    expect(new Set(relations.map(loopOf)).size).toBe(relations.length)
  })
  it('refuses a conversion that is no function', () => {
    expectInputError(
      () => convertInto({ readings: new Float64Array(1), output: new Float64Array(1), convert: 0.5 as never }),
      'convert',
    )
  })
})
