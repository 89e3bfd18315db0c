import type {
  AirFilledPorosity,
  DepletionFraction,
  Length,
  Share,
  SuctionHead,
  Volume,
  WaterContent,
} from '../../quantity/generated/kinds.js'
import type { MediumFinding } from '../medium-finding.js'
import type { KnownPorosity, MeanWaterContent, MediumInContainer } from '../terms.js'

/** A container, its medium and what its plants need; at least one of depletion and suction. */
export interface LimitsRequest extends MediumInContainer, KnownPorosity {
  /** Least air-filled porosity, mean of the container; left out, any. Unit: 1. Range: [0, 1). */
  readonly minAir?: AirFilledPorosity
  /** Management allowed depletion. Unit: 1. Range: [0, 1). */
  readonly depletion?: DepletionFraction
  /** Water content at which the available water ends; left out, that of the medium at 100 cm. Unit: m³/m³. Range: [0, 1]. */
  readonly lowerLimit?: WaterContent
  /** Largest suction before watering. Unit: cm. Range: [0, ∞). */
  readonly maxSuction?: SuctionHead
  /** Height above the bottom where that suction is meant; left out, half of the medium. Unit: cm. Range: [0, ∞). */
  readonly suctionHeight?: Length
}

/** What may set a full or a refill point. */
export type LimitName = 'container-capacity' | 'min-air' | 'depletion' | 'suction'

/** A full or a refill point and what sets it. */
export interface WaterLimit extends MeanWaterContent {
  /** Which of the limits binds. */
  readonly limit: LimitName
}

/** Between which water contents to keep a container, and why. */
export interface IrrigationLimits {
  /** The most water to hold: the drier of container capacity and what the least air allows. */
  readonly fullPoint: WaterLimit
  /** When to water: the wetter of what depletion and suction allow. */
  readonly refillPoint: WaterLimit
  /** All limits that were considered, those that do not bind as well. */
  readonly considered: readonly WaterLimit[]
  /** Air-filled porosity at the full point. Unit: 1. */
  readonly airAtFull: AirFilledPorosity
  /** Suction at the bottom at the refill point. Unit: cm. */
  readonly bottomSuctionAtRefill: SuctionHead
  /** Conductivity at half height at the refill point as a share of that at saturation, where the model has one. Unit: 1. */
  readonly conductivityAtRefill?: Share
  /** Water in the whole container from the refill to the full point. Unit: L. */
  readonly waterBetween: Volume
  /** What to know before using the limits. */
  readonly findings: readonly MediumFinding[]
}
