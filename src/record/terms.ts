import type { Duration, Volume, WaterContent } from '../quantity/generated/kinds.js'
/** Terms of records that several inputs are composed of; their domains stand once, in `domains.ts`. */

/** When readings were taken. */
export interface ReadingTimes {
  /** Times of the readings. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
}

/** Readings of one probe. */
export interface WaterContentSeries extends ReadingTimes {
  /** Water content; NaN where a reading is missing or not to be trusted. Unit: m³/m³. Range: any. */
  readonly waterContent: ArrayLike<number>
}

/** Readings of any kind. */
export interface Readings {
  /** Readings; NaN is a missing one. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
}

/** When readings were taken, as they came in. */
export interface ArrivalTimes {
  /** Times of the readings, in the order in which they arrived. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
}

/** How far readings may lie apart. */
export interface FollowedStep {
  /** Nothing is followed over a longer step between two good readings. Unit: s. Range: (0, 86400]. */
  readonly maxStep: Duration
}

/** How far readings should lie apart. */
export interface ExpectedStep {
  /** Time that should lie between two readings. Unit: s. Range: (0, ∞). */
  readonly expectedStep: Duration
}

/** What the valve did. */
export interface ValveLog {
  /** When the valve was opened, by the log, in order of time. Unit: s. Range: any. */
  readonly log: ArrayLike<number>
}

/** When to water again. */
export interface RefillPoint {
  /** Water content at which to water again. Unit: m³/m³. Range: [0, 1]. */
  readonly refillPoint: WaterContent
}

/** What a probe stands for. */
export interface ProbedVolume {
  /** Volume of medium that the probe stands for. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
}

/** The moment of a reading. */
export interface ReadingTime {
  /** Time of the reading. Unit: s. */
  readonly time: number
}
