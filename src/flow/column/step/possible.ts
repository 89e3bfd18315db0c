import type { ColumnEquations, Conditions } from '../equations/equations.js'
import type { FlowRates } from '../equations/flow-rates.js'

/** Rounding of a flow, and of what a full cell holds, as shares. */
const ROUNDING = 1e-10
const FULL = 1e-6
/** How far, as a water content, a step may bring a cell beyond what it can hold. */
const ASTRAY = 1e-4

/** Whether flows go the way that they can, none of them further than what drives it asks. */
export function arePossible(equations: ColumnEquations, flows: FlowRates, { sink, evaporation }: Conditions): boolean {
  const { taken, drained, runOff, evaporated } = flows
  if (!equations.heldBase && drained < 0) return false
  if (runOff < 0 || evaporated < 0 || evaporated > evaporation) return false
  if (sink === undefined) return true
  const { max } = sink
  for (let i = 0; i < max.length; i++) {
    if (taken[i]! < 0 || taken[i]! > max[i]! * (1 + ROUNDING)) return false
  }
  return true
}

/** Whether every cell can hold what flows bring in a time. */
export function canHold({ full }: ColumnEquations, held: Float64Array, flows: FlowRates, dt: number): boolean {
  const { up, taken, drained, entered, runOff, evaporated } = flows
  const top = held.length - 1
  let fromBelow = -drained
  for (let i = 0; i < top; i++) {
    const next = held[i]! + dt * (fromBelow - up[i]! - taken[i]!)
    if (next < 0 || next > full[i]! * (1 + FULL)) return false
    fromBelow = up[i]!
  }
  // What the highest cell cannot hold stands on it.
  return held[top]! + dt * (fromBelow - taken[top]! + entered - runOff - evaporated) >= 0
}

/**
 * Whether flows bring to a cell what it cannot hold at the suctions that were found, and further off than it was: where slopes carried over a
 * kink, as when standing water goes, suctions would say what is not so. What stands on the surface belongs to the highest cell.
 */
export function goesAstray(
  { full, grid, standing }: ColumnEquations,
  held: Float64Array,
  flows: FlowRates,
  dt: number,
  from: Float64Array,
  to: Float64Array,
): boolean {
  const { up, taken, drained, entered, runOff, evaporated } = flows
  const top = held.length - 1
  let fromBelow = -drained
  for (let i = 0; i <= top; i++) {
    const isTop = i === top
    const above = isTop ? runOff + evaporated - entered : up[i]!
    const before = held[i]! - (isTop ? standing(from) : 0)
    const after = held[i]! + dt * (fromBelow - above - taken[i]!) - (isTop ? standing(to) : 0)
    if (beyond(after, full[i]!) > ASTRAY * grid.volumes[i]! + beyond(before, full[i]!)) return true
    fromBelow = above
  }
  return false
}

function beyond(water: number, full: number): number {
  return Math.max(0, -water, water - full)
}

/** Whether a node passes between suction and pressure. */
export function passesSaturation(s: Float64Array, move: Float64Array): boolean {
  for (let i = 0; i < s.length; i++) if (s[i]! > 0 !== s[i]! + move[i]! > 0) return true
  return false
}
