import { addFlows } from '../equations/flow-rates.js'
import { follow } from '../scanning/history.js'
import { countApart } from './come-closer.js'
import { addPassed, type Passed, type StepFlows } from './passed.js'
import type { StepWork } from './step-work.js'

/** Share of the mending that is left behind a step that found no solution. */
const LESS = 0.3

/** What a step tells: how much of it was done, and by how much the next should be longer or shorter. */
export interface StepOutcome {
  readonly done: number
  readonly factor: number
}

/** Who is told of the flows of a step. */
export type OnStep = ((flows: StepFlows) => void) | undefined

/** Takes over suctions and mean flows of a step, and adds up what passed. */
export function goOn(work: StepWork, to: Float64Array, dt: number, passed: Passed, onStep: OnStep): void {
  const { equations, suctions, apart, closer, flows, held, contents, middles } = work
  const { history, at, middleWaterContent } = equations.points
  work.mending = Math.min(1, work.mending / LESS)
  suctions.set(to)
  contents.set(at.waterContent)
  apart.set(closer)
  if (history !== undefined) follow(history, equations.grid, suctions)
  flows.dt = dt
  flows.before.set(held)
  addFlows(held, flows, dt)
  addPassed(passed, flows)
  if (onStep === undefined) return
  flows.after.set(held)
  for (let e = 0; e < middles.length; e++) flows.middle[e] = (middles[e]! + middleWaterContent[e]!) / 2
  middles.set(middleWaterContent)
  onStep(flows)
}

/** A step that found no solution: what suctions say beyond what cells hold is counted anew, and the next is shorter. */
export function failed(work: StepWork): StepOutcome {
  work.mending *= LESS
  work.equations.store(work.suctions)
  countApart(work)
  return { done: 0, factor: 0.25 }
}
