import type { Zone } from '../zone.js'
import type { ZoneDay } from './zone-day.js'

/** Terms that several inputs of a zone are composed of. */

/** A zone that something is asked of. */
export interface OfZone {
  /** The zone. */
  readonly zone: Zone
}

/** A reviewed day of a zone. */
export interface OfZoneDay extends OfZone {
  /** The day, made by `reviewZone`, `reviewDay` or `followZone`. */
  readonly day: ZoneDay
}
