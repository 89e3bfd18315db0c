import { studentTwoSided } from '../numerics/student-t.js'
import { CONFIDENCE } from '../quantity/domains.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import { DEGREES_OF_FREEDOM } from './domains.js'

/** What decides how many standard uncertainties make an interval. */
export interface CoverageInput {
  /** Wanted share of cases inside the interval. Unit: 1. Range: [0.5, 0.9999]. */
  readonly confidence: number
  /** Degrees of freedom, need not be whole; unlimited when left out. Unit: 1. Range: [0.1, ∞). */
  readonly degreesOfFreedom?: number
}

/** A share that an interval can promise. */
export function checkConfidence(confidence: number): number {
  return numberIn(confidence, CONFIDENCE, 'confidence')
}

/**
 * By how much a standard uncertainty is multiplied to cover a wanted share of cases: two-sided Student's t.
 *
 * @equation `k = t_{(1 + p)/2}(\nu)`
 * @returns Coverage factor. Unit: 1.
 * @source jcgm-100-2008, Annex G.3 and Table G.2
 * @example
 * coverageFactor({ confidence: 0.99, degreesOfFreedom: 16 }) // => 2.92
 */
export function coverageFactor(input: CoverageInput): number {
  const { confidence, degreesOfFreedom } = optionsOf(input)
  const p = checkConfidence(confidence)
  return studentTwoSided(
    p,
    degreesOfFreedom === undefined ? Infinity : numberIn(degreesOfFreedom, DEGREES_OF_FREEDOM, 'degreesOfFreedom'),
  )
}
