import * as porewater from 'porewater'
import { add, litres, ratio, scale, subtract, sum, type Volume } from 'porewater'
import { describe, expect, it } from 'vitest'
import { NO_NUMBERS } from '../support/hostile.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { UNIT_ROWS } from './generated/rows.js'

type OfOne = (value: never) => unknown
const ROWS = UNIT_ROWS.filter((row) => 'make' in row)
const READERS = UNIT_ROWS.filter((row) => 'reader' in row)
const called = (name: string) => (porewater as unknown as Record<string, OfOne>)[name]!

describe('what is no number', () => {
  it.each(NO_NUMBERS)('a %s is refused by each constructor of a unit with the quantity and its range', (_, thing) => {
    for (const { make } of ROWS) expectDomainError(() => called(make)(thing))
  })
  it.each(NO_NUMBERS)('a %s is refused by each reader of a unit, and never read as a number', (_, thing) => {
    for (const { reader } of READERS) expectInputError(() => called(reader)(thing), 'quantity')
  })
  it.each(NO_NUMBERS)('a %s is neither added, subtracted, scaled nor divided', (_, thing) => {
    const one = litres(1)
    expectInputError(() => add(one, thing), 'b')
    expectInputError(() => subtract(thing as Volume, one), 'a')
    expectInputError(() => ratio(one, thing), 'b')
    expectInputError(() => scale(thing, 2), 'amount')
    expectInputError(() => sum([one, thing as Volume]), /^amounts\[1\]$/)
  })
  it('a hole in a list to be summed is refused at its place', () => {
    const sparse: Volume[] = [litres(1)]
    sparse[2] = litres(2)
    expectInputError(() => sum(sparse), /^amounts\[1\]$/)
  })
  it('NaN is one that is missing, and read as it is', () => {
    for (const { reader } of READERS) expect(called(reader)(Number.NaN as never)).toBeNaN()
  })
})
