import fc from 'fast-check'
import {
  centimetresOfPressureHead,
  centimetresOfSuction,
  inCentimetresOfPressureHead,
  inKilopascalsOfPressureHead,
  kilopascalsOfPressureHead,
  kilopascalsOfSuction,
  pressureHeadOfSuction,
  suctionOfPressureHead,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

describe('a pressure head', () => {
  it('has either sign: ρ g h of a water column (definition; CGPM 1901: 9.80665 m/s²)', () => {
    expect(inCentimetresOfPressureHead(centimetresOfPressureHead(12))).toBe(12)
    expect(inCentimetresOfPressureHead(centimetresOfPressureHead(-12))).toBe(-12)
    expect(inKilopascalsOfPressureHead(centimetresOfPressureHead(-100))).toBeCloseTo(-9.80665, 12)
    expect(kilopascalsOfPressureHead(-9.80665)).toBeCloseTo(-100, 12)
  })
  it('is the suction with the other sign, and zero has no sign', () => {
    expect(pressureHeadOfSuction(kilopascalsOfSuction(2))).toBe(-kilopascalsOfSuction(2))
    expect(pressureHeadOfSuction(centimetresOfSuction(0))).toBe(0)
    expect(suctionOfPressureHead(centimetresOfPressureHead(0))).toBe(0)
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1e6, noNaN: true }), (value) => {
        const suction = centimetresOfSuction(value)
        expect(suctionOfPressureHead(pressureHeadOfSuction(suction)) - suction).toBe(0)
      }),
    )
  })
  it('has no suction above zero', () => {
    expectDomainError(() => suctionOfPressureHead(centimetresOfPressureHead(12)), { quantity: 'pressure head', max: 0 })
    expectDomainError(() => centimetresOfPressureHead(Number.NaN), { quantity: 'pressure head', unit: 'cm' })
  })
})
