import type { Share, SuctionHead, WaterCapacity, WaterContent } from '../../quantity/generated/kinds.js'
/**
 * How a medium holds water: one curve, whatever its equation. Containers, flow and plots take any object of this shape, so
 * that a bundle holds only the models it uses. Suctions of zero or less (a water pressure) are saturated.
 */
export interface RetentionModel {
  /** Short name of the equation. */
  readonly kind: string
  /** The numbers of the equation, for printing and storing. */
  readonly parameters: Readonly<Record<string, number>>
  /** Water content at zero suction. Unit: m³/m³. Range: any. */
  readonly saturated: WaterContent
  /** Water content that no suction of the equation removes. Unit: m³/m³. Range: any. */
  readonly residual: WaterContent
  /** Suctions at which the curve has a kink, such as an air entry; integrals are split there. Unit: cm. Range: any. */
  readonly breakpoints: readonly SuctionHead[]
  /** Water content at a suction. */
  readonly waterContent: (suction: SuctionHead) => WaterContent
  /** Specific water capacity at a suction: the slope of the curve without its minus sign. */
  readonly capacity: (suction: SuctionHead) => WaterCapacity
  /** The largest suction that still holds a water content: the inverse of the curve. */
  readonly suction: (waterContent: WaterContent) => SuctionHead
  /** Conductivity at a suction as a share of that at saturation, where the equation has one. */
  readonly relativeConductivity?: (suction: SuctionHead) => Share
}

/** A retention model that also says how the medium conducts water. */
export interface ConductiveModel extends RetentionModel {
  /** Conductivity at a suction as a share of that at saturation. */
  readonly relativeConductivity: (suction: SuctionHead) => Share
}
