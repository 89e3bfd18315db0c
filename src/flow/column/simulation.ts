import { ConvergenceError } from '../../quantity/errors.js'
import type { ColumnEnds } from './equations/ends.js'
import { type ColumnEquations, type Conditions, columnEquations, type Manner } from './equations/equations.js'
import type { ColumnGrid } from './grid/grid.js'
import { columnHistory } from './scanning/history.js'
import type { ColumnState, Passed } from './step/passed.js'
import { columnSolver } from './step/solver.js'
import type { OnStep } from './step/step-ends.js'
import type { LayerMedium } from './table/layer-medium.js'

/** Ways through a time, each more patient than the one before; a day of many shots takes some thousand steps in all. */
const WAYS: readonly { manner: Manner; maxSteps: number }[] = [
  { manner: 'averaged', maxSteps: 4000 },
  { manner: 'nodal', maxSteps: 4000 },
  { manner: 'upstream', maxSteps: 40000 },
]

/** A column that moves through time. */
interface ColumnSimulation {
  readonly equations: ColumnEquations
  /** Changes the state, tells of every step, and gives what passed. */
  readonly advance: (state: ColumnState, duration: number, during: Conditions, onStep: OnStep) => Passed
}

/**
 * Goes the quick way, averaging within cells and carrying on by slopes. Where that finds none, it goes on from there with cells that are
 * as their nodes are and iterations that go to the end, and at last upstream.
 */
export function columnSimulation(
  grid: ColumnGrid,
  media: readonly LayerMedium[],
  ends: ColumnEnds,
  tolerance: number,
): ColumnSimulation {
  const history = columnHistory(grid, media, tolerance)
  const equationsOf = (manner: Manner) => columnEquations(grid, media, ends, manner, history)
  // The first way works with what states are read by: either begins by filling in all that it looks at.
  const equations = equationsOf('averaged')
  const ways = WAYS.map(({ manner, maxSteps }, i) => {
    // Bold where a more patient way stands behind it.
    const bold = i === 0
    const small = bold ? 0.5 * Math.sqrt(tolerance) : 1e-9
    let solver: ReturnType<typeof columnSolver> | undefined
    // Made when it is needed: most simulations never leave the first.
    return () => {
      const limits = { tolerance, small, bold, maxSteps }
      solver ??= columnSolver(manner === 'averaged' ? equations : equationsOf(manner), limits)
      return solver
    }
  })
  return {
    equations,
    advance: (state, duration, during, onStep) => {
      const passed: Passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
      let left = duration
      for (const way of ways) {
        left = way().advance(state, left, during, passed, onStep)
        if (left === 0) return passed
      }
      throw new ConvergenceError(
        'flow in the container',
        passed.steps,
        left,
        'check the conductivity and its unit; roots may have emptied a coarse medium, into which water then hardly finds its way',
      )
    },
  }
}
