import fc from 'fast-check'
import type { RetentionModel, SuctionHead } from 'porewater'
import { describe, expect, it } from 'vitest'

/** What every retention model must do, whatever its equation. */
export function checkRetentionModel(name: string, models: fc.Arbitrary<RetentionModel>): void {
  const suctions = fc.double({ min: -2, max: 6, noNaN: true }).map((pF) => (10 ** pF) as SuctionHead)

  describe(`${name} (properties)`, () => {
    it('holds all at zero suction and never less than its residual', () => {
      fc.assert(
        fc.property(models, suctions, (medium, s) => {
          expect(medium.waterContent(0 as SuctionHead)).toBe(medium.saturated)
          expect(medium.waterContent(s)).toBeLessThanOrEqual(medium.saturated)
          expect(medium.waterContent(s)).toBeGreaterThanOrEqual(medium.residual)
        }),
      )
    })
    it('loses water and conductivity as suction rises', () => {
      fc.assert(
        fc.property(models, suctions, suctions, (medium, a, b) => {
          fc.pre(a < b)
          expect(medium.waterContent(b)).toBeLessThanOrEqual(medium.waterContent(a) + 1e-15)
          if (!medium.relativeConductivity) return
          const [wet, dry] = [medium.relativeConductivity(a), medium.relativeConductivity(b)]
          expect(dry).toBeLessThanOrEqual(wet * (1 + 1e-12))
          expect(wet).toBeLessThanOrEqual(1)
          expect(dry).toBeGreaterThanOrEqual(0)
        }),
      )
    })
    it('has the slope of its own curve as capacity', () => {
      fc.assert(
        fc.property(models, suctions, (medium, s) => {
          const step = 1e-4 * s
          fc.pre(!medium.breakpoints.some((kink) => Math.abs(kink - s) <= step))
          const at = (x: number) => medium.waterContent((s + x) as SuctionHead)
          // Five points: the error falls with the fourth power of the step.
          const slope = (8 * (at(-step) - at(step)) - (at(-2 * step) - at(2 * step))) / (12 * step)
          const rounding = (4e-16 * medium.saturated) / step
          fc.pre(!medium.breakpoints.some((kink) => Math.abs(kink - s) <= 2 * step))
          expect(Math.abs(medium.capacity(s) - slope)).toBeLessThanOrEqual(1e-7 * slope + 4 * rounding)
        }),
      )
    })
    it('is undone by its inverse', () => {
      fc.assert(
        fc.property(models, suctions, (medium, s) => {
          const content = medium.waterContent(s)
          fc.pre(content > medium.residual && s > medium.suction(medium.saturated))
          // A water content has about 1e-16 of rounding; the slope says what that is in suction.
          const slope = medium.capacity(s)
          const rounding = slope > 0 ? 4e-16 / slope : Number.POSITIVE_INFINITY
          fc.pre(rounding < 1e-3 * s)
          expect(Math.abs(medium.suction(content) - s)).toBeLessThanOrEqual(4 * rounding + 1e-10 * s)
        }),
      )
    })
  })
}
