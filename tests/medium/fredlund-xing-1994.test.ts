import fc from 'fast-check'
import {
  fredlundXing1994,
  inKilopascalsOfSuction,
  inPerKilopascal,
  kilopascalsOfSuction,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'
import { checkRetentionModel } from '../support/retention-properties.js'

interface Given {
  theta_s: number
  a: number
  n: number
  m: number
  psi_r?: number
}
const mediumOf = (given: unknown) => {
  const { theta_s, a, n, m, psi_r } = given as Given
  return fredlundXing1994({
    saturated: waterContent(theta_s),
    scaleSuction: kilopascalsOfSuction(a),
    n,
    m,
    ...(psi_r === undefined ? {} : { residualSuction: kilopascalsOfSuction(psi_r) }),
  })
}

checkPublished('hydraulics', 'retention.fredlund_xing', ({ suction, psi_r, psi_max: _, ...curve }) => {
  const s = kilopascalsOfSuction(suction)
  const medium = mediumOf({ ...curve, psi_r })
  return {
    theta: medium.waterContent(s),
    theta_uncorrected: mediumOf(curve).waterContent(s),
    capacity: inPerKilopascal(medium.capacity(s)),
  }
})
checkPublished('hydraulics', 'retention.fredlund_xing_inverse', ({ theta, ...curve }) => ({
  suction: inKilopascalsOfSuction(mediumOf(curve).suction(waterContent(theta))),
}))

const numbers = (min: number, max: number) => fc.double({ min, max, noNaN: true })
checkRetentionModel(
  'fredlund-xing-1994',
  fc
    .record({
      theta_s: numbers(0.3, 1),
      a: numbers(0.2, 100),
      n: numbers(0.8, 6),
      m: numbers(0.2, 3),
      psi_r: numbers(100, 5000),
    })
    .map(mediumOf),
)

checkRetentionModel(
  'Fredlund and Xing 1994 without its correction factor',
  fc.record({ theta_s: numbers(0.3, 1), a: numbers(0.2, 100), n: numbers(0.8, 6), m: numbers(0.2, 3) }).map(mediumOf),
)

describe('Fredlund and Xing 1994', () => {
  const curve = { theta_s: 0.9, a: 1.2, n: 1.8, m: 0.7, psi_r: 1500 }

  it('is dry at a million kilopascals and beyond, and saturated at zero', () => {
    const medium = mediumOf(curve)
    expect(medium.waterContent(kilopascalsOfSuction(1e6))).toBeCloseTo(0, 15)
    expect(medium.waterContent(kilopascalsOfSuction(1e7))).toBe(0)
    expect(medium.capacity(kilopascalsOfSuction(1e7))).toBe(0)
    expect(medium.capacity(kilopascalsOfSuction(0))).toBe(0)
    expect(medium.suction(waterContent(0.9))).toBe(0)
    expect(inKilopascalsOfSuction(medium.suction(waterContent(1e-9)))).toBeGreaterThan(0.99e6)
    expect(medium.relativeConductivity).toBeUndefined()
  })
  it('without its correction factor holds more, by just that factor, and never dries out', () => {
    const { psi_r, ...plain } = curve
    const [medium, bare] = [mediumOf(curve), mediumOf(plain)]
    for (const kPa of [0.1, 5, 100, 1e4]) {
      const s = kilopascalsOfSuction(kPa)
      const factor = 1 - Math.log(1 + kPa / psi_r) / Math.log(1 + 1e6 / psi_r)
      expect(bare.waterContent(s) * factor).toBeCloseTo(medium.waterContent(s), 12)
    }
    expect(bare.waterContent(kilopascalsOfSuction(1e9))).toBeGreaterThan(0)
    expect(bare.parameters).not.toHaveProperty('residualSuction')
    expect(bare.suction(waterContent(0.9))).toBe(0)
    expectDomainError(() => bare.suction(waterContent(1e-9)), { quantity: 'water content' })
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => mediumOf({ ...curve, theta_s: 0 }), { quantity: 'saturated water content' })
    expectDomainError(() => mediumOf({ ...curve, a: 0 }), { quantity: 'scale suction' })
    expectDomainError(() => mediumOf({ ...curve, n: 0 }), { quantity: 'n' })
    expectDomainError(() => mediumOf({ ...curve, m: 0 }), { quantity: 'm' })
    expectDomainError(() => mediumOf({ ...curve, psi_r: 0 }), { quantity: 'residual suction' })
    expectDomainError(() => mediumOf(curve).suction(waterContent(0)), { min: 0, max: 0.9 })
    expectDomainError(() => mediumOf(curve).waterContent(Number.NaN as never), { quantity: 'suction' })
  })
})
