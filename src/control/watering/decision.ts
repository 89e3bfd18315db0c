import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { WateringDoubt, WateringFinding, WateringReason } from './findings/finding.js'

/** What is decided. It is a proposal to a controller that has limits of its own, never an order past them. */
export interface WateringDecision {
  readonly open: boolean
  /** Close after this time, whether or not another decision comes. Unit: s. */
  readonly closeAfter: Duration
  /**
   * Number of the opening: an actuator that gives each number once is safe from messages that come twice or late. It rises with the clock, so that none
   * comes again after a state that was lost. Unit: 1.
   */
  readonly opening: number
  /** What decided. */
  readonly reason: WateringReason
  /** The level that was decided on, or why there is none. */
  readonly waterContent:
    | { readonly known: true; readonly value: WaterContent }
    | { readonly known: false; readonly reason: WateringDoubt }
  /** Volume given in the last 24 hours, rather too much than too little. Unit: L. */
  readonly givenInDay: Volume
  /** What somebody should look at. */
  readonly findings: readonly WateringFinding[]
}
