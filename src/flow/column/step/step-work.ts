import type { ColumnEquations } from '../equations/equations.js'
import { type FlowRates, flowRates, STILL } from '../equations/flow-rates.js'
import type { StepFlows } from './passed.js'
import { type StepControl, stepControl, weightOfPassing } from './step-control.js'

/**
 * What a step of two stages leaves out, worked out through the matrix of its last iteration, which says what is left of it when all cells
 * answer, as full cells do at once. Moves are of suctions, changes of water. Units: cm, cm³.
 */
export interface StepCorrection {
  /** What the inflows have changed over the step, and how suctions would answer to it. */
  readonly change: Float64Array
  readonly answer: Float64Array
  /** What is left out, once through the matrix and twice: the second is quiet where the first would swing. */
  readonly move: Float64Array
  readonly again: Float64Array
  /** Water that the last of them brings to each cell. */
  readonly water: Float64Array
  /** By how much suctions move for the flows of the last stage to bring what is left out. */
  readonly all: Float64Array
  /** How exact is kept what passes above each cell; with two curves it is not looked at, for it would cost a quarter more steps. */
  readonly passing: Float64Array
}

function stepCorrection({ grid, points }: ColumnEquations): StepCorrection {
  const room = () => new Float64Array(grid.nodes)
  return {
    change: room(),
    answer: room(),
    move: room(),
    again: room(),
    water: room(),
    all: room(),
    passing: points.history === undefined ? weightOfPassing(grid) : room(),
  }
}

/** Written out, because a spread gives each column an object of another layout. */
function stepFlows(nodes: number): StepFlows {
  const { up, taken } = flowRates(nodes)
  return {
    up,
    taken,
    drained: STILL,
    entered: STILL,
    runOff: STILL,
    evaporated: STILL,
    dt: STILL,
    before: new Float64Array(nodes),
    after: new Float64Array(nodes),
    middle: new Float64Array(nodes - 1),
  }
}

/** Numbers of a column that steps work with: one for each node, unless said otherwise. Units: cm, cm³, cm³/s. */
export interface StepWork {
  readonly equations: ColumnEquations
  readonly tolerance: number
  /** Cells between these have a balance of their own, and an error: those whose suction is held have none. */
  readonly firstFree: number
  readonly endFree: number
  /** What flows through the element at each node by its weight alone, when it is full. */
  readonly conductance: Float64Array
  /** Where the step begins: suctions, the water that flows brought, and net inflow. */
  readonly suctions: Float64Array
  readonly held: Float64Array
  readonly before: Float64Array
  /** Suctions of the stage that is sought, those of the first stage, and the net inflow there. */
  readonly stage: Float64Array
  readonly halfway: Float64Array
  readonly first: Float64Array
  /** Rate at which suctions change. */
  readonly trend: Float64Array
  /** What suctions say beyond what cells hold, and how much of it is left after the step that is tried. */
  readonly apart: Float64Array
  readonly closer: Float64Array
  /** Water content of each point where the step begins, and from which its second stage fills. */
  readonly contents: Float64Array
  /** The same of the middle of each element, where the step begins. */
  readonly middles: Float64Array
  readonly later: Float64Array
  /** Water with which the first and the second stage are sought. */
  readonly from: Float64Array
  readonly target: Float64Array
  /** Flows at the begin of the step, at its first stage and over the whole of it. */
  readonly begun: FlowRates
  readonly early: FlowRates
  readonly flows: StepFlows
  readonly correction: StepCorrection
  /** Share of the usual mending that a step asks for. */
  mending: number
  readonly control: StepControl
}

export function stepWork(equations: ColumnEquations, tolerance: number): StepWork {
  const { nodes, points, heldBase, heldTop } = equations
  const room = () => new Float64Array(nodes)
  return {
    equations,
    tolerance,
    firstFree: heldBase ? 1 : 0,
    endFree: heldTop ? nodes - 1 : nodes,
    conductance: room().map((_, i) => points.conductance[Math.min(i, nodes - 2)]!),
    suctions: room(),
    held: room(),
    before: room(),
    stage: room(),
    halfway: room(),
    first: room(),
    trend: room(),
    apart: room(),
    closer: room(),
    contents: new Float64Array(points.suction.length),
    middles: new Float64Array(nodes - 1),
    later: new Float64Array(points.suction.length),
    from: room(),
    target: room(),
    begun: flowRates(nodes),
    early: flowRates(nodes),
    flows: stepFlows(nodes),
    correction: stepCorrection(equations),
    mending: 1,
    control: stepControl(),
  }
}
