import type { Container } from '../medium/container/container.js'
import type { ConductiveModel } from '../medium/curves/retention-model.js'
import type { HydraulicConductivity, InverseSuction, Length, Volume } from '../quantity/generated/kinds.js'

/** Terms of flow that several inputs and results are composed of; their domains stand once, in `domains.ts`. */

/** What a saturated medium conducts. */
export interface SaturatedMedium {
  /** Conductivity of the saturated medium. Unit: cm/h. Range: (0, ∞). */
  readonly saturatedConductivity: HydraulicConductivity
}

/** A medium by its curves and what it conducts when saturated. */
export interface ConductiveMedium extends SaturatedMedium {
  /** How the medium holds and conducts water. */
  readonly medium: ConductiveModel
}

/** A medium whose conductivity falls exponentially with suction. */
export interface ExponentialMedium extends SaturatedMedium {
  /** How fast the conductivity falls with suction. Unit: 1/cm. Range: (0, ∞). */
  readonly alpha: InverseSuction
}

/** A water table under a surface. */
export interface WaterTableBelow {
  /** Depth of the water table below the surface. Unit: cm. Range: (0, ∞). */
  readonly depth: Length
}

/** A place over a water table. */
export interface PlaceOverWaterTable {
  /** Height over the water table. Unit: cm. Range: [0, ∞). */
  readonly height: Length
}

/** A container that is full of medium. */
export interface FilledContainer {
  /** The space that the medium fills. */
  readonly container: Container
}

/** How far a fit is from the drain. */
export interface DrainMisfit {
  /** Root of the mean square difference of the drain of a step. Unit: L. */
  readonly drainError: Volume
}
