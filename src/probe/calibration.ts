import type { Finding } from '../quantity/finding.js'
import type { WaterContent } from '../quantity/water-content.js'

/**
 * What a probe's readings mean in one medium: plain data, so that it can be kept as JSON and used years later.
 * The water content is `c0 + c1 x + c2 x² + c3 x³`, where `x` is the reading or its square root.
 */
export interface ProbeCalibration {
  /** Version of this shape. */
  readonly version: 1
  /** How it was found, in words for people. */
  readonly method: string
  /** What is put into the polynomial: the reading as it is, or its square root. */
  readonly of: 'reading' | 'square root of reading'
  /** From the constant upwards. Unit: m³/m³ per power of the reading. */
  readonly coefficients: readonly number[]
  /** The readings between which samples were taken. */
  readonly span: {
    /** Unit: raw. */
    readonly lowest: number
    /** Unit: raw. */
    readonly highest: number
  }
}

/** A water content with what should be known about it. */
export interface CalibratedReading {
  /** Water content, as the calibration gives it, even outside its span. Unit: m³/m³. */
  readonly waterContent: WaterContent
  readonly warnings: readonly Finding[]
}
