import type { CodedFinding } from '../../../quantity/finding.js'
import type { LatchedCode } from './latched-codes.js'

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
  | 'decisions-missing'
  | 'valve-reported-open'

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
  | 'shots-fall-behind'
  | 'unknown-probe'
  | 'clock-doubtful'
  | LatchedCode
  | 'by-hand-refused'
  | 'override-refused'
  | 'acknowledge-refused'

/** Something that a person should know about a decision, as codes and numbers; `explainControlFinding` has the words. */
export type WateringFinding = CodedFinding<WateringDoubt>
