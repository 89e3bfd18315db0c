import { WATER_CONTENT } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../quantity/guard.js'
import { PREDICTED_CONTENT } from './domains.js'

/** Water contents that were weighed and what something else said they were. */
export interface WaterContentPairs {
  /** Weighed water contents. Unit: m³/m³. Range: each in [0, 1]. */
  readonly observed: readonly WaterContent[]
  /** What the probe, the calibration or the model gave, in the same order. Unit: m³/m³. Range: each in (-∞, ∞). */
  readonly predicted: readonly WaterContent[]
}

/** How far predictions lie from what was weighed. */
export interface WaterContentAgreement {
  /** Number of pairs. Unit: 1. */
  readonly pairs: number
  /** Mean of predicted less observed: what an offset would repair. Unit: m³/m³. */
  readonly bias: number
  /** Root of the mean squared difference. Unit: m³/m³. */
  readonly rmse: number
  /** The same after the bias is taken off. Unit: m³/m³. */
  readonly unbiasedRmse: number
  /** Mean of the absolute differences. Unit: m³/m³. */
  readonly meanAbsoluteError: number
  /** Squared correlation, blind to offset and slope; 0 when either has no spread. Unit: 1. */
  readonly rSquared: number
  /** Share of the observed spread that the predictions explain: 1 at best, below 0 when the observed mean would be better; missing without spread. Unit: 1. */
  readonly efficiency?: number
}

/**
 * How far water contents from a probe lie from weighed ones.
 *
 * A high r² with a large bias means that the probe needs a calibration, not that it is good.
 *
 * @equation `b = \overline{p - o}, \quad \mathrm{RMSE}^2 = \overline{(p - o)^2}, \quad \mathrm{ubRMSE}^2 = \mathrm{RMSE}^2 - b^2, \quad
 * E = 1 - \frac{\sum (p - o)^2}{\sum (o - \bar o)^2}`
 * @returns Bias, RMSE, unbiased RMSE, mean absolute error, r² and efficiency.
 * @throws `DomainError` outside the ranges; `InputError` for lists of different length or fewer than two pairs.
 * @source entekhabi-2010 (bias, RMSE, unbiased RMSE)
 * @source nash-1970 (efficiency)
 * @example
 * evaluateWaterContents({
 *   observed: [0.2, 0.4, 0.6].map(waterContent),
 *   predicted: [0.25, 0.45, 0.65].map(waterContent),
 * }) // => { bias: 0.05, rmse: 0.05, meanAbsoluteError: 0.05, rSquared: 1, efficiency: 0.90625 }
 */
export function evaluateWaterContents(pairs: WaterContentPairs): WaterContentAgreement {
  requireObject(pairs, 'pairs')
  requireList(pairs.observed, 'observed')
  requireList(pairs.predicted, 'predicted')
  const { observed, predicted } = pairs
  const n = observed.length
  if (n !== predicted.length || n < 2)
    throw new InputError(
      'observed, predicted',
      `${n} observed and ${predicted.length} predicted`,
      'give both for the same samples, at least two',
    )
  const o = observed.map((value) => numberIn(value, WATER_CONTENT, 'observed'))
  const p = predicted.map((value) => numberIn(value, PREDICTED_CONTENT, 'predicted'))
  const mean = (values: readonly number[]) => values.reduce((total, value) => total + value, 0) / n
  const errors = p.map((value, i) => value - o[i]!)
  const bias = mean(errors)
  const [meanO, meanP] = [mean(o), mean(p)]
  const spread = mean(o.map((value) => (value - meanO) ** 2))
  const spreadP = mean(p.map((value) => (value - meanP) ** 2))
  const shared = mean(o.map((value, i) => (value - meanO) * (p[i]! - meanP)))
  const squared = mean(errors.map((e) => e * e))
  return {
    pairs: n,
    bias,
    rmse: Math.sqrt(squared),
    unbiasedRmse: Math.sqrt(mean(errors.map((e) => (e - bias) ** 2))),
    meanAbsoluteError: mean(errors.map(Math.abs)),
    rSquared: spread > 0 && spreadP > 0 ? (shared / spread) * (shared / spreadP) : 0,
    ...(spread > 0 ? { efficiency: 1 - squared / spread } : {}),
  }
}
