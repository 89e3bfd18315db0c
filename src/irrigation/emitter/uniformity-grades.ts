import { answerOf } from '../../quantity/answer.js'
import { EMITTERS } from '../../quantity/domains.js'
import type { Flow, Share } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { COEFFICIENT_OF_VARIATION, EMITTER_FLOW, MIN_FLOW, STATISTICAL_UNIFORMITY } from '../domains.js'

/** How good an emitter is by its variation of manufacture. */
export type EmitterGrade = 'excellent' | 'average' | 'marginal' | 'poor' | 'unacceptable'

/**
 * Class of a point-source emitter by the coefficient of variation of its manufacture.
 *
 * @param variation - Coefficient of variation of new emitters at one pressure. Unit: 1. Range: [0, ∞).
 * @procedure Up to 0.05 excellent, 0.07 average, 0.11 marginal, 0.15 poor, and unacceptable above.
 * @returns The class.
 * @source asabe-ep405
 * @example
 * emitterGrade(0.06) // => 'average'
 */
export function emitterGrade(variation: number): EmitterGrade {
  numberIn(variation, COEFFICIENT_OF_VARIATION)
  if (variation <= 0.05) return 'excellent'
  if (variation <= 0.07) return 'average'
  if (variation <= 0.11) return 'marginal'
  return variation <= 0.15 ? 'poor' : 'unacceptable'
}

/** How good the field is by its statistical uniformity. */
export type UniformityGrade = 'excellent' | 'good' | 'fair' | 'poor' | 'unacceptable'

/**
 * Class of a drip system in the field by its statistical uniformity.
 *
 * @param uniformity - Statistical uniformity as a share. Unit: 1. Range: (-∞, 1].
 * @procedure From 90 % excellent, 80 % good, 70 % fair, 60 % poor, and unacceptable below.
 * @returns The class.
 * @source asabe-ep458
 * @example
 * uniformityGrade(percent(87)) // => 'good'
 */
export function uniformityGrade(uniformity: Share): UniformityGrade {
  numberIn(uniformity, STATISTICAL_UNIFORMITY)
  if (uniformity >= 0.9) return 'excellent'
  if (uniformity >= 0.8) return 'good'
  if (uniformity >= 0.7) return 'fair'
  return uniformity >= 0.6 ? 'poor' : 'unacceptable'
}

/** Emitters of a design and the flows that its pressures give. */
export interface DesignEmissionUniformityInput {
  /** Coefficient of variation of manufacture. Unit: 1. Range: [0, ∞). */
  readonly variation: number
  /** Emitters that share a plant; half an emitter where two plants share one. Unit: 1. Range: (0, 100000]. */
  readonly emitters: number
  /** Flow of an emitter at the lowest pressure of the zone. Unit: L/h. Range: [0, ∞). */
  readonly minFlow: Flow
  /** Mean flow of the emitters. Unit: L/h. Range: (0, ∞). */
  readonly meanFlow: Flow
}

/**
 * Emission uniformity that a design can be expected to have: manufacture and pressure together.
 *
 * @equation `EU = \left(1 - 1.27 \frac{CV_m}{\sqrt{n}}\right) \frac{q_{min}}{\bar q}`
 * @returns Share; negative where the variation alone is larger than the mean. Unit: 1.
 * @source keller-1974; asabe-ep405
 * @example
 * const design = { variation: 0.07, emitters: 1, minFlow: litresPerHour(3.5), meanFlow: litresPerHour(4) }
 * inPercent(designEmissionUniformity(design)) // => 79.72125
 */
export function designEmissionUniformity(input: DesignEmissionUniformityInput): Share {
  requireObject(input, 'input')
  const spread =
    numberIn(input.variation, COEFFICIENT_OF_VARIATION, 'variation') /
    Math.sqrt(numberIn(input.emitters, EMITTERS, 'emitters'))
  return answerOf(
    (1 - 1.27 * spread) *
      (numberIn(input.minFlow, MIN_FLOW, 'minFlow') / numberIn(input.meanFlow, EMITTER_FLOW, 'meanFlow')),
    'meanFlow',
  ) as Share
}
