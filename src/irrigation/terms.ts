import type { Finding } from '../quantity/finding.js'
import type {
  DrainFraction,
  Duration,
  Flow,
  PoreWaterEC,
  RadiationSum,
  SolutionEC,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../quantity/generated/kinds.js'

/** One emitter. */
export interface EmitterFlow {
  /** Flow of one emitter. Unit: L/h. Range: (0, ∞). */
  readonly emitterFlow: Flow
}

/** Terms of irrigation that several inputs are composed of; their domains stand once, in `domains.ts`. */

/** Emitters that run together. */
export interface Emitters extends EmitterFlow {
  /** Number of emitters; a mean need not be whole. Unit: 1. Range: (0, 100000]. */
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
  /** Longest time for which the valve may open. Unit: s. Range: (0, 7200]. */
  readonly maxRunTime: Duration
}

/** The pause of one valve. */
export interface ValveRest {
  /** Shortest time from the end of one opening to the start of the next. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
}

/** A container and what it holds. */
export interface ContainerNow extends Substrate {
  /** Water content now. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** A container and what its plants take. */
export interface PlantsAtWork extends ContainerNow {
  /** Water that the plants of the container take. Unit: L/h. Range: (0, ∞). */
  readonly use: Flow
}

/** Light that asks for a shot. */
export interface LightThreshold {
  /** Light between two shots. Unit: J/cm². Range: [5, 5000]. */
  readonly threshold: RadiationSum
}

/** Water that is given. */
export interface GivenWater {
  /** Water that is given. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
}

/** How long a valve should be open. */
export interface OpenTime {
  /** Time that the valve is to be open in all. Unit: s. Range: [0, ∞). */
  readonly runTime: Duration
}

/** What each emitter gives. */
export interface WaterPerEmitter {
  /** Water from each emitter. Unit: L. */
  readonly perEmitter: Volume
}

/** How much a finding matters. */
export interface HowSerious {
  /** How much it matters: a `danger` must not be acted on unseen. */
  readonly level: Finding['level']
}

/** How flow follows pressure. */
export interface DischargeExponent {
  /** Discharge exponent. Unit: 1. Range: [-0.5, 1.5]. */
  readonly exponent: number
}

/** Salts that plants take. */
export interface UptakeSalts {
  /** Salts taken over water taken by the plants, as an EC; none by default. Unit: dS/m. Range: [0, 200]. */
  readonly uptakeEC?: SolutionEC
}

/** Salts that come and are taken. */
export interface FeedSalts extends UptakeSalts {
  /** EC of the feed. Unit: dS/m. Range: [0, 200]. */
  readonly feedEC: SolutionEC
}

/** Where salt went. */
export interface SaltFlows {
  /** Salt that came with the feed. Unit: dS/m·L. */
  readonly saltIn: number
  /** Salt that left with the drain. Unit: dS/m·L. */
  readonly saltOut: number
  /** Salt that the plants took. Unit: dS/m·L. */
  readonly saltTaken: number
}

/** Where an EC begins. */
export interface StartEC {
  /** EC at the start. Unit: dS/m. Range: [0, 200]. */
  readonly start: PoreWaterEC
}
