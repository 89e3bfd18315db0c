import type { HowSerious } from '../terms.js'

/** What is to be known of emitters, without words; `explainIrrigationFinding` has them. */
export interface EmitterFinding extends HowSerious {
  /** Which limit is passed. */
  readonly code: 'pressure-below-curve' | 'pressure-above-curve' | 'few-catches' | 'uneven-zone' | 'weak-emitters'
  /** The pressure, the catches, the share of the driest quarter, or the weak emitters. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** The end of the curve, the catches that are enough, the share that will do, or all emitters. Unit: that of `unit`. Range: any. */
  readonly limit: number
  /** Unit of both numbers. */
  readonly unit: 'kPa' | '1'
}
