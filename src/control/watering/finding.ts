import type { Finding } from '../../quantity/finding.js'

/** Why the valve is open or closed: the one thing that decided. */
export type WateringReason =
  | 'dry'
  | 'refill'
  | 'back-up-shot'
  | 'override-water'
  | 'wet-enough'
  | 'shot-given'
  | 'resting'
  | 'waiting-for-probe'
  | 'day-used-up'
  | 'pace-limit'
  | 'outside-hours'
  | 'no-reading'
  | 'back-up-not-due'
  | 'back-up-used-up'
  | 'starting'
  | 'state-lost'
  | 'locked'
  | 'override-closed'
  | 'clock-unreadable'
  | 'clock-leapt'
  | 'clock-stands-still'
  | 'clock-settling'
  | 'decisions-too-seldom'
  | 'valve-stuck-open'

/** What makes the decision doubtful, or what somebody must look at. */
export type WateringDoubt =
  | 'reading-missing'
  | 'reading-old'
  | 'reading-from-the-future'
  | 'reading-unbelievable'
  | 'reading-frozen'
  | 'reading-fell-too-fast'
  | 'shots-without-rise'
  | 'probes-disagree'
  | 'reads-too-high'
  | 'use-too-small'
  | 'use-too-large'
  | 'unknown-probe'
  | 'clock-doubtful'
  | 'flow-while-closed'
  | 'no-flow'
  | 'flow-too-large'
  | 'flow-too-small'
  | 'drain-while-dry'
  | 'valve-does-not-close'
  | 'by-hand-refused'
  | 'override-refused'
  | 'acknowledge-refused'

/** Something that a person should know about a decision, as codes and numbers; `explainWatering` has the words. */
export interface WateringFinding {
  readonly code: WateringDoubt
  readonly level: Finding['level']
  /** The probe that it is about. */
  readonly about?: string
  /** The number that tells. Unit: that of `unit`. */
  readonly value?: number
  readonly unit?: string
}
