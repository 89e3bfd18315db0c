import type { Advice } from '../../quantity/advice.js'
import type { Instant } from '../../quantity/calendar.js'
import type {
  DrainFraction,
  Duration,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../../quantity/generated/kinds.js'
import type { WaterPerEmitter } from '../terms.js'
import type { PlanFinding } from './plan-finding.js'

/** Why a shot is given; `explainIrrigationFinding` has the words. */
export const SHOT_REASONS = ['morning-rewet', 'refill-point', 'last-of-day', 'light-sum', 'set-time', 'given'] as const
export type ShotReason = (typeof SHOT_REASONS)[number]

/** One opening of the valve. */
export interface PlannedShot extends WaterPerEmitter {
  /** When it begins. Unit: s. */
  readonly time: Instant
  /** Water for the container. Unit: L. */
  readonly volume: Volume
  /** How long the valve is open, with the time to fill the line. Unit: s. */
  readonly runTime: Duration
  /** Why now: what asked for it, or `given` for one of the past. */
  readonly reason: ShotReason
  /** Predicted water content just before it. Unit: m³/m³. */
  readonly waterContent: WaterContent
}

/** A plan with what is expected to come of it. */
export interface DayPlan extends Advice {
  /** The openings of the valve, in order. */
  readonly shots: readonly PlannedShot[]
  /** End of each step. Unit: s. */
  readonly time: readonly number[]
  /** Predicted water content at the end of each step. Unit: m³/m³. */
  readonly waterContent: readonly number[]
  /** Predicted drain in each step. Unit: L. */
  readonly drain: readonly number[]
  /** Water given in the plan. Unit: L. */
  readonly applied: Volume
  /** Predicted drain, with what is still on its way at the end. Unit: L. */
  readonly drained: Volume
  /** Predicted uptake. Unit: L. */
  readonly taken: Volume
  /**
   * Predicted share of the water given that drains, without what a container above its capacity would lose anyway; zero when nothing
   * is given. Unit: 1.
   */
  readonly drainFraction: DrainFraction
  /** Share of drain with which the maintenance shots were sized, to reach the wanted share over the day. Unit: 1. */
  readonly shotDrainFraction: DrainFraction
  /** Predicted fall of the water content from the last shot to the first of the next day. Unit: m³/m³. */
  readonly overnightDryDown: WaterContentChange
  /** What could not be believed, what was dropped, and what was wanted and cannot be had; `explainIrrigationFinding` has the words. */
  readonly findings: readonly PlanFinding[]
}
