import fc from 'fast-check'
import {
  bottomSuctionAtRest,
  brooksCorey1964,
  campbell1974,
  centimetres,
  containerCapacity,
  cylinderContainer,
  durner1994,
  fredlundXing1994,
  frustumContainer,
  isPorewaterError,
  kosugi1996,
  logLogisticRetention,
  milksFontenoLarson1989,
  type RetentionModel,
  type SuctionHead,
  vanGenuchten1980,
  vanGenuchtenBurdine1980,
  type WaterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

const plain = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Evenly over the orders of magnitude, far beyond any medium. */
const orders = (min: number, max: number) => plain(Math.log(min), Math.log(max)).map((x) => Math.exp(x) as never)
const limits = { residual: plain(0, 0.3) as fc.Arbitrary<never>, saturated: plain(0.31, 1) as fc.Arbitrary<never> }
const alpha = orders(1e-8, 1e6)
const scale = orders(1e-6, 1e6)
const family = fc.record({ alpha, n: orders(1.001, 300) })

const models: Record<string, fc.Arbitrary<RetentionModel>> = {
  vanGenuchten1980: fc.record({ ...limits, alpha, n: orders(1.001, 300) }).map(vanGenuchten1980),
  vanGenuchtenBurdine1980: fc.record({ ...limits, alpha, n: orders(2.001, 300) }).map(vanGenuchtenBurdine1980),
  milksFontenoLarson1989: fc
    .record({ ...limits, alpha, n: fc.oneof(orders(0.3, 1), orders(1.01, 300)), m: orders(1e-2, 30) })
    .map(milksFontenoLarson1989),
  logLogisticRetention: fc
    .record({ ...limits, halfSuction: scale, slope: orders(1.01, 300) })
    .map(logLogisticRetention),
  brooksCorey1964: fc.record({ ...limits, airEntry: scale, lambda: orders(1e-3, 300) }).map(brooksCorey1964),
  campbell1974: fc.record({ saturated: limits.saturated, airEntry: scale, b: orders(1e-3, 300) }).map(campbell1974),
  kosugi1996: fc.record({ ...limits, medianSuction: scale, sigma: orders(1e-2, 50) }).map(kosugi1996),
  fredlundXing1994: fc
    .record({
      saturated: limits.saturated,
      scaleSuction: scale,
      n: orders(1e-2, 300),
      m: orders(1e-2, 30),
      residualSuction: orders(1e-2, 1e6),
    })
    .map(fredlundXing1994),
  durner1994: fc
    .record({ ...limits, coarseShare: plain(0, 1) as fc.Arbitrary<never>, coarse: family, fine: family })
    .map(durner1994),
}
const suctions: fc.Arbitrary<SuctionHead> = fc.oneof(
  orders(1e-20, 1e300),
  orders(1e-6, 1e8),
  fc.constantFrom(...([0, Number.MAX_VALUE] as SuctionHead[])),
)

describe.each(Object.entries(models))('%s with numbers far beyond any medium', (_, media) => {
  it('gives finite numbers inside its limits that fall with suction', () => {
    fc.assert(
      fc.property(media, suctions, suctions, (medium, a: SuctionHead, b: SuctionHead) => {
        const [wet, dry] = a <= b ? [a, b] : [b, a]
        for (const s of [wet, dry]) {
          expect(medium.waterContent(s)).toBeGreaterThanOrEqual(medium.residual)
          expect(medium.waterContent(s)).toBeLessThanOrEqual(medium.saturated)
          expect(medium.capacity(s)).toBeGreaterThanOrEqual(0)
          expect(medium.capacity(s)).toBeLessThan(Number.POSITIVE_INFINITY)
        }
        expect(medium.waterContent(dry)).toBeLessThanOrEqual(medium.waterContent(wet) + 1e-15)
        if (medium.relativeConductivity === undefined) return
        const [high, low] = [medium.relativeConductivity(wet), medium.relativeConductivity(dry)]
        expect(low).toBeGreaterThanOrEqual(0)
        expect(low).toBeLessThanOrEqual(high * (1 + 1e-10) + 1e-300)
        expect(high).toBeLessThanOrEqual(1)
      }),
      { numRuns: 500 },
    )
  })
  it('finds the suction of every content, or says that none is finite', () => {
    fc.assert(
      fc.property(media, plain(1e-300, 1), (medium, share) => {
        const content = (medium.residual + share * (medium.saturated - medium.residual)) as WaterContent
        fc.pre(content > medium.residual)
        try {
          const s = medium.suction(content)
          const rounding = 1e-13 + 1e-13 * medium.capacity(s) * s
          expect(Math.abs(medium.waterContent(s) - content)).toBeLessThanOrEqual(rounding)
        } catch (error) {
          if (!isPorewaterError(error)) throw error
          expect(error).toMatchObject({ code: 'outside-domain', hint: expect.stringContaining('no finite suction') })
        }
      }),
      { numRuns: 500 },
    )
  })
  it('finds a bottom suction for every mean content of a container', () => {
    const container = cylinderContainer({ diameter: centimetres(10), height: centimetres(15) })
    fc.assert(
      fc.property(media, plain(1e-9, 1), (medium, share) => {
        const capacity = containerCapacity({ container, medium })
        const content = (medium.residual + share * (capacity - medium.residual)) as WaterContent
        fc.pre(content > medium.residual && content <= capacity)
        try {
          const bottomSuction = bottomSuctionAtRest({ container, medium, waterContent: content })
          const state = { container, medium, bottomSuction }
          // A steep curve turns the last digit of a suction into many of a content.
          const steepest = Math.max(...[0, 5, 10, 15].map((z) => medium.capacity((bottomSuction + z) as SuctionHead)))
          const rounding = 1e-11 + 1e-13 * steepest * (bottomSuction + 15)
          expect(Math.abs(containerCapacity(state) - content)).toBeLessThanOrEqual(rounding)
        } catch (error) {
          if (!isPorewaterError(error)) throw error
          expect(error).toMatchObject({ code: 'outside-domain', hint: expect.stringContaining('no finite suction') })
        }
      }),
      { numRuns: 60 },
    )
  })
  it('fills any container between the contents of its two ends', () => {
    fc.assert(
      fc.property(media, plain(0.1, 200), (medium, height) => {
        const container = frustumContainer({
          bottomDiameter: centimetres(10),
          topDiameter: centimetres(14),
          height: centimetres(height),
        })
        const mean = containerCapacity({ container, medium })
        expect(mean).toBeLessThanOrEqual(medium.saturated + 1e-12)
        expect(mean).toBeGreaterThanOrEqual(medium.waterContent(height as SuctionHead) - 1e-12)
      }),
    )
  })
})
