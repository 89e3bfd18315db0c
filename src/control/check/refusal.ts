import type { CodedFinding } from '../../quantity/finding.js'

/** Why a shot is refused. */
export type RefusalCode =
  | 'input-unreadable'
  | 'limit-unknown'
  | 'request-unclear'
  | 'limit-missing'
  | 'limits-contradict'
  | 'volume-not-run-time'
  | 'shot-too-large'
  | 'run-too-long'
  | 'given-unknown'
  | 'beyond-limit-of-day'
  | 'last-shot-unknown'
  | 'too-soon'
  | 'reading-unknown'
  | 'unbelievable-reading'
  | 'old-reading'
  | 'doubtful-reading'
  | 'full'
  | 'too-soon-for-back-up'
  | 'clock-unknown'
  | 'leak-unknown'
  | 'leaks-while-closed'
  | 'lock-unknown'
  | 'zone-locked'
  | 'alarms-unknown'
  | 'alarm'

/** One reason against a shot, as code and numbers; `explainControlFinding` has the words. */
export type WateringRefusal = CodedFinding<RefusalCode>

/** Whether a shot may be given, and every reason why not. */
export interface WateringCheck {
  readonly allowed: boolean
  /** Why not; empty only when it is allowed. */
  readonly refusals: readonly WateringRefusal[]
}
