import type { CodedFinding } from '../../quantity/finding.js'

/** Why a shot is refused. */
export type RefusalCode =
  | 'request-unclear'
  | 'limit-missing'
  | 'limits-contradict'
  | 'volume-not-run-time'
  | 'shot-too-large'
  | 'run-too-long'
  | 'given-unknown'
  | 'day-used-up'
  | 'last-shot-unknown'
  | 'too-soon'
  | 'no-reading'
  | 'unbelievable-reading'
  | 'old-reading'
  | 'doubtful-reading'
  | 'full'
  | 'too-soon-for-back-up'
  | 'clock-doubtful'
  | 'leak-unknown'
  | 'flow-while-closed'
  | 'lock-unknown'
  | 'locked'
  | 'alarms-unknown'
  | 'alarm'

/** One reason against a shot, as code and numbers; `explainRefusal` has the words. */
export type WateringRefusal = CodedFinding<RefusalCode>

/** Whether a shot may be given, and every reason why not. */
export interface WateringCheck {
  readonly allowed: boolean
  /** Why not; empty only when it is allowed. */
  readonly refusals: readonly WateringRefusal[]
}
