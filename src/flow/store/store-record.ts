import type { Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { FlowStep } from '../container-flow.js'
import type { WaterStore } from '../water-store.js'

/** A container that the storage model is to stand for, and what happened to it. */
export interface StoreToFit extends Pick<WaterStore, 'substrateVolume' | 'minWaterContent'> {
  /** Water content at the begin, when nothing was on its way out. Unit: m³/m³. Range: [0, 1]. */
  readonly start: WaterContent
  /** What was given and used, in order: intervals of minutes around shots, longer between. */
  readonly steps: readonly FlowStep[]
}

/** What happened to a container, with the drain that was measured. */
export interface StoreRecord extends StoreToFit {
  /** Drain of each step. Unit: L. Range: each in [0, ∞). */
  readonly drained: readonly Volume[]
}
