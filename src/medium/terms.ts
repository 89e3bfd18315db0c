import type {
  BulkDensity,
  HydraulicConductivity,
  Length,
  Mass,
  Porosity,
  Volume,
  WaterContent,
  WaterDensity,
} from '../quantity/generated/kinds.js'
import type { Container } from './container/container.js'
import type { RetentionModel } from './curves/retention-model.js'

/** A medium in the container that it fills. */
export interface MediumInContainer extends RetainingMedium {
  /** The space that the medium fills. */
  readonly container: Container
}

/** A medium by its retention curve. */
export interface RetainingMedium {
  /** How the medium holds water. */
  readonly medium: RetentionModel
}

/** Pores of the medium where they are known. */
export interface KnownPorosity {
  /** Total porosity; left out, the saturated water content of the curve. Unit: 1. Range: (0, 1]. */
  readonly porosity?: Porosity
}

/** Pores of the medium. */
export interface PoreVolume {
  /** Volume of pores per volume of medium. Unit: 1. Range: (0, 1]. */
  readonly porosity: Porosity
}

/** Water in the medium. */
export interface WaterVolume {
  /** Volume of water per volume of medium. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** How high the medium stands. */
export interface MediumHeight {
  /** Height of the medium. Unit: cm. Range: (0, ∞). */
  readonly height: Length
}

/** How a soil conducts when full. */
export interface SaturatedFlow {
  /** Unit: cm/h. */
  readonly saturatedConductivity: HydraulicConductivity
}

/** How dense the medium is packed. */
export interface PackedDensity {
  /** Dry mass per volume of medium as packed. Unit: g/cm³. Range: (0, 10]. */
  readonly bulkDensity: BulkDensity
}

/** Density of the water. */
export interface WaterDensityTerm {
  /** Density of the water, 1 when left out. Unit: g/cm³. Range: [0.9, 1.2]. */
  readonly waterDensity?: WaterDensity
}

/** How much medium there is. */
export interface MediumVolume {
  /** Volume that the medium fills. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
}

/** A weighing of the dry medium. */
export interface OvenDryMass {
  /** Mass when oven-dry. Unit: g. Range: [0, ∞). */
  readonly dryMass: Mass
}

/** Water of the container as a whole. */
export interface MeanWaterContent {
  /** Mean water content. Unit: m³/m³. */
  readonly waterContent: WaterContent
}
