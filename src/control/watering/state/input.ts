import type { Volume } from '../../../quantity/generated/kinds.js'
import type { MomentOfProbe } from '../../terms.js'
/** What a probe said last. Anything but finite numbers is a missing reading. */
export interface WateringReading extends MomentOfProbe {
  /** Name of the probe, as in the settings; not needed where there is one probe without a name. */
  readonly probe?: string
}

/** What a person orders, for a while. */
export interface WateringOverride {
  /** `close` keeps the valve closed; `water` asks for shots whatever the probes say, inside every limit. */
  readonly action: 'close' | 'water'
  /** When it expires, at most a day ahead. The same order sent again does not last longer. Unit: s. */
  readonly until: number
}

/** A moment at which something is decided, with what is known then. */
export interface WateringInput {
  /** Now: seconds, not milliseconds, since the start of 1970. Unit: s. */
  readonly now: number
  /** The newest readings; those that were given before may come again. */
  readonly readings: readonly WateringReading[]
  /** Whether somebody works on the zone. Only `false` lets water flow. */
  readonly locked: boolean
  /**
   * Counter of a flow meter, where there is one: all that has ever run through it. Where it counts in steps larger than a shot, openings are judged
   * together: a dry line after two and a half steps, a weak one after twenty. Leave it out where its steps are from half a shot to a shot: it would tell of
   * openings without flow, and of others with too much. Unit: L.
   */
  readonly metered?: Volume
  /** Counter of drain, where there is one: all that has ever run out, in steps of no more than half a shot. Unit: L. */
  readonly drained?: Volume
  /** Water that somebody gave by hand since the decision before: it counts in the limit of a day like any other. Unit: L. Range: [0, ∞). */
  readonly byHand?: Volume
  /** What the valve itself reports, where it does. */
  readonly valve?: 'open' | 'closed'
  /** What a person orders. An order that cannot be read, unless it asks for water, keeps the valve closed for as long as it is sent. */
  readonly override?: WateringOverride
  /** Codes of findings that somebody has looked at and put right. */
  readonly acknowledge?: readonly string[]
}
