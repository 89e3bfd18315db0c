import fc from 'fast-check'
import {
  airSpaceAtContainerCapacity,
  boxContainer,
  centimetres,
  centimetresOfSuction,
  containerCapacity,
  cylinderContainer,
  logLogisticRetention,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'

const mediumOf = (theta_r: number, theta_s: number, alpha: number, n: number) =>
  vanGenuchten1980({
    residual: waterContent(theta_r),
    saturated: waterContent(theta_s),
    alpha: perCentimetre(alpha),
    n,
  })
const pot = (height: number, diameter = 10) =>
  cylinderContainer({ diameter: centimetres(diameter), height: centimetres(height) })

checkPublished('hydraulics', 'container.cylinder', ({ theta_r, theta_s, alpha, n, height }) => {
  const medium = mediumOf(theta_r, theta_s, alpha, n)
  const container = pot(height)
  return {
    container_capacity: containerCapacity({ container, medium }),
    air_space: airSpaceAtContainerCapacity({ container, medium }),
    theta_top: medium.waterContent(centimetresOfSuction(height)),
    theta_middle: medium.waterContent(centimetresOfSuction(height / 2)),
  }
})
checkPublished('hydraulics', 'container.bottom_suction', ({ theta_r, theta_s, alpha, n, height, bottom_suction }) => {
  const medium = mediumOf(theta_r, theta_s, alpha, n)
  const state = { container: pot(height), medium, bottomSuction: centimetresOfSuction(bottom_suction) }
  return { mean_theta: containerCapacity(state), air_space: airSpaceAtContainerCapacity(state) }
})

const media = fc
  .record({
    theta_r: fc.double({ min: 0, max: 0.3, noNaN: true }),
    theta_s: fc.double({ min: 0.35, max: 1, noNaN: true }),
    alpha: fc.double({ min: 1e-3, max: 1, noNaN: true }),
    n: fc.double({ min: 1.05, max: 8, noNaN: true }),
  })
  .map(({ theta_r, theta_s, alpha, n }) => mediumOf(theta_r, theta_s, alpha, n))
const heights = fc.double({ min: 1, max: 60, noNaN: true })

describe('container capacity', () => {
  it('is the closed form of the integral for n = 2: the mean saturation is asinh(αH)/(αH)', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1, noNaN: true }), heights, (alpha, height) => {
        const mean = containerCapacity({ container: pot(height), medium: mediumOf(0.1, 0.9, alpha, 2) })
        const closed = 0.1 + (0.8 * Math.asinh(alpha * height)) / (alpha * height)
        expect(Math.abs(mean - closed)).toBeLessThan(1e-13)
      }),
    )
  })
  it('sees a wet layer that is thin and sharp: ∫ 1/(1 + (z/s)^b) dz from 0 to ∞ is s (π/b)/sin(π/b)', () => {
    for (const [half, slope] of [
      [0.01, 200],
      [1e-4, 40],
      [7.77, 300],
    ] as const) {
      const medium = logLogisticRetention({
        residual: waterContent(0),
        saturated: waterContent(1),
        halfSuction: centimetresOfSuction(half),
        slope,
      })
      const layer = (half * (Math.PI / slope)) / Math.sin(Math.PI / slope)
      expect((containerCapacity({ container: pot(30), medium }) * 30) / layer).toBeCloseTo(1, 8)
    }
  })
  it('falls as the height grows and does not know the area', () => {
    fc.assert(
      fc.property(media, heights, heights, (medium, a, b) => {
        fc.pre(a < b)
        const low = containerCapacity({ container: pot(a), medium })
        expect(containerCapacity({ container: pot(b), medium })).toBeLessThanOrEqual(low + 1e-14)
        const slab = boxContainer({ length: centimetres(90), width: centimetres(15), height: centimetres(a) })
        expect(containerCapacity({ container: slab, medium })).toBeCloseTo(low, 13)
      }),
    )
  })
  it('lies between the water contents of top and bottom, and with the air space makes up saturation', () => {
    fc.assert(
      fc.property(media, heights, fc.double({ min: 0, max: 100, noNaN: true }), (medium, height, s0) => {
        const state = { container: pot(height), medium, bottomSuction: centimetresOfSuction(s0) }
        const mean = containerCapacity(state)
        expect(mean).toBeLessThanOrEqual(medium.waterContent(centimetresOfSuction(s0)) + 1e-14)
        expect(mean).toBeGreaterThanOrEqual(medium.waterContent(centimetresOfSuction(s0 + height)) - 1e-14)
        expect(mean + airSpaceAtContainerCapacity(state)).toBeCloseTo(medium.saturated, 14)
      }),
    )
  })
  it('refuses what has no meaning', () => {
    expectDomainError(() => pot(0), { quantity: 'height' })
    expectDomainError(() => pot(10, Number.NaN), { quantity: 'length' })
    const medium = mediumOf(0.1, 0.9, 0.1, 2)
    expectDomainError(() => containerCapacity({ container: pot(10), medium, bottomSuction: -1 as never }), {
      quantity: 'bottom suction',
    })
  })
})
