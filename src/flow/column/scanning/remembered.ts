import type { ColumnGrid } from '../grid/grid.js'
import { type ColumnHistory, eachPoint, turnBack } from './history.js'

/** Where the points that scan are, as plain numbers: the share of the main curve that each goes on along, less than zero while it wets. */
export interface RememberedCurves {
  readonly curves: readonly number[]
  readonly turns: readonly number[]
}

/** Takes a history up; the curve on the other side of the turn follows from it. */
export function recall(history: ColumnHistory, grid: ColumnGrid, { curves, turns }: RememberedCurves): void {
  let k = 0
  eachPoint(history, grid, (scan, p) => {
    const [curve, turn] = [curves[k]!, turns[k]!]
    k++
    history.turn[p] = turn
    history.wets[p] = curve < 0 ? 1 : 0
    if (curve < 0) history.wetting[p] = -curve
    else history.drying[p] = curve
    turnBack(history, scan, p)
  })
}

/** Writes a history down. */
export function remembered(history: ColumnHistory, grid: ColumnGrid): RememberedCurves {
  const [curves, turns]: [number[], number[]] = [[], []]
  eachPoint(history, grid, (_, p) => {
    curves.push(history.wets[p] === 1 ? -history.wetting[p]! : history.drying[p]!)
    turns.push(history.turn[p]!)
  })
  return { curves, turns }
}

/** How many points of a column scan. */
export function countOfScanning(history: ColumnHistory, grid: ColumnGrid): number {
  let count = 0
  eachPoint(history, grid, () => {
    count++
  })
  return count
}
