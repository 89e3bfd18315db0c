import type { FlowRates } from '../equations/flow-rates.js'

/** Water that passed the ends of a column in a time, and how the simulation went. Unit: cm³. */
export interface Passed {
  entered: number
  drained: number
  taken: number
  runOff: number
  evaporated: number
  steps: number
}

/** Suctions at the nodes and the water that the flows brought to their cells, which suctions follow. Units: cm, cm³. */
export interface ColumnState {
  readonly suctions: Float64Array
  readonly held: Float64Array
}

/** Flows of one step, on average, with the water before and after it: what a solute needs to come along. Units: s, cm³/s, cm³. */
export interface StepFlows extends FlowRates {
  dt: number
  readonly before: Float64Array
  readonly after: Float64Array
  /** Water content in the middle of each element, the mean of begin and end: with that of the end alone diffusion is of the first order. Unit: m³/m³. */
  readonly middle: Float64Array
}

/** Adds up what passed in a step. */
export function addPassed(passed: Passed, { dt, taken, drained, entered, runOff, evaporated }: StepFlows): void {
  passed.steps++
  passed.entered += dt * entered
  passed.drained += dt * drained
  passed.runOff += dt * runOff
  passed.evaporated += dt * evaporated
  let drunk = 0
  for (let i = 0; i < taken.length; i++) drunk += taken[i]!
  passed.taken += dt * drunk
}
