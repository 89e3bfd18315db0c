import {
  attempt,
  ConvergenceError,
  celsius,
  DomainError,
  explainQuantityFinding,
  InputError,
  isPorewaterError,
  kelvin,
  litres,
  millilitres,
  percent,
  validityOf,
  validityTopp1980,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'

describe('a refusal', () => {
  it('names the quantity, the value, the unit, the allowed range and what to do', () => {
    expect(() => litres(-1)).toThrow('volume is -1 L, outside [0, Infinity): give a volume of zero or more')
    expect(() => millilitres(-250)).toThrow('volume is -250 mL, outside [0, Infinity)')
    expect(() => percent(150)).toThrow('share is 150 %, outside [0, 100]')
    expect(() => kelvin(-1)).toThrow('temperature is -1 K, outside [0, 1273.15]')
    expect(() => celsius(Number.NaN)).toThrow('temperature is NaN °C')
  })
  it('carries the same as fields and is known by its code, from whichever copy of the package', () => {
    expect(() => litres(-1)).toThrow(
      expect.objectContaining({
        name: 'DomainError',
        code: 'outside-domain',
        quantity: 'volume',
        value: -1,
        unit: 'L',
        min: 0,
        max: Infinity,
        ends: '[)',
      }),
    )
    expect(isPorewaterError(Object.assign(new Error('x'), { code: 'outside-domain' }))).toBe(true)
  })
})

describe('attempt', () => {
  it('gives the value or the refusal', () => {
    expect(attempt(() => litres(2))).toEqual({ ok: true, value: 2 })
    expect(attempt(() => litres(-1))).toMatchObject({ ok: false, error: { code: 'outside-domain' } })
  })
  it('knows all kinds of refusal', () => {
    for (const error of [
      new InputError('points', 'are swapped', 'swap them'),
      new ConvergenceError('fit', 9, 0.1, 'start elsewhere'),
    ]) {
      expect(
        attempt(() => {
          throw error
        }),
      ).toEqual({ ok: false, error })
    }
    expect(new ConvergenceError('fit', 9, 0.1, 'start elsewhere').message).toBe(
      'fit did not converge in 9 iterations (still 0.1 away): start elsewhere',
    )
    expect(new InputError('points', 'are swapped', 'swap them').message).toBe('points: are swapped; swap them')
    expect(new DomainError(2, { quantity: 'x', unit: '1', min: 0, max: 1, ends: '()', hint: 'h' }).message).toBe(
      'x is 2, outside (0, 1): h',
    )
  })
  it('lets a programming fault pass', () => {
    expect(() =>
      attempt(() => {
        throw new TypeError('a fault')
      }),
    ).toThrow(TypeError)
    expect(isPorewaterError('text')).toBe(false)
    expect(isPorewaterError({ code: 'outside-domain' })).toBe(false)
  })
})

describe('validityOf', () => {
  it('refuses a name that the record does not know', () => {
    expectInputError(() => validityOf(validityTopp1980, { permitivity: 20 }), 'permitivity')
    expectInputError(() => validityOf(validityTopp1980, JSON.parse('{"__proto__": 1}')), '__proto__')
  })
  it('says which input is outside, and outside of what', () => {
    expect(validityOf(validityTopp1980, { apparent: 55 })).toEqual([
      {
        code: 'outside-validity',
        level: 'caution',
        about: 'apparent',
        value: 55,
        unit: '1',
        min: 3,
        max: 40,
        of: 'waterContentTopp1980',
        note: 'mineral soils; organic media and stone wool need their own calibration',
      },
    ])
    expect(validityOf(validityTopp1980, { apparent: 55 }).map(explainQuantityFinding)).toEqual([
      expect.objectContaining({
        message: expect.stringMatching(/^waterContentTopp1980: apparent 55 is outside \[3, 40\], /),
      }),
    ])
  })
  it('counts the ends as inside', () => {
    expect(validityOf(validityTopp1980, { apparent: 3 })).toEqual([])
    expect(validityOf(validityTopp1980, { apparent: 40 })).toEqual([])
    expect(validityOf(validityTopp1980, { apparent: 40.001 })).toHaveLength(1)
    expect(validityOf(validityTopp1980, { apparent: 2.999 })).toHaveLength(1)
  })
})
