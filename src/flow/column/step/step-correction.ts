import { solveTridiagonalAgain } from '../../../numerics/tridiagonal.js'
import type { ColumnEquations } from '../equations/equations.js'
import { BEND_FIRST, PER_REST, PER_STAGE } from '../equations/flow-rates.js'
import { DRAIN } from './step-control.js'
import type { StepWork } from './step-work.js'

/**
 * What the two stages leave out of the terms of third order, by their order conditions: of how flows bend, 1/3 - (1 - γ) γ² - γ, and of how they
 * answer to their own change, 1 / (6 γ) - γ (3 - 2 γ) less the first.
 */
const BENT = -0.02022005725994043
const ANSWERED = -0.11785113019775796
/**
 * The largest error of the step, as a water content: what it leaves out. The drain errs by what all cells err together, and what passes at a
 * height by what all below it do: water that comes down too late drains too late. Where all is full and nothing can leave, the matrix may have no
 * inverse, and what is left out is not known: the error has no bound.
 */
export function errorOfStep(work: StepWork, dt: number): number {
  const { equations, correction, before, first, firstFree, endFree } = work
  const { net, grid, heldBase } = equations
  const { change, answer, move, again, water, all, passing } = correction
  const { perVolume } = grid
  change.fill(0)
  for (let i = firstFree; i < endFree; i++) change[i] = dt * (net[i]! - before[i]!)
  through(equations, change, answer, water)
  again.fill(0)
  const bent = dt * BENT
  for (let i = firstFree; i < endFree; i++) {
    const bend = PER_STAGE * before[i]! + BEND_FIRST * first[i]! + PER_REST * net[i]!
    again[i] = bent * bend + ANSWERED * (water[i]! - change[i]!)
  }
  through(equations, again, move, water)
  for (let i = 0; i < all.length; i++) all[i] = move[i]! + ANSWERED * answer[i]!
  let max = 0
  let together = 0
  for (let i = firstFree; i < endFree; i++) {
    together += water[i]!
    max = Math.max(max, Math.abs(water[i]!) * perVolume[i]!, passing[i]! * Math.abs(together))
  }
  const drain = heldBase ? 0 : (DRAIN * Math.abs(together)) / grid.volume
  work.control.triedByDrain = drain > max
  return Number.isNaN(together) ? Infinity : Math.max(max, drain)
}

/** Takes what is left out through the matrix once more, which damps it. */
export function dampCorrection({ equations, correction, firstFree, endFree }: StepWork): void {
  const { again, water, all, change } = correction
  change.fill(0)
  for (let i = firstFree; i < endFree; i++) change[i] = water[i]!
  through(equations, change, again, water)
  for (let i = 0; i < all.length; i++) all[i]! += again[i]!
}

/** How suctions move for what changes in the balance, and the water that they bring. */
function through(equations: ColumnEquations, change: Float64Array, move: Float64Array, water: Float64Array): void {
  const { lower, diagonal, upper, terms } = equations
  const { waterByBelow, waterByOwn, waterByAbove } = terms
  move.set(change)
  solveTridiagonalAgain(lower, diagonal, upper, move)
  const top = move.length - 1
  let below = 0
  let own = move[0]!
  for (let i = 0; i <= top; i++) {
    const above = i < top ? move[i + 1]! : 0
    water[i] = waterByBelow[i]! * below + waterByOwn[i]! * own + waterByAbove[i]! * above
    below = own
    own = above
  }
}
