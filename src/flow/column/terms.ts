import { isCurved } from './curved.js'
import type { ColumnGrid } from './grid.js'
import { type ColumnHistory, readScanning } from './history.js'
import { type MediumTable, type NodeValues, nodeValues } from './medium-table.js'

/**
 * What a column holds and what moves in it at the suctions of its nodes, each with its slopes against the suctions it depends on: those
 * of the node below, of the node itself and of the node above. Units: cm³, cm³/s, and the same per cm.
 */
export interface ColumnTerms {
  /** Water in the cell of each node. */
  readonly water: Float64Array
  readonly waterByBelow: Float64Array
  readonly waterByOwn: Float64Array
  readonly waterByAbove: Float64Array
  /** Flow up through each element, against the suctions of the nodes below and above it. */
  readonly up: Float64Array
  readonly upByBelow: Float64Array
  readonly upByAbove: Float64Array
  /** What the roots take from the cell of each node. */
  readonly taken: Float64Array
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

/** Values of the media at nodes, one set for each side of a seam, and in the middle of elements. */
export interface Points {
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
  /** Saturated conductivity of each element. Unit: cm/s. */
  readonly saturatedConductivity: Float64Array
  /** Whether the elements of each layer are short enough for parabolas. */
  readonly curved: readonly boolean[]
  readonly read: (suctions: Float64Array) => void
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
    taken: cells(),
    takenByBelow: cells(),
    takenByOwn: cells(),
    takenByAbove: cells(),
    trust: elements(),
    trustByBelow: elements(),
    trustByAbove: elements(),
    drained: 0,
    drainedSlope: 0,
    runOff: 0,
    runOffSlope: 0,
    evaporated: 0,
    evaporatedSlope: 0,
    entered: 0,
  }
}

/** A medium as a table with its saturated conductivity in cm/s. */
export interface LayerMedium {
  readonly table: MediumTable
  /** The medium as it wets from dry, where that is another curve. */
  readonly wetting?: MediumTable
  readonly saturatedConductivity: number
}

/** Room for the values of the media. Element e lies between the points e + its layer and the next. */
export function columnPoints(
  grid: ColumnGrid,
  media: readonly LayerMedium[],
  history: ColumnHistory | undefined,
): Points {
  const { nodes, seams, layers } = grid
  const count = nodes + media.length - 1
  const suction = new Float64Array(count)
  const points = {
    suction,
    effective: history === undefined ? suction : new Float64Array(count),
    effectiveSlope: new Float64Array(count).fill(1),
    history,
    middle: new Float64Array(nodes - 1),
    at: nodeValues(count),
    middleWaterContent: new Float64Array(nodes - 1),
    middleCapacity: new Float64Array(nodes - 1),
    saturatedConductivity: Float64Array.from(layers, (layer) => media[layer]!.saturatedConductivity),
    curved: media.map(({ table, wetting }, layer) =>
      [table, wetting ?? table].every((curve) => isCurved(grid.lengths[seams[layer]!]!, curve)),
    ),
  }
  const { middle, at, middleWaterContent, middleCapacity } = points
  const read = (suctions: Float64Array): void => {
    for (let layer = 0; layer < media.length; layer++) {
      const { table } = media[layer]!
      const first = seams[layer]!
      const last = seams[layer + 1]!
      for (let i = first; i <= last; i++) suction[i + layer] = suctions[i]!
      for (let e = first; e < last; e++) middle[e] = (suctions[e]! + suctions[e + 1]!) / 2
      if (history?.scans[layer] !== undefined) readScanning(layer, first, last, points)
      else {
        table.read(suction, at, first + layer, last + layer + 1)
        if (history !== undefined) for (let p = first + layer; p <= last + layer; p++) points.effective[p] = suction[p]!
        for (let e = first; e < last; e++) table.readWaterContent(middle[e]!, middleWaterContent, middleCapacity, e)
      }
    }
  }
  return { ...points, read }
}
