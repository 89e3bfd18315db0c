import { answersOf } from '../quantity/answer.js'
import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import type { ProbeCalibration, ProbeReading } from './calibration.js'
import { requireCalibration, slopeOf, valueAt } from './calibration-curve.js'
import { powers } from './calibration-polynomial.js'
import { checkReading } from './calibration-samples.js'
import { READING_NOISE } from './domains.js'
import { powerOf } from './power-of.js'

/** A reading whose water content is wanted with its uncertainty. */
export interface UncertainReading {
  /** A fitted calibration, made by `fitCalibration` or `restoreCalibration`. */
  readonly calibration: ProbeCalibration
  /** What the probe reports. Unit: raw. Range: (-∞, ∞). */
  readonly reading: ProbeReading
  /** Standard deviation of readings of one insertion, 0 when left out. Unit: raw. Range: [0, ∞). */
  readonly standardDeviation?: number
}

/** A water content and how uncertain it is, by cause. */
export interface CalibratedUncertainty {
  /** Water content. Unit: m³/m³. */
  readonly waterContent: WaterContent
  /** Combined standard uncertainty. Unit: m³/m³. */
  readonly standardUncertainty: number
  /** From the coefficients: few samples, or a reading far from them. Unit: m³/m³. */
  readonly fromCoefficients: number
  /** From the scatter of single samples around the curve: packing, contact, weighing. Unit: m³/m³. */
  readonly fromScatter: number
  /** From the noise of the reading. Unit: m³/m³. */
  readonly fromReading: number
  /** Degrees of freedom of the scatter. Unit: 1. */
  readonly degreesOfFreedom: number
}

/**
 * Standard uncertainty of a water content from a fitted calibration.
 *
 * C is the covariance of the coefficients and s the residual standard deviation. It holds for a new place in the same medium that
 * scatters as the samples did. For a calibration of two points propagate the uncertainties of the samples instead.
 *
 * @equation `u^2 = \mathbf{u}^T C\,\mathbf{u} + s^2 + \left(\frac{d\theta}{dr}\right)^2 s_r^2`
 * @param input - Calibration, reading and its noise.
 * @returns The water content with its standard uncertainty and the shares of its causes.
 * @throws `DomainError` outside the ranges; `InputError` when the calibration has no residuals to judge it by.
 * @source jcgm-100-2008, sections 5 and H.3
 * @example
 * const samples = [
 *   [2.1, 0.04], [8.4, 0.2], [16.8, 0.36], [27, 0.5], [39.7, 0.64], [54.8, 0.8],
 * ].map(([e, theta]) => ({ reading: permittivity(e), waterContent: waterContent(theta) }))
 * const calibration = fitCalibration({ samples, form: 'square-root' })
 * calibratedUncertainty({ calibration, reading: permittivity(30), standardDeviation: 0.5 }).standardUncertainty // => 0.01438
 */
export function calibratedUncertainty(input: UncertainReading): CalibratedUncertainty {
  requireObject(input, 'input')
  const { calibration, reading, standardDeviation = 0 } = input
  requireCalibration(calibration)
  const { statistics, exponent } = calibration
  const r = checkReading(reading, exponent)
  const noise = numberIn(standardDeviation, READING_NOISE, 'standardDeviation')
  const freedom = statistics === undefined ? 0 : statistics.samples - statistics.parameters
  if (statistics === undefined || freedom < 1 || statistics.covariance.length === 0)
    throw new InputError(
      'calibration',
      `a ${calibration.method} leaves nothing to judge it by`,
      'fit a line or a parabola to more samples, or propagate the uncertainty of the samples with propagateFirstOrder()',
    )
  const u = powers((powerOf(r, exponent) - statistics.centre) / statistics.halfWidth, statistics.parameters - 1)
  const variance = statistics.covariance.reduce(
    (total, row, i) => total + u[i]! * row.reduce((sum, value, k) => sum + value * u[k]!, 0),
    0,
  )
  const fromReading = noise === 0 ? 0 : Math.abs(slopeOf(calibration, r)) * noise
  if (fromReading - fromReading !== 0)
    throw new InputError('reading', `the curve is vertical at ${r}`, 'ask at a reading above zero')
  return answersOf(
    {
      waterContent: valueAt(calibration, r) as WaterContent,
      standardUncertainty: Math.sqrt(variance + statistics.residualStandardDeviation ** 2 + fromReading ** 2),
      fromCoefficients: Math.sqrt(variance),
      fromScatter: statistics.residualStandardDeviation,
      fromReading,
      degreesOfFreedom: freedom,
    },
    'standardDeviation',
  )
}
