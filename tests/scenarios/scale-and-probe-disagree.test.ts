import {
  drainFraction,
  kilograms,
  litres,
  probeAgainstScale,
  responseToShots,
  squareMetres,
  waterContent,
  waterContentChange,
  waterUseDepthFromWeighing,
  waterUseFromWeighing,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Source of facts and numbers: reference scenario, recomputed (an invented but plausible container).
 * A container with 12 L of coir stands on a scale and covers 0.36 m². Over a day it goes from 14.20 to 14.62 kg, with 1.80 L given and
 * 0.46 L drained; its probe goes from 0.520 to 0.532. The probe has air at its pins. Two people lift it: a litre weighs a kilogram.
 */
describe('a scale and a probe that disagree', () => {
  const weighings = { before: kilograms(14.2), after: kilograms(14.62), applied: litres(1.8), drained: litres(0.46) }
  const both = probeAgainstScale({
    massBefore: kilograms(14.2),
    massAfter: kilograms(14.62),
    waterContentBefore: waterContent(0.52),
    waterContentAfter: waterContent(0.532),
    substrateVolume: litres(12),
  })
  const within = (got: number, answer: number, tolerance: number) =>
    expect(Math.abs(got - answer)).toBeLessThanOrEqual(tolerance)

  it('used 0.92 L by the scale, 2.56 mm, and drained a quarter', () => {
    within(waterUseFromWeighing(weighings), 0.92, 9.2e-5)
    within(waterUseDepthFromWeighing({ ...weighings, area: squareMetres(0.36) }), 2.55556, 0.000256)
    within(drainFraction({ applied: litres(1.8), drained: litres(0.46) }), 0.255556, 2.56e-5)
  })
  it('stored 0.42 L, of which the probe saw 0.144 L', () => {
    within(both.weighed, 0.42, 4.2e-5)
    within(both.seen, 0.144, 1.44e-5)
    within(both.difference, -0.276, 2.76e-5)
    within(both.waterContentDifference, -0.023, 2.3e-6)
  })
  it('would have been taken for a use of 1.196 L with the probe alone', () => {
    within(1.8 - 0.46 - both.seen, 1.196, 0.00012)
  })
  it('is a reason to look at the probe', () => {
    const seen = responseToShots({
      shots: [{ rise: waterContentChange(0.012), retained: litres(0.42) }],
      substrateVolume: litres(12),
    })
    expect(seen.findings.map(({ code }) => code)).toEqual(['probe-sees-little', 'few-shots'])
  })
})
