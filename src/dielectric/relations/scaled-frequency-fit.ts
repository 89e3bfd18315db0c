import { sumsAboutMeans } from '../../numerics/sums-about-means.js'
import { SOME_WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { SOME_SCALED_FREQUENCY } from '../domains.js'
import type { ScaledFrequencyLaw } from './scaled-frequency.js'

/** Own samples: what the probe read and how much water was there. */
export interface ScaledFrequencySamples {
  /** Scaled frequencies. Unit: 1. Range: each in (0, 2]. */
  readonly scaled: readonly number[]
  /** Water contents of the same samples, from their mass. Unit: m³/m³. Range: each in (0, 1]. */
  readonly waterContents: readonly WaterContent[]
}

/** The fitted law. */
export interface FittedScaledFrequencyLaw extends ScaledFrequencyLaw {
  /** Water content at a scaled frequency of 1. Unit: m³/m³. */
  readonly factor: number
  /** Power of the scaled frequency. Unit: 1. */
  readonly exponent: number
  /** Number of samples. Unit: 1. */
  readonly samples: number
}

/**
 * Coefficients of the power law between scaled frequency and water content from own samples.
 *
 * The line through logarithms weighs dry samples more than a direct fit would and ends at another optimum.
 *
 * @equation `\ln\theta = \ln a + b\,\ln S \quad\text{by least squares}`
 * @param samples - Scaled frequencies and water contents of the same samples, at least two.
 * @returns Factor, exponent and number of samples.
 * @throws `DomainError` outside the ranges; `InputError` for lists of unequal length, fewer than two samples, or samples that all read the same.
 * @source paltineanu-1997 (form); least squares
 * @example
 * fitScaledFrequency({
 *   scaled: [0.5, 0.6, 0.7, 0.8],
 *   waterContents: [0.11, 0.165, 0.225, 0.305].map(waterContent),
 * }) // => { factor: 0.490948, exponent: 2.154127, samples: 4 }
 */
export function fitScaledFrequency(samples: ScaledFrequencySamples): FittedScaledFrequencyLaw {
  requireObject(samples, 'samples')
  requireList(samples.scaled, 'scaled')
  requireList(samples.waterContents, 'waterContents')
  const n = samples.scaled.length
  if (n !== samples.waterContents.length || n < 2)
    throw new InputError(
      'scaled, waterContents',
      `${n} readings and ${samples.waterContents.length} water contents`,
      'give both for the same samples, at least two',
    )
  const x = samples.scaled.map((value) => Math.log(numberIn(value, SOME_SCALED_FREQUENCY, 'scaled')))
  const y = samples.waterContents.map((value) => Math.log(numberIn(value, SOME_WATER_CONTENT, 'waterContents')))
  const { meanX, meanY, xx, xy } = sumsAboutMeans(x, y)
  if (xx <= 1e-20 * n)
    throw new InputError('scaled', 'all samples read the same', 'take samples of different water contents')
  const exponent = xy / xx
  return { factor: Math.exp(meanY - exponent * meanX), exponent, samples: n }
}
