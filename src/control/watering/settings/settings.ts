import type {
  DrainFraction,
  Duration,
  Flow,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../../../quantity/generated/kinds.js'
import type { DeadBandLimits } from '../../dead-band.js'

/** Hours of the local day in which water may flow. Hours that end before they begin run over midnight. */
export interface AllowedHours {
  /** Time since local midnight at which they begin. Unit: s. Range: [0, 86400]. */
  readonly from: Duration
  /** Time since local midnight at which they end; no opening reaches beyond it. Unit: s. Range: [0, 86400]. */
  readonly to: Duration
}

/** A probe of the zone. */
export interface ProbeSettings {
  /** Its name, as it comes with its readings. */
  readonly name: string
  /** By how much it reads above the zone as a whole; zero by default. Unit: m³/m³. Range: [-1, 1]. */
  readonly offset?: WaterContentChange
}

/** What is done while no reading can be believed. Holding a valve open is no choice. */
export type InDoubt = 'staying-closed' | 'timed-shots'

/** Limits inside which water may be switched, and what is known of the zone. Volumes and flow are for the same containers. */
export interface WateringSettings extends DeadBandLimits {
  /**
   * Name of the zone: give one wherever there are several. A stored state carries it, and one of another zone, or of other settings, counts as
   * lost.
   */
  readonly zone?: string
  /** A reading below this is not believed. Unit: m³/m³. Range: [0, 1]. */
  readonly minBelievable: WaterContent
  /** A reading above this is not believed. Unit: m³/m³. Range: [0, 1]. */
  readonly maxBelievable: WaterContent
  /** Volume of the medium that the shots water. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Flow while the valve is open, to the containers that the volumes are meant for. Unit: L/h. Range: (0, ∞). */
  readonly flow: Flow
  /** Volume of one shot. Unit: L. Range: (0, ∞). */
  readonly shot: Volume
  /** Longest time that the valve may stay open at a time. Unit: s. Range: (0, 7200]. */
  readonly maxRunTime: Duration
  /** Most volume in any 24 hours. Unit: L. Range: (0, ∞). */
  readonly maxPerDay: Volume
  /** What plants and drain take on a usual day: the measure of what can be believed. Unit: L. Range: (0, ∞). */
  readonly usualPerDay: Volume
  /** Most volume in any 24 hours while no reading can be believed; a third more than usual by default, because days differ and surplus drains. Unit: L. Range: (0, ∞). */
  readonly backUpPerDay?: Volume
  /** Least time from the end of one opening to the start of the next. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
  /** Time after a shot in which the probe does not yet show it. Unit: s. Range: [0, 86400]. */
  readonly probeLag: Duration
  /** An older reading is not acted on. Unit: s. Range: (0, 86400]. */
  readonly maxReadingAge: Duration
  /** A probe whose readings stay the same to the last digit for so long is frozen. Unit: s. Range: (0, 604800]. */
  readonly maxUnchanged: Duration
  /** After so many more shots unseen than seen a probe is not believed until somebody acknowledges it. Unit: 1. Range: integers [1, 48]. */
  readonly maxShotsWithoutRise: number
  /** When water may flow, by the clock of the place. */
  readonly allowedHours: readonly AllowedHours[]
  /** How far local clocks are ahead of universal time, zero by default. Unit: s. Range: [-50400, 50400]. */
  readonly ahead?: number
  /** Whether the valve closes by itself after the time it was given, also when nothing more comes; only `true` is true. */
  readonly valveClosesByItself: boolean
  /** What to do while no reading can be believed. */
  readonly inDoubt: InDoubt
  /**
   * Longest time between two refills to drain, a week by default, or `never`. They are given only with a counter of drain. Unit: s. Range: [86400, 2592000].
   */
  readonly refillEvery?: Duration | 'never'
  /**
   * Share of the water given that should drain, as salts ask for: none by default. Each refill goes on until it has drained since the one before, and
   * refills come daily where `refillEvery` is left out. Where no counter of drain can be read, probes end them: what came after shots ceased to raise
   * the level has drained. It keeps every limit. Unit: 1. Range: [0, 1).
   */
  readonly drainFraction?: DrainFraction
  /**
   * How far decisions are apart, where a timer of its own asks for them and not the clock that comes with them. Where this is given, a clock that runs too fast from the
   * first decision on is found as well; without it the pace is learned from that very clock. Unit: s. Range: (0, 3600].
   */
  readonly decideEvery?: Duration
  /** The probes of the zone; one without a name by default. At most eight. */
  readonly probes?: readonly ProbeSettings[]
  /** Probes that differ by more than this are in dispute; 0.08 by default. Unit: m³/m³. Range: (0, 1]. */
  readonly maxDisagreement?: WaterContentChange
}
