import fc from 'fast-check'
import { vanGenuchten1980 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { wettingTable } from '../../src/flow/wetting-table.js'

describe('the curve along which a medium wets', () => {
  const drying = vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha: 0.05, n: 1.8 } as never)
  /** The drying curve, but for somewhat more or less from one suction to another. */
  const wetting = (more: number, from: number, to: number, saturated = 0.9) => ({
    ...drying,
    saturated,
    waterContent: (s: number) => drying.waterContent(s as never) + (s >= from && s <= to ? more : 0),
  })
  it('is refused where it holds more over a stretch of half its suction, from a tenth of a millimetre to 100 km', () => {
    const swapped = (from: number) => () => wettingTable(drying, wetting(2e-9, from, 1.5 * from) as never)
    fc.assert(
      fc.property(fc.double({ min: Math.log(0.01), max: Math.log(6e6), noNaN: true }), (log) => {
        expect(swapped(Math.exp(log))).toThrow('holds more than the drying curve')
      }),
      { numRuns: 200 },
    )
    expect(swapped(0.008)).toThrow('holds more')
    expect(swapped(6.6e6)).toThrow('holds more')
  })
  it('is refused where it is saturated at another content, by more than the rounding of a fit', () => {
    for (const by of [2e-9, -2e-9])
      expect(() => wettingTable(drying, wetting(0, 0, 0, 0.9 + by) as never)).toThrow('at another water content')
    expect(wettingTable(drying, wetting(0.5e-9, 1, 10, 0.9 - 0.5e-9) as never)).toBeDefined()
  })
})
