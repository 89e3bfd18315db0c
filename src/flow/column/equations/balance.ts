import type { ColumnGrid } from '../grid/grid.js'
import type { ColumnTerms } from './terms.js'

/** What a balance of all cells is made of. */
export interface ColumnBalance {
  readonly grid: ColumnGrid
  readonly terms: ColumnTerms
  /** Net inflow of each cell. Unit: cm³/s. */
  readonly net: Float64Array
  /** Slopes of water minus dt times net inflow, against suction. */
  readonly lower: Float64Array
  readonly diagonal: Float64Array
  readonly upper: Float64Array
  /** Whether the suction is kept at bottom and surface. */
  readonly heldBase: boolean
  readonly heldTop: boolean
}

/** Room for the balance of a column. */
export function columnBalance(
  grid: ColumnGrid,
  terms: ColumnTerms,
  heldBase: boolean,
  heldTop: boolean,
): ColumnBalance {
  const room = () => new Float64Array(grid.nodes)
  return { grid, terms, net: room(), lower: room(), diagonal: room(), upper: room(), heldBase, heldTop }
}

/** Sums the flows to the net inflow of each cell. */
export function sumFlows({ terms, net, heldBase, heldTop }: ColumnBalance): void {
  const { up, taken } = terms
  const top = up.length
  let fromBelow = 0
  for (let e = 0; e < top; e++) {
    net[e] = fromBelow - up[e]! - taken[e]!
    fromBelow = up[e]!
  }
  net[top] = fromBelow - taken[top]!
  if (!heldBase) net[0]! -= terms.drained
  if (!heldTop) net[top]! += terms.entered - terms.runOff - terms.evaporated
}

/** The matrix for a step. */
export function assembleMatrix(balance: ColumnBalance, dt: number): void {
  const { terms, lower, diagonal, upper, heldBase, heldTop } = balance
  const { waterByBelow, waterByOwn, waterByAbove, upByBelow, upByAbove, takenByBelow, takenByOwn, takenByAbove } = terms
  const nodes = diagonal.length
  const top = nodes - 1
  // What the flow up from below changes in the balance of a cell, against the node below and its own.
  let byBelow = 0
  let byOwn = 0
  for (let i = 0; i < nodes; i++) {
    const outByOwn = i < top ? upByBelow[i]! : 0
    const outByAbove = i < top ? upByAbove[i]! : 0
    lower[i] = waterByBelow[i]! + dt * (takenByBelow[i]! - byBelow)
    diagonal[i] = waterByOwn[i]! + dt * (takenByOwn[i]! - byOwn + outByOwn)
    upper[i] = waterByAbove[i]! + dt * (takenByAbove[i]! + outByAbove)
    byBelow = outByOwn
    byOwn = outByAbove
  }
  diagonal[0]! += dt * terms.drainedSlope
  diagonal[top]! += dt * (terms.runOffSlope + terms.evaporatedSlope)
  if (heldBase) {
    diagonal[0] = 1
    upper[0] = 0
  }
  if (heldTop) {
    diagonal[top] = 1
    lower[top] = 0
  }
}

/** Lets what a held end needs to keep its water pass there. */
export function closeHeldEnds(balance: ColumnBalance, target: Float64Array, dt: number): void {
  const { terms, net, heldBase, heldTop } = balance
  const { water } = terms
  const top = water.length - 1
  if (heldBase) {
    terms.drained = (target[0]! - water[0]!) / dt + net[0]!
    net[0]! -= terms.drained
  }
  if (heldTop) {
    terms.entered = (water[top]! - target[top]!) / dt - net[top]!
    net[top]! += terms.entered
  }
}
