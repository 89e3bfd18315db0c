import type { Duration, Flow, Volume, WaterContent } from '../../quantity/generated/kinds.js'
/** A shot that somebody or something wants to give. */
export interface WateringRequest {
  /** Its volume. Unit: L. Range: any. */
  readonly volume: Volume
  /** How long the valve would be open. Unit: s. Range: any. */
  readonly runTime: Duration
}

/** Limits that no shot may pass. One that is missing, or no number that makes sense, is told and speaks against watering. */
export interface SafeLimits {
  /** Flow while the valve is open, to the containers that the volumes are meant for. Unit: L/h. Range: any. */
  readonly flow: Flow
  /** Most volume of a shot. Unit: L. Range: any. */
  readonly maxPerShot: Volume
  /** Most volume in any 24 hours: less than the flow brings in them. Unit: L. Range: any. */
  readonly maxPerDay: Volume
  /** Longest time that a valve may be open; at most two hours. Unit: s. Range: any. */
  readonly maxRunTime: Duration
  /** Least time from the end of one shot to the start of the next; at most a day. Unit: s. Range: any. */
  readonly minRest: Duration
  /** An older reading is not acted on; at most a day. Unit: s. Range: any. */
  readonly maxReadingAge: Duration
  /** A reading below this is not believed, nor is one of zero. Unit: m³/m³. Range: any. */
  readonly minBelievable: WaterContent
  /** A reading above this is not believed; at most 1. Unit: m³/m³. Range: any. */
  readonly maxBelievable: WaterContent
  /** No water at this water content and above. Unit: m³/m³. Range: any. */
  readonly fullPoint: WaterContent
  /** Least time from the later of the last shot and the last good reading to a back-up shot; the age above by default. Unit: s. Range: any. */
  readonly backUpAfter?: Duration
  /** Medium that the volumes are meant for: a shot larger than it is a slip of a unit; not compared by default. Unit: L. Range: any. */
  readonly substrateVolume?: Volume
  /** Time from opening the valve until all emitters run, in which nothing counts as given; none by default, at most ten minutes. Unit: s. Range: any. */
  readonly lineFill?: Duration
}

/** What is known at the moment of the request. What is not known is left out and speaks against watering. */
export interface WateringFacts {
  /** Water given in the last 24 hours. Unit: L. Range: any. */
  readonly givenInDay?: Volume
  /** Time since the last shot ended; more than a day contradicts water given in the last 24 hours, and is not known. Unit: s. Range: any. */
  readonly sinceLastShot?: Duration
  /** Newest reading. Unit: m³/m³. Range: any. */
  readonly waterContent?: WaterContent
  /** Its age. Unit: s. Range: any. */
  readonly age?: Duration
  /** Its quality flag: 1 where it passed. Unit: 1. Range: any. */
  readonly flag?: number
  /** Whether the clock ran on since the last shot, without gap, step or restart. Only `true` is true. */
  readonly clockRanOn?: boolean
  /** Whether water flows, or drain runs, though every valve should be closed. Only `false` is false. */
  readonly flowWhileClosed?: boolean
  /** Whether somebody locked the zone, to work on it. Only `false` is false. */
  readonly locked?: boolean
  /** Alarms that forbid watering, by name. Only an empty list is none. */
  readonly alarms?: readonly string[]
}

/** A request, its limits and what is known. */
export interface CheckWateringInput {
  /** What is wanted. */
  readonly request: WateringRequest
  /** The limits. */
  readonly limits: SafeLimits
  /** What is known. */
  readonly facts: WateringFacts
  /** A small shot by time, given because there is no good reading; only `true` is true. Everything else is asked for as ever. */
  readonly backUp?: boolean
}
