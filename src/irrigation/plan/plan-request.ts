import type { ContainerFlow } from '../../flow/container-flow.js'
import type { StoreState, WaterStore } from '../../flow/water-store.js'
import type { Instant } from '../../quantity/calendar.js'
import type { Finding } from '../../quantity/finding.js'
import type { Duration } from '../../quantity/generated/duration.js'
import type { Flow } from '../../quantity/generated/flow.js'
import type { DrainFraction } from '../../quantity/generated/share.js'
import type { Volume } from '../../quantity/generated/volume.js'
import type { WaterContent, WaterContentChange } from '../../quantity/generated/water-content.js'

/** How the moment of a shot is chosen. */
export type ShotTrigger =
  | { readonly by: 'level' }
  | {
      readonly by: 'light'
      /** Light in each step of the demand course. Unit: J/cm². Range: each in [0, ∞). */
      readonly radiation: ArrayLike<number>
      /** Light between two shots; what is over is kept. Unit: J/cm². Range: (0, ∞). */
      readonly threshold: number
    }
  | { readonly by: 'clock'; readonly times: readonly Instant[] }

/** What a plan for a day has to respect. Volumes are for one container, or for what one probe stands for. */
export interface DayPlanRequest {
  /** Beginning of the plan. Unit: s. Range: any. */
  readonly start: Instant
  /** Length of one step of the demand course; shots begin with a step. Unit: s. Range: [30, 3600]. */
  readonly step: Duration
  /** Water that the plants will take in each step. Unit: L. Range: each in [0, ∞). */
  readonly demand: ArrayLike<number>
  /** The container, as the storage model sees it. */
  readonly container: WaterStore
  /** Water content at the start. Unit: m³/m³. Range: [0, 1]. */
  readonly content: WaterContent
  /** Water content at which to water again. Unit: m³/m³. Range: (0, 1). */
  readonly refillPoint: WaterContent
  /** Water content that a shot must not exceed. Unit: m³/m³. Range: (0, 1]. */
  readonly fullPoint: WaterContent
  /** Share of the day's water that should drain. Unit: 1. Range: [0, 0.9]. */
  readonly drainFraction: DrainFraction
  /** No shot begins earlier. Unit: s. Range: any. */
  readonly firstShot: Instant
  /** No shot begins later. Unit: s. Range: any. */
  readonly lastShot: Instant
  /** By how much the container should dry from the last shot until the end of the plan. Unit: m³/m³. Range: [0, 1]. */
  readonly overnightDryDown?: WaterContentChange
  /** Emitters in the container. Unit: 1. Range: integers [1, 1000]. */
  readonly emitters: number
  /** Flow of one emitter. Unit: L/h. Range: (0, ∞). */
  readonly emitterFlow: Flow
  /** Time until the line is full and all emitters run. Unit: s. Range: [0, 3600]. */
  readonly lineFill: Duration
  /** Shortest time for which the valve may open. Unit: s. Range: [0, 86400]. */
  readonly minRunTime: Duration
  /** Longest time for which the valve may open. Unit: s. Range: (0, 86400]. */
  readonly maxRunTime: Duration
  /** Shortest time from the beginning of one shot to that of the next. Unit: s. Range: [0, 86400]. */
  readonly betweenShots: Duration
  /** Most water in the whole plan. Unit: L. Range: [0, ∞). */
  readonly maxPerDay: Volume
  /** What asks for a shot. */
  readonly trigger: ShotTrigger
}

/** One opening of the valve. */
export interface PlannedShot {
  /** When it begins. Unit: s. */
  readonly time: Instant
  /** Water for the container. Unit: L. */
  readonly volume: Volume
  /** Water from each emitter. Unit: L. */
  readonly perEmitter: Volume
  /** How long the valve is open, with the time to fill the line. Unit: s. */
  readonly runTime: Duration
  /** Why now, and why so much. */
  readonly reason: string
}

/** A plan with what is expected to come of it. */
export interface DayPlan {
  /** The openings of the valve, in order. */
  readonly shots: readonly PlannedShot[]
  /** End of each step. Unit: s. */
  readonly time: Float64Array
  /** Predicted water content at the end of each step. Unit: m³/m³. */
  readonly content: Float64Array
  /** Predicted drain in each step. Unit: L. */
  readonly drain: Float64Array
  /** Water given in the plan. Unit: L. */
  readonly applied: Volume
  /** Predicted drain, with what is still on its way at the end. Unit: L. */
  readonly drained: Volume
  /** Predicted uptake. Unit: L. */
  readonly taken: Volume
  /** Predicted share of the water given that drains; zero when nothing is given. Unit: 1. */
  readonly drainFraction: DrainFraction
  /** Share of drain with which the maintenance shots were sized, to reach the wanted share over the day. Unit: 1. */
  readonly shotDrainFraction: DrainFraction
  /** Predicted fall of the water content from the last shot to the end. Unit: m³/m³. */
  readonly overnightDryDown: WaterContentChange
  /** What was wanted and cannot be had, by how much it is missed, and what limits it. */
  readonly compromises: readonly Finding[]
}

/** Where a plan stands at a moment: plain data, from which it can be taken up again. */
export interface PlanProgress<State = StoreState> {
  /** How many steps are done. */
  readonly steps: number
  readonly state: State
  /** Beginning of the last shot, if there was one. */
  readonly last: number | undefined
  readonly applied: number
  readonly drained: number
  readonly taken: number
  /** Whether the container has yet to be filled for the first time. */
  readonly rewetting: boolean
  /** Light since the last shot. */
  readonly light: number
}

/** A request with the model that predicts the container, and the numbers that are used at every step. */
export interface Planning<State> {
  readonly request: DayPlanRequest
  readonly flow: ContainerFlow<State>
  readonly minVolume: number
  readonly maxVolume: number
  /** Latest step at which a shot may begin, so that the container dries down as wanted. */
  readonly lastStep: number
  readonly firstStep: number
}
