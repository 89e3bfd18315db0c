import { InputError } from 'porewater'
import { describe, expect, it } from 'vitest'
import { domainWith, isClosedEnd, isWithin, rangeText } from '../../src/quantity/domain.js'
import { requireList, requireMade } from '../../src/quantity/guard.js'
import { inOrder } from '../../src/quantity/in-order.js'
import { columnOf, isMissing, seriesOf } from '../../src/quantity/missing.js'
import { notAbove } from '../../src/quantity/not-above.js'
import { oneOf } from '../../src/quantity/one-of.js'

describe('a series', () => {
  it('has a gap where a number is NaN, null from JSON, infinite or not there, and nowhere else', () => {
    for (const gap of [Number.NaN, Infinity, -Infinity, null, undefined])
      expect(isMissing(gap as number, 'x')).toBe(true)
    for (const number of [0, -0, 5e-324, -1, Number.MAX_VALUE]) expect(isMissing(number, 'x')).toBe(false)
  })
  it('holds no text, nor anything else that is no number', () => {
    for (const other of ['0.3', '', true, {}, [0.3], 3n]) {
      expect(() => isMissing(other as number, 'level')).toThrow(InputError)
      expect(() => seriesOf([0.3, other as number], 'level')).toThrow(/^level/)
    }
  })
  it('comes back with NaN for each gap and every other number in its place', () => {
    expect([...Array.from(seriesOf([0.3, null as never, Infinity, 0, undefined as never], 'level'))]).toEqual([
      0.3,
      Number.NaN,
      Number.NaN,
      0,
      Number.NaN,
    ])
  })
  it('comes back as it is where nothing but NaN is missing, so that a long one is not copied', () => {
    const whole = [0.3, Number.NaN, 0.29]
    expect(seriesOf(whole, 'level')).toBe(whole)
    const typed = Float64Array.of(0.3, Infinity)
    expect(columnOf(typed, 'level')).toBe(typed)
    expect([...columnOf([0.3, null] as never, 'level')]).toEqual([0.3, Number.NaN])
  })
  it('is a list: a text has a length as well', () => {
    for (const list of [null, undefined, '0.3', 7, {}]) expect(() => requireList(list, 'level')).toThrow(/^level/)
    expect(() => requireList(new Float32Array(2), 'level')).not.toThrow()
  })
})

describe('two arguments in order', () => {
  it('have the lower below the upper, or above it by less than the slack', () => {
    expect(() => inOrder('lower', 0.5, 'upper', 0.6)).not.toThrow()
    expect(() => inOrder('lower', 0.6, 'upper', 0.6)).toThrow('lower: 0.6 is not below upper, 0.6')
    expect(() => inOrder('lower', 0.65, 'upper', 0.6, 0.1)).not.toThrow()
    expect(() => inOrder('lower', 0.7, 'upper', 0.6, 0.05)).toThrow(InputError)
    expect(() => inOrder('lower', Number.NaN, 'upper', 0.6)).toThrow(InputError)
  })
  it('may be alike where the lower is only not above the upper', () => {
    expect(() => notAbove('lower', 0.6, 'upper', 0.6)).not.toThrow()
    expect(() => notAbove('lower', 0.61, 'upper', 0.6)).toThrow('lower: 0.61 is above upper, 0.6')
  })
})

describe('a word', () => {
  it('is one of those that an option has, to the letter', () => {
    expect(oneOf('mean', ['mean', 'median'], 'by')).toBe('mean')
    expect(() => oneOf('Mean' as 'mean', ['mean', 'median'], 'by')).toThrow("'Mean' is unknown")
    expect(() => oneOf(7 as never, ['mean', 'median'], 'by')).toThrow('give one of mean, median')
  })
})

describe('a span', () => {
  const share = { quantity: 'share', unit: '1', min: 0, max: 1, ends: '[)', hint: 'give less' } as const
  it('has the ends that belong to it, and is told as intervals are written', () => {
    expect([isClosedEnd(0, share), isClosedEnd(1, share), isClosedEnd(0.5, share)]).toEqual([true, false, false])
    expect([0, 0.5, 1, -1, Number.NaN].map((value) => isWithin(value, share))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ])
    expect(rangeText(share)).toBe('[0, 1)')
  })
  it('can be made anew with another end', () => {
    expect(domainWith(share, { max: 0.5, ends: '[]' })).toEqual({ ...share, max: 0.5, ends: '[]' })
    expect(share.max).toBe(1)
  })
})

describe('what a function made', () => {
  it('is refused once JSON took its functions', () => {
    const made = { waterContent: () => 0.3 }
    expect(() => requireMade(made, 'waterContent', 'medium')).not.toThrow()
    expect(() => requireMade(JSON.parse(JSON.stringify(made)), 'waterContent', 'medium')).toThrow(/JSON does not keep/)
  })
})
