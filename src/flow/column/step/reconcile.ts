import { solveTridiagonal } from '../../../numerics/tridiagonal.js'
import type { ColumnEquations } from '../equations/equations.js'
import { moveAll } from './moved.js'

const SWEEPS = 15
/** Slope of water against suction, as a share of the volume per cm, below which a cell is full and its suction says nothing. */
const FULL = 1e-9

/**
 * Moves suctions until they say what the cells hold, with nothing flowing: after another manner of looking at cells had its turn. What
 * cannot be met, as in a full cell, stays; suctions that came no closer are left as they were.
 */
export function reconcile(s: Float64Array, held: Float64Array, equations: ColumnEquations, enough: number): void {
  const { nodes, grid, terms, heldBase, heldTop } = equations
  const begun = s.slice()
  const { lower, diagonal, upper } = equations
  const right = new Float64Array(nodes)
  let first = Infinity
  let off = Infinity
  for (let sweep = 0; ; sweep++) {
    equations.store(s)
    off = 0
    for (let i = 0; i < nodes; i++) {
      const set = (heldBase && i === 0) || (heldTop && i === nodes - 1)
      const full = Math.abs(terms.waterByOwn[i]!) < FULL * grid.volumes[i]!
      right[i] = set || full ? 0 : held[i]! - terms.water[i]!
      lower[i] = set || full ? 0 : terms.waterByBelow[i]!
      upper[i] = set || full ? 0 : terms.waterByAbove[i]!
      diagonal[i] = set || full ? 1 : terms.waterByOwn[i]!
      off = Math.max(off, Math.abs(right[i]!) / grid.volumes[i]!)
    }
    if (sweep === 0) first = off
    if (off < enough || sweep === SWEEPS) break
    solveTridiagonal(lower, diagonal, upper, right)
    moveAll(s, right, 1, Infinity, s)
  }
  if (!(off < first)) s.set(begun)
}
