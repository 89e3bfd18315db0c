import type { Porosity } from '../quantity/generated/kinds.js'
/** The power form of a calibration. */
export interface PowerOfReading {
  /** Power to which the power form raises the reading; leave it out for the others. Unit: 1. Range: (0, 10]. */
  readonly exponent?: number
}

/** How much water the medium can hold. */
export interface PossibleWater {
  /** Porosity of the medium, above which no sample can lie. Unit: 1. Range: (0, 1). */
  readonly porosity?: Porosity
}

/** How sure an interval shall be. */
export interface Confidence {
  /** Confidence of the interval, 0.95 when left out. Unit: 1. Range: [0.5, 0.9999]. */
  readonly confidence?: number
}
