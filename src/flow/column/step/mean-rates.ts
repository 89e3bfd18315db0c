import type { ColumnEquations } from '../equations/equations.js'
import { REST, STAGE } from '../equations/flow-rates.js'
import type { StepWork } from './step-work.js'

/** Weights of the rates at begin, first stage and end of a step in their mean, where it knows how they bend: those of the stages and `BENT` of the bend. */
const BEGUN = -0.06903559372884917
const EARLY = 0.804737854124365
const LATE = 0.2642977396044842

/** Mean flows of a step by its two stages. */
export function meanOfStages({ equations, early, flows }: StepWork): void {
  const { terms } = equations
  for (let e = 0; e < flows.up.length; e++) flows.up[e] = REST * early.up[e]! + STAGE * terms.up[e]!
  for (let i = 0; i < flows.taken.length; i++) flows.taken[i] = REST * early.taken[i]! + STAGE * terms.taken[i]!
  flows.drained = REST * early.drained + STAGE * terms.drained
  flows.entered = REST * early.entered + STAGE * terms.entered
  flows.runOff = REST * early.runOff + STAGE * terms.runOff
  flows.evaporated = REST * early.evaporated + STAGE * terms.evaporated
}

/** The same with what the stages leave out, flow by flow, so that no water is lost. */
export function meanOfThirdOrder({ equations, correction, begun, early, flows }: StepWork): void {
  const { terms, nodes } = equations
  const { all } = correction
  const top = nodes - 1
  const { up, upByBelow, upByAbove, taken, takenByBelow, takenByOwn, takenByAbove } = terms
  for (let e = 0; e < top; e++) {
    const moved = upByBelow[e]! * all[e]! + upByAbove[e]! * all[e + 1]!
    flows.up[e] = BEGUN * begun.up[e]! + EARLY * early.up[e]! + LATE * up[e]! + STAGE * moved
  }
  let below = 0
  let own = all[0]!
  for (let i = 0; i < nodes; i++) {
    const above = i < top ? all[i + 1]! : 0
    const moved = takenByBelow[i]! * below + takenByOwn[i]! * own + takenByAbove[i]! * above
    flows.taken[i] = BEGUN * begun.taken[i]! + EARLY * early.taken[i]! + LATE * taken[i]! + STAGE * moved
    below = own
    own = above
  }
  const last = all[top]!
  flows.drained = mean(begun.drained, early.drained, terms.drained, terms.drainedSlope * all[0]!)
  flows.entered = mean(begun.entered, early.entered, terms.entered, 0)
  flows.runOff = mean(begun.runOff, early.runOff, terms.runOff, terms.runOffSlope * last)
  flows.evaporated = mean(begun.evaporated, early.evaporated, terms.evaporated, terms.evaporatedSlope * last)
  closeHeldEnds(equations, flows, early)
}

function mean(begin: number, first: number, end: number, moved: number): number {
  return BEGUN * begin + EARLY * first + LATE * end + STAGE * moved
}

/** An end whose suction is held passes what its cell needs to keep up with its neighbour. */
function closeHeldEnds(
  { terms, heldBase, heldTop, nodes }: ColumnEquations,
  flows: StepWork['flows'],
  early: StepWork['early'],
): void {
  const top = nodes - 1
  const upMore = (e: number) => flows.up[e]! - REST * early.up[e]! - STAGE * terms.up[e]!
  const takenMore = (i: number) => flows.taken[i]! - REST * early.taken[i]! - STAGE * terms.taken[i]!
  if (heldBase) flows.drained = REST * early.drained + STAGE * terms.drained - upMore(0) - takenMore(0)
  if (heldTop) flows.entered = REST * early.entered + STAGE * terms.entered - upMore(top - 1) + takenMore(top)
}
