import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { RehearsalFault } from '../faults/fault.js'
import type { HeardAlarm } from './heard-alarms.js'
import type { RehearsalCourse } from './rehearsal-course.js'
import type { RehearsalFinding } from './rehearsal-finding.js'
import type { RestBetweenOpenings, TimeToAlarm } from './rehearsal-reason.js'
import type { Opening } from './tally.js'

/** What came of a rehearsal. Volumes are those of one container. */
export interface RehearsalOutcome {
  /** With the faults, all that is needed to see the same history again. Unit: 1. */
  readonly seed: number
  readonly faults: readonly RehearsalFault[]
  /** The course, where it was asked for. */
  readonly course?: RehearsalCourse
  /** Every opening that the controller wanted. */
  readonly openings: readonly Opening[]
  /** Every alarm when it was raised. */
  readonly alarms: readonly HeardAlarm[]
  /** Water through the valve. Unit: L. */
  readonly given: Volume
  /** What of it passed while the controller wanted the valve closed. Unit: L. */
  readonly unordered: Volume
  /** Water by hand. Unit: L. */
  readonly byHand: Volume
  /** Drain of the containers. Unit: L. */
  readonly drained: Volume
  /** What the plants used. Unit: L. */
  readonly used: Volume
  /** Water that ran out beside the containers, from line and bursts. Unit: L. */
  readonly spilt: Volume
  /** Most water in any 24 h that the controller wanted. Unit: L. */
  readonly worstDay: Volume
  /** The same with what passed against its will. Unit: L. */
  readonly worstDayInAll: Volume
  /** Longest opening that the controller wanted. Unit: s. */
  readonly maxOpening: Duration
  /** Shortest time from the end of an opening to the start of the next. */
  readonly minRest: RestBetweenOpenings
  /** Openings outside the allowed hours, by the true clock. Unit: 1. */
  readonly outsideHours: number
  /** The same by the controller's own clock. Unit: 1. */
  readonly outsideHoursByOwnClock: number
  /** Openings without any reading that could be believed. Unit: 1. */
  readonly blindOpenings: number
  /** Water in the worst 24 h from openings without any reading that could be believed. Unit: L. */
  readonly worstBlindDay: Volume
  /** Time below the stress level. Unit: s. */
  readonly stressTime: Duration
  /** Time above the full level. Unit: s. */
  readonly fullTime: Duration
  /** Least mean water content. Unit: m³/m³. */
  readonly driest: WaterContent
  /** Most mean water content. Unit: m³/m³. */
  readonly wettest: WaterContent
  /** Time from the start of each fault to an alarm that names it. */
  readonly timeToAlarm: readonly TimeToAlarm[]
  /** The same where it stands first or second in the list. */
  readonly timeToFirstAlarms: readonly TimeToAlarm[]
  /** Alarms that name nothing that is wrong. Unit: 1. */
  readonly falseAlarms: number
  /** Calls in which the controller threw an error; the valve was then closed. Unit: 1. */
  readonly refusals: number
  /** Water that the simulation lost or made. Unit: L. */
  readonly imbalance: Volume
  /** What broke a limit, and what plants had to bear. */
  readonly findings: readonly RehearsalFinding[]
}
