import type { VanGenuchtenParameters } from '../../medium/curves/van-genuchten-1980.js'
import type { Share, Volume, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import type { ProbeInContainer } from '../probe-view/probe-reading.js'
import type { RichardsSurroundings } from '../richards-column.js'
import type { RichardsStep } from '../richards-terms.js'
import type { FilledContainer, SaturatedMedium } from '../terms.js'

/** A number of a medium in its container that can be fitted. */
export type MediumNumber =
  | 'residual'
  | 'saturated'
  | 'alpha'
  | 'n'
  | 'poreConnection'
  | 'saturatedConductivity'
  | 'bypass'
  | 'start'
  | 'probeOffset'

/** What is believed of a medium before a fit: where the search begins, and the values of what is not fitted. */
export interface MediumGuess extends VanGenuchtenParameters, SaturatedMedium {
  /** Mualem's pore-connection exponent l; 0.5 by default. Beyond these ends no search finds one. Unit: 1. Range: (-2, 10]. */
  readonly poreConnection?: number
  /** Share of the water given that runs past the medium; none by default. Unit: 1. Range: [0, 1]. */
  readonly bypass?: Share
  /** Reading of the probe less the water content around it; none by default. Unit: m³/m³. Range: [-0.3, 0.3]. */
  readonly probeOffset?: WaterContentChange
}

/** A probe that stood in the container. */
export interface ProbeRecord extends ProbeInContainer {
  /** Water content read at the end of each step; `undefined` or NaN where it is missing. Unit: m³/m³. Range: each in [0, 1]. */
  readonly waterContents: readonly (WaterContent | undefined)[]
  /** Standard uncertainty of a reading beside an offset that stays; 0.005 when left out. It only weighs readings against drains. Unit: m³/m³. Range: [0.0001, 0.2]. */
  readonly uncertainty?: WaterContentChange
}

/** The drain that was caught. */
export interface DrainRecord {
  /** Drain of each step; `undefined` or NaN where it is missing. Unit: L. Range: each in [0, ∞). */
  readonly volumes: readonly (Volume | undefined)[]
  /** Standard uncertainty of the drain of a step; 0.005 L when left out. It only weighs drains against readings. Unit: L. Range: [0.000001, ∞). */
  readonly uncertainty?: Volume
}

/** A container, what happened to it, what was measured, and what is to be found. */
export interface MediumRecord extends Pick<RichardsSurroundings, 'roots' | 'base' | 'rim' | 'airDry'>, FilledContainer {
  /** What was given and used, in order: steps of a minute or less around a shot, longer between. */
  readonly steps: readonly RichardsStep[]
  /** Mean water content at the begin, at rest; when left out, the container had drained until nothing more came. Unit: m³/m³. Range: [0, 1]. */
  readonly start?: WaterContent
  /** Standard uncertainty of `start`, where it is fitted; 0.01 when left out. Unit: m³/m³. Range: [0.0001, 0.2]. */
  readonly startUncertainty?: WaterContentChange
  /** The drain that was caught; it or a probe is needed. */
  readonly drain?: DrainRecord
  /** What a probe read. */
  readonly probe?: ProbeRecord
  /** Where the search begins, and the values of what is not fitted. */
  readonly guess: MediumGuess
  /** The numbers to be found. */
  readonly fit: readonly MediumNumber[]
  /** Share of like records whose intervals would hold the true value, if nothing but independent errors were at work; 0.95 when left out. Unit: 1. Range: [0.5, 0.9999]. */
  readonly confidence?: Share
  /** Heights at which the medium is followed in each of some hundred simulations; 31 by default. Unit: 1. Range: integers [5, 201]. */
  readonly nodes?: number
  /** Largest error of the water content that a step may make anywhere; 0.001 by default. Unit: m³/m³. Range: [0.00001, 0.01]. */
  readonly tolerance?: number
}
