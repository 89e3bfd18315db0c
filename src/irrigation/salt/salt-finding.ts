import type { DrainEC, DrainFraction } from '../../quantity/generated/kinds.js'
import type { HowSerious } from '../terms.js'
import type { EcDoubt } from './ec-doubt.js'

/** What is to be known of a salt balance, without words; `explainIrrigationFinding` has them. */
export type SaltFinding = SaltsNotSteady | EcDoubt

/** Salts that pile up or leave. */
export interface SaltsNotSteady extends HowSerious {
  /** Salts pile up, or leave. */
  readonly code: 'not-steady'
  /** By how much the EC of the root zone rose in that time. Unit: dS/m. Range: any. */
  readonly rise: number
  /** Measured drain fraction. Unit: 1. Range: any. */
  readonly drainFraction: DrainFraction
  /** Drain fraction that the ECs would mean at a steady state. Unit: 1. Range: any. */
  readonly steadyFraction: DrainFraction | undefined
  /** EC towards which the drain tends. Unit: dS/m. Range: any. */
  readonly headingFor: DrainEC | undefined
}
