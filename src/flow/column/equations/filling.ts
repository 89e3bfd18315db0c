import type { ColumnGrid } from '../grid/grid.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/** Conductivity, as a share of that at saturation, below which nothing flows. */
const NOTHING = 1e-30

/** How the flow through each element answers to the rate at which the element fills. Units: 1/s, m³/m³, cm³. */
export interface ElementFilling {
  /** One over the time in which points fill; zero where no time passes. */
  perTime: number
  /** Whether shares are worked out where points are read next. */
  isNew: boolean
  /** Water content of each point from which it fills. */
  readonly from: Float64Array
  /** Share of the element, as a volume, by which its flow up grows with the rate at either end. */
  readonly share: Float64Array
}

export function elementFilling(elements: number, points: number): ElementFilling {
  return { perTime: 0, isNew: false, from: new Float64Array(points), share: new Float64Array(elements) }
}

/** Lets points fill from contents for a time; their shares are those where they are read next, at the first guess. */
export function fillFrom(filling: ElementFilling, contents: Float64Array, time: number): void {
  filling.from.set(contents)
  filling.perTime = 1 / time
  filling.isNew = true
}

/**
 * How much of what fills a trusted element its flow must be told. A flow between two suctions is that through no particular height: where the
 * conductivity falls by a share a for every centimetre of suction and an element of length L fills evenly at a rate r, the flow through its
 * middle is that of the steady profile and r L (coth x - 1/x) / 2 more upwards, with x = a L / 2, for Richards' equation is linear there. What
 * stands here is the same to the fourth order, x / (3 + x²/5), and quiet where x is large.
 */
function shareFilling({ share }: ElementFilling, grid: ColumnGrid, points: Points, terms: ColumnTerms): void {
  const { layers, lengths, lowerHalves, upperHalves } = grid
  const { conductivity, conductivitySlope } = points.at
  for (let e = 0; e < share.length; e++) {
    const p = e + layers[e]!
    const total = Math.max(conductivity[p]! + conductivity[p + 1]!, NOTHING)
    const slopes = conductivitySlope[p]! + conductivitySlope[p + 1]!
    const x = (-slopes * lengths[e]!) / (2 * total)
    // Half of it goes with the rate at either end.
    share[e] = (terms.trust[e]! * (lowerHalves[e]! + upperHalves[e]!) * x) / (4 * (3 + (x * x) / 5))
  }
}

/** Adds to flows what elements fill by, and what roots take from them meanwhile; the slopes are those of the nodes at both ends. */
export function addFilling(filling: ElementFilling, grid: ColumnGrid, points: Points, terms: ColumnTerms): void {
  if (filling.isNew) shareFilling(filling, grid, points, terms)
  filling.isNew = false
  const { perTime, from, share } = filling
  const { layers, perVolume } = grid
  const { up, upByBelow, upByAbove, taken, takenByOwn } = terms
  const { waterContent, capacity } = points.at
  // What roots take from the cell of the node below, and its slope.
  let lost = taken[0]! * perVolume[0]!
  let lostSlope = takenByOwn[0]! * perVolume[0]!
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    const part = share[e]!
    const below = perTime * (waterContent[p]! - from[p]!) + lost
    upByBelow[e]! += part * (lostSlope - perTime * capacity[p]!)
    lost = taken[e + 1]! * perVolume[e + 1]!
    lostSlope = takenByOwn[e + 1]! * perVolume[e + 1]!
    const above = perTime * (waterContent[p + 1]! - from[p + 1]!) + lost
    up[e]! += part * (below + above)
    upByAbove[e]! += part * (lostSlope - perTime * capacity[p + 1]!)
  }
}

/** Carries the contents of points on to a small move of the suctions. */
export function carryContents({ boundaries }: ColumnGrid, { at }: Points, move: Float64Array): void {
  const { waterContent, capacity } = at
  for (let layer = 0; layer < boundaries.length - 1; layer++)
    for (let i = boundaries[layer]!; i <= boundaries[layer + 1]!; i++)
      waterContent[i + layer]! -= capacity[i + layer]! * move[i]!
}
