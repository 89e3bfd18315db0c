import type { NodeValues } from '../table/node-values.js'
import type { ColumnHistory } from './history.js'

/** Values of the media at nodes, one set for each side of a boundary, and in the middle of elements. */
export interface PointValues {
  readonly suction: Float64Array
  /** The suction at which the draining medium would hold as much, and its slope against suction; the suction where there is one curve. */
  readonly effective: Float64Array
  readonly effectiveSlope: Float64Array
  /** On which curves the points are; where all media drain and wet on one curve there is none. */
  readonly history: ColumnHistory | undefined
  readonly at: NodeValues
  readonly middle: Float64Array
  readonly middleWaterContent: Float64Array
  readonly middleCapacity: Float64Array
  /** What flows through each element by its weight alone, when it is full. Unit: cm³/s. */
  readonly conductance: Float64Array
  readonly conductancePerLength: Float64Array
  /** Which elements are short enough for parabolas. */
  readonly curved: Uint8Array
}
