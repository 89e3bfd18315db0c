import type { ColumnGrid } from '../grid/grid.js'
import type { ColumnHistory } from '../scanning/history.js'
import type { PointValues } from '../scanning/point-values.js'
import { readScanning } from '../scanning/read-scanning.js'
import { curvedElements } from '../table/curved.js'
import type { LayerMedium } from '../table/layer-medium.js'
import type { MediumTable } from '../table/medium-table.js'
import { nodeValues } from '../table/node-values.js'

/** Values of the media that are read anew at other suctions. */
export interface Points extends PointValues {
  readonly read: (suctions: Float64Array) => void
}

/** Room for the values of the media. Element e lies between the points e + its layer and the next. */
export function columnPoints(
  grid: ColumnGrid,
  media: readonly LayerMedium[],
  history: ColumnHistory | undefined,
): Points {
  const { nodes, boundaries, layers } = grid
  const count = nodes + media.length - 1
  const suction = new Float64Array(count)
  const effective = history === undefined ? suction : new Float64Array(count)
  const middle = new Float64Array(nodes - 1)
  const at = nodeValues(count)
  const middleWaterContent = new Float64Array(nodes - 1)
  const middleCapacity = new Float64Array(nodes - 1)
  const conductance = Float64Array.from(layers, (layer, e) => media[layer]!.saturatedConductivity * grid.sections[e]!)
  const read = (suctions: Float64Array): void => {
    for (let layer = 0; layer < media.length; layer++)
      readLayer(points, suctions, media[layer]!.table, layer, boundaries[layer]!, boundaries[layer + 1]!)
  }
  // Written out: a spread gives each column an object of another layout, and what was compiled for one runs slowly for the next.
  const points: Points = {
    suction,
    effective,
    effectiveSlope: new Float64Array(count).fill(1),
    history,
    middle,
    at,
    middleWaterContent,
    middleCapacity,
    conductance,
    conductancePerLength: conductance.map((all, e) => all / grid.lengths[e]!),
    curved: curvedElements(grid, media),
    read,
  }
  return points
}

/** Reads the points of a layer from its first node to its last. */
function readLayer(
  points: PointValues,
  suctions: Float64Array,
  table: MediumTable,
  layer: number,
  first: number,
  last: number,
): void {
  const { suction, effective, middle, at, history, middleWaterContent, middleCapacity } = points
  for (let i = first; i <= last; i++) suction[i + layer] = suctions[i]!
  for (let e = first; e < last; e++) middle[e] = (suctions[e]! + suctions[e + 1]!) / 2
  if (history?.scans[layer] !== undefined) {
    readScanning(layer, first, last, points)
    return
  }
  table.read(suction, at, first + layer, last + layer + 1)
  if (history !== undefined) for (let p = first + layer; p <= last + layer; p++) effective[p] = suction[p]!
  table.readWaterContents(middle, middleWaterContent, middleCapacity, first, last)
}
