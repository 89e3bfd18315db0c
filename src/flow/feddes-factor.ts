import type { CropET, SuctionHead } from '../quantity/generated/kinds.js'
/** Suctions between which roots take up water, after Feddes and co-workers (1978): the h1 to h4 of the paper without their sign. */
export interface FeddesLimits {
  /** Wetter than this the roots take up nothing, for lack of air. Unit: cm. Range: [0, ∞). */
  readonly h1: SuctionHead
  /** From here on the roots have air enough. Unit: cm. Range: [0, ∞). */
  readonly h2: SuctionHead
  /** Drier than this the uptake falls when the demand is high. Unit: cm. Range: [0, ∞). */
  readonly h3HighDemand: SuctionHead
  /** Drier than this the uptake falls when the demand is low. Unit: cm. Range: [0, ∞). */
  readonly h3LowDemand: SuctionHead
  /** From here on the roots take up nothing: the wilting point. Unit: cm. Range: (0, ∞). */
  readonly h4: SuctionHead
  /** Demand that counts as high: 5 mm/d in the paper. Unit: mm/d. Range: (0, ∞). */
  readonly highDemand: CropET
  /** Demand that counts as low: 1 mm/d in the paper. Unit: mm/d. Range: [0, ∞). */
  readonly lowDemand: CropET
}

/** The suction in cm from which uptake falls at a demand in mm/d: h3, on the line between the two demands and constant beyond them. */
export function feddesDryStart(limits: FeddesLimits, demand: number): number {
  const { h3HighDemand, h3LowDemand, highDemand, lowDemand } = limits
  if (demand >= highDemand) return h3HighDemand
  if (demand <= lowDemand) return h3LowDemand
  return h3LowDemand + ((h3HighDemand - h3LowDemand) * (demand - lowDemand)) / (highDemand - lowDemand)
}

/** Share of the demand that roots take up at a suction in cm, and its slope in 1/cm, with the h3 in force; nothing is checked. */
export function feddesFactor(
  suction: number,
  limits: FeddesLimits,
  h3: number,
): readonly [factor: number, slope: number] {
  const { h1, h2, h4 } = limits
  if (suction < h1 || suction >= h4) return [0, 0]
  if (suction < h2) return [(suction - h1) / (h2 - h1), 1 / (h2 - h1)]
  if (suction <= h3) return [1, 0]
  return [(h4 - suction) / (h4 - h3), -1 / (h4 - h3)]
}
