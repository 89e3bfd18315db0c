import type { ColumnEquations, Conditions } from '../equations/equations.js'
import { keepRates } from '../equations/flow-rates.js'
import { countApart, MENDED } from './come-closer.js'
import { columnNewton, type NewtonLimits } from './newton.js'
import { firstLook, isHopeless } from './pace.js'
import type { ColumnState, Passed } from './passed.js'
import { reconcile } from './reconcile.js'
import { tryStep } from './step.js'
import type { OnStep } from './step-ends.js'
import { type StepWork, stepWork } from './step-work.js'

/** Shortest step. Unit: s. */
const MIN_STEP = 1e-9
/** Change of water content, in tolerances, that the first step allows. */
const AT_FIRST = 20

/** Steps behind a failed one of which the next may be longer by no more than this factor. */
const WARY = 3
const GENTLE = 1.5

/** How a solver goes about its work. */
interface SolverLimits extends NewtonLimits {
  readonly tolerance: number
  /** Steps after which a time is given up. */
  readonly maxSteps: number
}

/** Moves a column through time in steps whose error, as a water content, stays below the tolerance in every cell. */
export function columnSolver(equations: ColumnEquations, limits: SolverLimits) {
  const { solve } = columnNewton(equations, limits)
  const work = stepWork(equations, limits.tolerance)

  /**
   * Changes the state and adds to what passed; conditions are the same throughout the duration. Gives the time that is left when no
   * step is short enough, or too many are needed.
   */
  const advance = (
    state: ColumnState,
    duration: number,
    during: Conditions,
    passed: Passed,
    onStep: OnStep,
  ): number => {
    const maxSteps = passed.steps + limits.maxSteps
    begin(work, state, passed, during)
    let dt = firstStep(work, duration)
    let left = duration
    let wary = 0
    const look = firstLook(passed.steps, duration)
    while (left > 0) {
      // A last crumb would cost as much as a step.
      if (left < dt * 1.000001) dt = left
      const { done, factor } = tryStep(work, solve, dt, during, passed, onStep)
      left -= done
      if ((done === 0 && !(dt >= MIN_STEP)) || passed.steps > maxSteps) break
      if (passed.steps >= look.at && isHopeless(look, left, limits.maxSteps)) break
      // Behind a step that failed, what made it fail still lies ahead.
      wary = done === 0 ? WARY : Math.max(wary - 1, 0)
      dt *= wary > 0 ? Math.min(factor, GENTLE) : factor
    }
    state.suctions.set(work.suctions)
    state.held.set(work.held)
    return left
  }
  return { advance }
}

/** A step in which no cell changes by more than some tolerances. */
function firstStep({ equations, before, firstFree, endFree, tolerance }: StepWork, duration: number): number {
  const { volumes } = equations.grid
  let fastest = 0
  for (let i = firstFree; i < endFree; i++) fastest = Math.max(fastest, Math.abs(before[i]!) / volumes[i]!)
  return Math.min(duration, (AT_FIRST * tolerance) / fastest)
}

/** Takes a state over; a suction that is set at an end takes or gives water there at once. */
function begin(work: StepWork, state: ColumnState, passed: Passed, during: Conditions): void {
  const { equations, suctions, held, contents, middles, before, begun, trend, control, tolerance } = work
  const { terms, points, net, heldBase, heldTop } = equations
  work.mending = 1
  control.error = 0
  control.behind = 0
  suctions.set(state.suctions)
  held.set(state.held)
  trend.fill(0)
  equations.hold(suctions)
  reconcile(suctions, held, equations, MENDED * tolerance)
  // No time has passed in which anything could have filled.
  equations.fillFrom(contents, Infinity)
  equations.evaluate(suctions, during)
  contents.set(points.at.waterContent)
  middles.set(points.middleWaterContent)
  if (heldBase && suctions[0] !== state.suctions[0]) {
    passed.drained -= terms.water[0]! - held[0]!
    held[0] = terms.water[0]!
  }
  const top = suctions.length - 1
  if (heldTop && suctions[top] !== state.suctions[top]) {
    passed.entered += terms.water[top]! - held[top]!
    held[top] = terms.water[top]!
  }
  countApart(work)
  before.set(net)
  keepRates(begun, terms)
}
