import type { Permittivity, Porosity, WaterContent } from '../quantity/generated/kinds.js'
import type { RawReading } from '../quantity/raw-reading.js'
import type { ProbeFinding } from './probe-finding.js'

/** What a probe reports: a number in a unit of its own, or an apparent permittivity. */
export type ProbeReading = RawReading | Permittivity

/** Words of `CalibrationForm`. */
export const CALIBRATION_FORMS = ['line', 'square-root', 'power', 'quadratic', 'cubic', 'monotone-cubic'] as const

/**
 * The curve that turns readings into water content: a line in the reading, in its square root or in another power of it, a parabola or
 * a cubic by least squares, or a cubic through every sample that never turns.
 */
export type CalibrationForm = (typeof CALIBRATION_FORMS)[number]

/** One sample of medium: what the probe reported in it, and what the scale says it held. */
export interface CalibrationSample {
  /** Reading of the probe; zero or more for the forms with a square root or a power. Unit: raw. Range: (-∞, ∞). */
  readonly reading: ProbeReading
  /** Water content from weighing. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** A place that a monotone cubic passes through. */
export interface CalibrationKnot {
  /** Reading. Unit: raw. */
  readonly reading: number
  /** Water content there. Unit: m³/m³. */
  readonly waterContent: number
  /** Slope of the curve there. Unit: m³/m³ per raw. */
  readonly slope: number
}

/** How well a fitted calibration meets its samples. */
export interface CalibrationStatistics {
  /** Number of samples. Unit: 1. */
  readonly samples: number
  /** Number of fitted parameters. Unit: 1. */
  readonly parameters: number
  /** Root of the mean squared residual: the sum is divided by the number of samples. Unit: m³/m³. */
  readonly rmse: number
  /** Residual standard deviation: the sum is divided by the samples less the parameters. Unit: m³/m³. */
  readonly residualStandardDeviation: number
  /** Mean of fitted less weighed water content. Unit: m³/m³. */
  readonly bias: number
  /** Share of the spread of the water contents that the curve explains. Unit: 1. */
  readonly rSquared: number
  /** Root of the mean squared error when each sample is predicted by a fit to the others; missing when a sample decides alone. Unit: m³/m³. */
  readonly leaveOneOutRmse?: number
  /** Standard error of each coefficient, from the constant upwards; empty for a monotone cubic. Unit: m³/m³ per power of the reading. */
  readonly standardErrors: readonly number[]
  /** Covariance of the coefficients of the same curve written in u = (x - centre) / halfWidth; empty for a monotone cubic. */
  readonly covariance: readonly (readonly number[])[]
  /** Middle of the powers of the readings. Unit: power of the reading. */
  readonly centre: number
  /** Half their spread. Unit: power of the reading. */
  readonly halfWidth: number
}

/**
 * What a probe's readings mean in one medium: plain data, so that it can be kept as JSON and used years later.
 * The water content is `c0 + c1 x + c2 x² + c3 x³`, where `x` is the reading raised to `exponent`; with `knots` it is the cubic
 * through them instead.
 */
export interface ProbeCalibration {
  /** Version of this shape. */
  readonly version: 1
  /** How it was found, in words for people. */
  readonly method: string
  readonly form: CalibrationForm
  /** Power to which the reading is raised: 1, 0.5 for the square root, or another one. Unit: 1. */
  readonly exponent: number
  /** From the constant upwards; empty for a monotone cubic. Unit: m³/m³ per power of the reading. */
  readonly coefficients: readonly number[]
  /** Places of a monotone cubic, by rising reading; empty for the other forms. */
  readonly knots: readonly CalibrationKnot[]
  /** What the samples span. */
  readonly span: {
    /** Lowest reading. Unit: raw. */
    readonly min: number
    /** Highest reading. Unit: raw. */
    readonly max: number
    /** Water content of the driest sample. Unit: m³/m³. */
    readonly driest: number
    /** Water content of the wettest sample. Unit: m³/m³. */
    readonly wettest: number
  }
  /** Porosity of the medium, where it was given. Unit: 1. */
  readonly porosity?: Porosity
  /** The samples it was made from. */
  readonly samples: readonly CalibrationSample[]
  /** How well it meets its samples; missing for two points, which any curve meets. */
  readonly statistics?: CalibrationStatistics
  /** What should be known about it. */
  readonly findings: readonly ProbeFinding[]
}

/** A water content with what should be known about it. */
export interface CalibratedReading {
  /** Water content, as the calibration gives it, even outside its span. Unit: m³/m³. */
  readonly waterContent: WaterContent
  readonly findings: readonly ProbeFinding[]
}
