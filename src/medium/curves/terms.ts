import type { InverseSuction, WaterContent } from '../../quantity/generated/kinds.js'
/** Where a curve begins. */
export interface SaturatedLimit {
  /** Saturated water content. Unit: m³/m³. Range: (0, 1]. */
  readonly saturated: WaterContent
}

/** Between which water contents a curve runs. */
export interface WaterLimits extends SaturatedLimit {
  /** Residual water content. Unit: m³/m³. Range: [0, 1). */
  readonly residual: WaterContent
}

/** How the pores are connected. */
export interface PoreConnection {
  /** Exponent of pore connection and tortuosity in the conductivity, 0.5 unless it was fitted. Unit: 1. Range: (-∞, ∞). */
  readonly poreConnection?: number
}

/** The suction about which a curve falls. */
export interface SuctionScale {
  /** Scale of the suction. Unit: 1/cm. Range: (0, ∞). */
  readonly alpha: InverseSuction
}

/** How steeply a curve falls. */
export interface SuctionExponent {
  /** Exponent of the suction. Unit: 1. Range: (0, ∞). */
  readonly n: number
}
