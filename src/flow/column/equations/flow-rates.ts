// Two implicit stages, the second at the end of the step: alexander-1977.
export const STAGE = 0.2928932188134524
export const REST = 0.7071067811865476

/**
 * No flow yet. A plain zero would be a whole number to the engine, and the first broken one in its place would give the object another layout,
 * for which all loops are compiled again.
 */
export const STILL = -0

/** Flows of a column at a moment, or on average over a step. Unit: cm³/s. */
export interface FlowRates {
  /** Up through each element. */
  readonly up: Float64Array
  /** What the roots take from the cell of each node. */
  readonly taken: Float64Array
  drained: number
  entered: number
  runOff: number
  evaporated: number
}

/** Room for the flows of a column. */
export function flowRates(nodes: number): FlowRates {
  return {
    up: new Float64Array(nodes - 1),
    taken: new Float64Array(nodes),
    drained: STILL,
    entered: STILL,
    runOff: STILL,
    evaporated: STILL,
  }
}

/** Writes flows down. */
export function keepRates(into: FlowRates, from: FlowRates): void {
  into.up.set(from.up)
  into.taken.set(from.taken)
  into.drained = from.drained
  into.entered = from.entered
  into.runOff = from.runOff
  into.evaporated = from.evaporated
}

/** Lets flows go on for a time: what leaves one cell comes to the next, so that nothing is lost. */
export function addFlows(held: Float64Array, flows: FlowRates, dt: number): void {
  const { up, taken } = flows
  const top = held.length - 1
  let fromBelow = -flows.drained
  for (let i = 0; i < top; i++) {
    held[i]! += dt * (fromBelow - up[i]! - taken[i]!)
    fromBelow = up[i]!
  }
  held[top]! += dt * (fromBelow - taken[top]! + flows.entered - flows.runOff - flows.evaporated)
}

/** One over the lengths of the stages: a division takes as long as several products. */
export const PER_STAGE = 3.414213562373096
export const PER_REST = 1.414213562373095
/**
 * Weight of the rate at the first stage in how rates bend, -1 / STAGE - 1 / REST; `PER_STAGE` and `PER_REST` are those at begin and end. By so much
 * the last is off the straight line through the others.
 */
export const BEND_FIRST = -4.828427124746191
