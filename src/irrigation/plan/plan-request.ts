import type { WaterStore } from '../../flow/water-store.js'
import type { Instant } from '../../quantity/calendar.js'
import type { Duration, Volume, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import type { DrainWish, Emitters, ValveLimits, ValveRest } from '../terms.js'

/** How the moment of a shot is chosen. */
export type ShotTrigger =
  | { readonly by: 'level' }
  | {
      readonly by: 'light'
      /** Light in each step of the demand course; no step has more than 0.15 for each of its seconds and 1.5 besides. Unit: J/cm². Range: each in [0, 540]. */
      readonly radiation: ArrayLike<number>
      /** Light between two shots; what is over is kept. Unit: J/cm². Range: [5, 5000]. */
      readonly threshold: number
    }
  | { readonly by: 'clock'; readonly times: readonly Instant[] }

/** What a plan for a day has to respect. Volumes are for one container, or for what one probe stands for. */
export interface DayPlanRequest extends Emitters, ValveLimits, ValveRest, DrainWish {
  /** Beginning of the plan. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly start: Instant
  /** Length of one step of the demand course; shots begin with a step. Unit: s. Range: [30, 3600]. */
  readonly step: Duration
  /** Water that the plants will take in each step. Unit: L. Range: each in [0, ∞). */
  readonly demand: ArrayLike<number>
  /** The container, as the storage model sees it. */
  readonly container: WaterStore
  /** Water content at the start. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
  /** Water content at which to water again. Unit: m³/m³. Range: [0, 1]. */
  readonly refillPoint: WaterContent
  /** Water content that a shot must not exceed. Unit: m³/m³. Range: [0, 1]. */
  readonly fullPoint: WaterContent
  /** No shot begins earlier. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly firstShot: Instant
  /** No shot begins later. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly lastShot: Instant
  /** By how much the container should dry from the last shot to the first of the next day. Unit: m³/m³. Range: [0, 1]. */
  readonly overnightDryDown?: WaterContentChange
  /** Time from opening the valve until all emitters run. Unit: s. Range: [0, 86400]. */
  readonly lineFill: Duration
  /** Most water in one shot; what is missing beyond it waits for the next. Only `maxRunTime` and the medium's volume limit a shot by default. Unit: L. Range: (0, ∞). */
  readonly maxPerShot?: Volume
  /** Most water in the whole plan. Unit: L. Range: [0, ∞). */
  readonly maxPerDay: Volume
  /** What asks for a shot. */
  readonly trigger: ShotTrigger
}
