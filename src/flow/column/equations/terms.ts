import type { ColumnGrid } from '../grid/grid.js'
import { type FlowRates, STILL } from './flow-rates.js'

/**
 * What a column holds and what moves in it at the suctions of its nodes, each with its slopes against the suctions it depends on: those
 * of the node below, of the node itself and of the node above. Units: cm³, cm³/s, and the same per cm.
 */
export interface ColumnTerms extends Pick<FlowRates, 'taken'> {
  /** Water in the cell of each node. */
  readonly water: Float64Array
  readonly waterByBelow: Float64Array
  readonly waterByOwn: Float64Array
  readonly waterByAbove: Float64Array
  /** Flow up through each element, against the suctions of the nodes below and above it. */
  readonly up: Float64Array
  readonly upByBelow: Float64Array
  readonly upByAbove: Float64Array
  /** Mean conductivity of each element as a share of that at saturation, against the effective suctions of its ends. */
  readonly mean: Float64Array
  readonly meanByBelow: Float64Array
  readonly meanByAbove: Float64Array
  readonly takenByBelow: Float64Array
  readonly takenByOwn: Float64Array
  readonly takenByAbove: Float64Array
  /** How far suction may be taken as a straight line within each element: 1, or less where it jumps. */
  readonly trust: Float64Array
  readonly trustByBelow: Float64Array
  readonly trustByAbove: Float64Array
  /** Flows through bottom and surface, and their slopes against the suction there. */
  drained: number
  drainedSlope: number
  runOff: number
  runOffSlope: number
  evaporated: number
  evaporatedSlope: number
  entered: number
}

export function columnTerms(grid: ColumnGrid): ColumnTerms {
  const { nodes } = grid
  const cells = () => new Float64Array(nodes)
  const elements = () => new Float64Array(nodes - 1)
  return {
    water: cells(),
    waterByBelow: cells(),
    waterByOwn: cells(),
    waterByAbove: cells(),
    up: elements(),
    upByBelow: elements(),
    upByAbove: elements(),
    mean: elements(),
    meanByBelow: elements(),
    meanByAbove: elements(),
    taken: cells(),
    takenByBelow: cells(),
    takenByOwn: cells(),
    takenByAbove: cells(),
    trust: elements(),
    trustByBelow: elements(),
    trustByAbove: elements(),
    drained: STILL,
    drainedSlope: STILL,
    runOff: STILL,
    runOffSlope: STILL,
    evaporated: STILL,
    evaporatedSlope: STILL,
    entered: STILL,
  }
}
