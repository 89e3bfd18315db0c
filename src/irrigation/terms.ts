import type { Duration } from '../quantity/generated/duration.js'
import type { Flow } from '../quantity/generated/flow.js'
import type { DrainFraction } from '../quantity/generated/share.js'
import type { Volume } from '../quantity/generated/volume.js'
import type { WaterContentChange } from '../quantity/generated/water-content.js'

/** Terms of irrigation that several inputs are composed of; their domains stand once, in `domains.ts`. */

/** Emitters that run together. */
export interface Emitters {
  /** Flow of one emitter. Unit: L/h. Range: (0, ∞). */
  readonly emitterFlow: Flow
  /** Number of emitters; a mean need not be whole. Unit: 1. Range: (0, ∞). */
  readonly emitters: number
}

/** Emitters and the line to them, which may be empty before they run. */
export interface EmitterLine extends Emitters {
  /** Time from opening the valve until all emitters run; none by default. Unit: s. Range: [0, 86400]. */
  readonly lineFill?: Duration
}

/** A volume of medium. */
export interface Substrate {
  /** Volume of medium. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
}

/** A wish for drain. */
export interface DrainWish {
  /** Share of the water given that should drain. Unit: 1. Range: [0, 1). */
  readonly drainFraction: DrainFraction
}

/** What a shot should do to a container. */
export interface ShotWish extends Substrate, DrainWish {
  /** By how much the water content should rise. Unit: m³/m³. Range: [0, 1]. */
  readonly rise: WaterContentChange
}

/** For how long a valve may open. */
export interface ValveLimits {
  /** Shortest time for which the valve may open. Unit: s. Range: [0, 86400]. */
  readonly minRunTime: Duration
  /** Longest time for which the valve may open. Unit: s. Range: [0, 86400]. */
  readonly maxRunTime: Duration
}

/** The pause of one valve. */
export interface ValveRest {
  /** Shortest time from the end of one opening to the start of the next. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
}
