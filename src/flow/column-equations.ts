import type { ColumnGrid } from './column-grid.js'
import { type MediumTable, nodeValues } from './tabulated-medium.js'

/** What holds at bottom and surface: a suction in cm, or water that leaves or comes by itself. */
export interface ColumnEnds {
  readonly base: 'seepage' | 'closed' | number
  readonly surface: 'shots' | number
}

/** What the plants would draw at each node, and how far its suction lets them. */
export interface Sink {
  /** Potential uptake of each layer. Unit: cm³/s. */
  readonly most: Float64Array
  /** Share that is taken at a suction, and its slope in 1/cm. */
  readonly factor: (suction: number) => readonly [share: number, slope: number]
  /** Suction from which nothing is taken. Unit: cm. */
  readonly driest: number
}

/** What happens to a column while its conditions stay the same. */
export interface Conditions {
  /** Water that comes to the surface. Unit: cm³/s. */
  readonly applied: number
  readonly sink: Sink | undefined
}

/** Conductance of the seepage face in saturated conductivities per centimetre: no more than a film of water stands on it. */
const FACE = 1e4
/** Difference of two suctions, as a share of the larger, below which they count as nearly equal. */
const NEAR = 0.01

/**
 * The balance of water of every layer of a column, after the mixed form of Richards' equation: what changes is the water content,
 * what drives it is the suction. Between two nodes the conductivity is its mean over their suctions. Units: cm, s, cm³.
 */
export function columnEquations(grid: ColumnGrid, table: MediumTable, saturatedConductivity: number, ends: ColumnEnds) {
  const { nodes, spacing, volumes, sections, bottom, surface } = grid
  const top = nodes - 1
  const heldBase = typeof ends.base === 'number'
  const heldTop = typeof ends.surface === 'number'
  const face = ends.base === 'seepage' ? FACE * saturatedConductivity * bottom : 0
  const values = nodeValues(nodes)
  const { content, capacity, conductivity, conductivitySlope, potential } = values
  /** Net inflow of each layer. Unit: cm³/s. */
  const net = new Float64Array(nodes)
  /** Slopes of water minus dt times net inflow, against suction. */
  const lower = new Float64Array(nodes)
  const diagonal = new Float64Array(nodes)
  const upper = new Float64Array(nodes)
  const rate = { drained: 0, entered: 0, taken: 0 }

  /** Works out inflows, slopes and rates at suctions; `water` and `net` then belong to these suctions. */
  const evaluate = (s: Float64Array, { applied, sink }: Conditions, dt: number): void => {
    table.read(s, values)
    rate.taken = 0
    for (let i = 0; i < nodes; i++) {
      net[i] = lower[i] = upper[i] = 0
      diagonal[i] = -volumes[i]! * capacity[i]!
      if (sink === undefined) continue
      const most = sink.most[i]!
      const [share, slope] = sink.factor(s[i]!)
      net[i] = -most * share
      rate.taken += most * share
      diagonal[i]! += dt * most * slope
    }
    for (let i = 0; i < top; i++) between(s, i, dt)
    atBase(s, dt)
    atSurface(s, applied)
  }

  /** Flow from a node up to the next. */
  const between = (s: Float64Array, i: number, dt: number): void => {
    const below = s[i]!
    const above = s[i + 1]!
    const difference = above - below
    const fall = potential[i]! - potential[i + 1]!
    const kBelow = conductivity[i]!
    const kAbove = conductivity[i + 1]!
    // Nearly equal suctions: the trapezoid with its end correction, because the quotient would lose its digits.
    let byBelow = conductivitySlope[i]! / 2
    let byAbove = conductivitySlope[i + 1]! / 2
    let mean = (kBelow + kAbove) / 2 - (difference * (byAbove - byBelow)) / 6
    const apart = Math.abs(difference) / Math.max(Math.abs(below), Math.abs(above))
    if (apart > NEAR) {
      const quotient = fall / difference
      // From one to the other without a jump, at which an iteration would never end.
      const part = Math.min(apart / NEAR - 1, 1)
      const smooth = part * part * (3 - 2 * part)
      mean += smooth * (quotient - mean)
      byBelow += smooth * ((quotient - kBelow) / difference - byBelow)
      byAbove += smooth * ((kAbove - quotient) / difference - byAbove)
    }
    const scale = saturatedConductivity * sections[i]!
    const up = scale * (fall / spacing - mean)
    net[i]! -= up
    net[i + 1]! += up
    const upByBelow = -dt * scale * (kBelow / spacing + byBelow)
    const upByAbove = dt * scale * (kAbove / spacing - byAbove)
    diagonal[i]! += upByBelow
    upper[i]! += upByAbove
    diagonal[i + 1]! -= upByAbove
    lower[i + 1]! -= upByBelow
  }

  const atBase = (s: Float64Array, dt: number): void => {
    if (heldBase) {
      // What flows into a layer of constant water content must leave it below.
      rate.drained = net[0]!
      net[0] = upper[0] = 0
      diagonal[0] = 1
      return
    }
    rate.drained = face * Math.max(0, -s[0]!)
    net[0]! -= rate.drained
    if (s[0]! <= 0) diagonal[0]! -= dt * face
  }

  const atSurface = (s: Float64Array, applied: number): void => {
    if (heldTop) {
      rate.entered = -net[top]!
      net[top] = lower[top] = 0
      diagonal[top] = 1
      return
    }
    rate.entered = applied
    net[top]! += applied
    if (s[top]! <= 0) diagonal[top]! -= surface
  }

  /** Water in a layer, with what stands on the surface. Unit: cm³. */
  const water = (s: Float64Array, i: number): number =>
    volumes[i]! * content[i]! + (i === top && !heldTop ? standing(s) : 0)
  const standing = (s: Float64Array): number => surface * Math.max(0, -s[top]!)
  /** Whether a layer has a suction that is held, and therefore no balance of its own. */
  const isHeld = (i: number): boolean => (heldBase && i === 0) || (heldTop && i === top)

  /** Sets the suctions that are held, and says how much water this took at bottom and surface. Unit: cm³. */
  const hold = (s: Float64Array): readonly [atBase: number, atSurface: number] => {
    if (!heldBase && !heldTop) return [0, 0]
    table.read(s, values)
    const [first, last] = [content[0]!, content[top]!]
    if (heldBase) s[0] = ends.base as number
    if (heldTop) s[top] = ends.surface as number
    table.read(s, values)
    return [volumes[0]! * (content[0]! - first), volumes[top]! * (content[top]! - last)]
  }

  return { nodes, volumes, net, lower, diagonal, upper, rate, evaluate, water, standing, isHeld, hold }
}

export type ColumnEquations = ReturnType<typeof columnEquations>
