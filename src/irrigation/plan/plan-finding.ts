import type { Instant } from '../../quantity/calendar.js'
import type { HowSerious } from '../terms.js'

/** What a finding of a plan can be about. */
export const PLAN_FINDING_CODES = [
  'impossible-water-content',
  'water-content-above-capacity',
  'measured-content-doubted',
  'unusual-demand',
  'large-shot',
  'given-more-than-allowed',
  'given-twice',
  'given-unlike-run-time',
  'set-time-dropped',
  'no-time-to-water',
  'night-not-planned',
  'below-refill-point',
  'more-drain-than-wanted',
  'less-drain-than-wanted',
  'more-dry-down-than-wanted',
  'less-dry-down-than-wanted',
  'runs-dry',
  'daily-limit-reached',
] as const
export type PlanFindingCode = (typeof PLAN_FINDING_CODES)[number]

/** What stands in the way. */
export const PLAN_CAUSES = [
  'above-capacity',
  'below-min-water-content',
  'bypass',
  'full-point',
  'limits',
  'dry-down',
  'hours',
  'outside-plan',
  'rest',
  'full',
  'day-limit',
] as const
export type PlanCause = (typeof PLAN_CAUSES)[number]

/** What is to be known of a plan, as codes and numbers; `explainIrrigationFinding` has the words. */
export type PlanFinding = PlanFindingCause & (MissedWish | { readonly [Name in keyof MissedWish]?: never })

/** Which finding of a plan it is, and what it is about. */
export interface PlanFindingCause extends HowSerious {
  /** Which finding it is. */
  readonly code: PlanFindingCode
  /** The argument that it is about. */
  readonly about: string
  /** What stands in the way. */
  readonly because?: PlanCause
  /** The moment that it is about. Unit: s. Range: any. */
  readonly time?: Instant
}

/** What a plan reaches, and what was wanted. */
export interface MissedWish {
  /** What is reached, given or read. Unit: that of `unit`. Range: any. */
  readonly reached: number
  /** What was wanted, allowed or predicted instead. Unit: that of `unit`. Range: any. */
  readonly wanted: number
  /** Unit of both numbers. */
  readonly unit: 'm³/m³' | 'L' | '1'
}

/** A finding with what is reached and what was wanted. */
export function missed(
  code: PlanFindingCode,
  about: string,
  reached: number,
  wanted: number,
  unit: MissedWish['unit'],
  level: PlanFinding['level'] = 'caution',
  because?: PlanCause,
): PlanFinding {
  return { code, level, about, reached, wanted, unit, ...(because && { because }) }
}

/** A set time at which no shot is given, and why. */
export function timeDropped(time: number, because: PlanCause): PlanFinding {
  return { code: 'set-time-dropped', level: 'caution', about: 'trigger.times', time: time as Instant, because }
}
