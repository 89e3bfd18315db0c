import { solveTridiagonalAgain } from '../../numerics/tridiagonal.js'
import type { ColumnEquations, Conditions } from './equations.js'
import { follow } from './history.js'
import { columnNewton, moved } from './newton.js'
import { reconcile } from './reconcile.js'

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
export interface StepFlows {
  dt: number
  readonly up: Float64Array
  readonly taken: Float64Array
  readonly before: Float64Array
  readonly after: Float64Array
  /** Water content in the middle of each element. Unit: m³/m³. */
  readonly middle: Float64Array
  drained: number
  entered: number
  runOff: number
}

// Two implicit stages, the second at the end of the step: Alexander (1977), SIAM Journal on Numerical Analysis 14:1006-1021.
const STAGE = 0.2928932188134524
const REST = 0.7071067811865476
/** Size of the term of third order that the method leaves out: 1/6 - 3 γ² + 2 γ³ without its sign. */
const LEFT_OUT = 0.04044
/** Shortest step. Unit: s. */
const SHORTEST = 1e-9
/** How much more exact the drain of a step is kept than a single cell, as depths over the whole column. */
const DRAIN = 400

/** Share of the tolerance by which suctions come closer to what cells hold in a step. */
const MENDED = 0.3

/** The same as a share of what is left, where that is more. */
const FASTER = 0.1
/** The same as a share of its suction, or of a centimetre, by which a cell may move for it. */
const AT_ONCE = 0.5

/** Steps behind a failed one of which the next may be longer by no more than this factor. */
const WARY = 3
const GENTLE = 1.5

/** Share of the mending that is left behind a step that found no solution. */
const LESS = 0.3

/** How a solver goes about its work. */
interface SolverLimits {
  readonly tolerance: number
  /** Change of water content from which an iteration ends with its slopes. */
  readonly small: number
  /** Steps after which a time is given up. */
  readonly mostSteps: number
}

/** Moves a column through time in steps whose error, as a water content, stays below the tolerance in every cell. */
export function columnSolver(equations: ColumnEquations, limits: SolverLimits) {
  const { tolerance, small } = limits
  const { nodes, grid, net, terms } = equations
  const { volumes, volume } = grid
  const { history } = equations.points
  /** What flows through the element at each node by its weight alone, when it is full. Unit: cm³/s. */
  const conductance = Float64Array.from(volumes, (_, i) => equations.points.conductance[Math.min(i, nodes - 2)]!)
  /** Cells whose suction is held have no balance of their own, and no error. */
  const firstFree = equations.heldBase ? 1 : 0
  const endFree = equations.heldTop ? nodes - 1 : nodes
  const { solve, work } = columnNewton(equations, small)
  const room = () => new Float64Array(nodes)
  const [suctions, stage, held, target] = [room(), room(), room(), room()]
  /** Net inflow at the begin of the step and at its first stage; suctions at that stage; rate at which suctions change. */
  const [before, first, halfway, trend] = [room(), room(), room(), room()]
  /** What suctions say beyond what cells hold, and how much of it is left after the step that is tried. */
  const [apart, closer, from, off] = [room(), room(), room(), room()]
  const early = {
    drainedBefore: 0,
    drained: 0,
    entered: 0,
    runOff: 0,
    evaporated: 0,
    up: new Float64Array(nodes - 1),
    taken: room(),
  }
  const flows: StepFlows = {
    dt: 0,
    up: new Float64Array(nodes - 1),
    taken: room(),
    before: room(),
    after: room(),
    middle: equations.points.middleWaterContent,
    drained: 0,
    entered: 0,
    runOff: 0,
  }
  /** Share of the usual mending that a step asks for. */
  let mending = 1

  /**
   * Changes the state and adds to what passed; conditions are the same throughout the duration. Gives the time that is left when no
   * step is short enough, or too many were needed.
   */
  const advance = (
    state: ColumnState,
    duration: number,
    during: Conditions,
    passed: Passed,
    onStep: ((flows: StepFlows) => void) | undefined,
  ): number => {
    const mostSteps = passed.steps + limits.mostSteps
    begin(state, passed, during)
    let fastest = 0
    for (let i = firstFree; i < endFree; i++) fastest = Math.max(fastest, Math.abs(before[i]!) / volumes[i]!)
    // At first no cell shall change by more than some tolerances.
    let dt = fastest > 0 ? Math.min(duration, (10 * tolerance) / fastest) : duration
    let left = duration
    let wary = 0
    while (left > 0) {
      // A last crumb would cost as much as a step.
      if (left < dt * 1.000001) dt = left
      const { done, factor } = step(dt, during, passed, onStep)
      left = left === done ? 0 : left - done
      if ((done === 0 && dt < SHORTEST) || passed.steps > mostSteps) break
      // Behind a step that failed, what made it fail still lies ahead.
      wary = done === 0 ? WARY : Math.max(wary - 1, 0)
      dt *= wary > 0 ? Math.min(factor, GENTLE) : factor
    }
    state.suctions.set(suctions)
    state.held.set(held)
    return left
  }

  /** Takes the state over; a suction that is set at an end takes or gives water there at once. */
  function begin(state: ColumnState, passed: Passed, during: Conditions): void {
    mending = 1
    suctions.set(state.suctions)
    held.set(state.held)
    trend.fill(0)
    equations.hold(suctions)
    reconcile(suctions, held, equations, MENDED * tolerance)
    equations.evaluate(suctions, during)
    const { heldBase, heldTop } = equations
    if (heldBase && suctions[0] !== state.suctions[0]) {
      passed.drained -= terms.water[0]! - held[0]!
      held[0] = terms.water[0]!
    }
    const top = nodes - 1
    if (heldTop && suctions[top] !== state.suctions[top]) {
      passed.entered += terms.water[top]! - held[top]!
      held[top] = terms.water[top]!
    }
    for (let i = 0; i < nodes; i++) apart[i] = terms.water[i]! - held[i]!
    before.set(net)
    early.drainedBefore = terms.drained
  }

  /** Tries one step, and says how much of it was done and by how much the next should be longer or shorter. */
  function step(dt: number, during: Conditions, passed: Passed, onStep: ((flows: StepFlows) => void) | undefined) {
    const driest = during.sink?.h4 ?? Infinity
    comeCloser(dt)
    guess(suctions, STAGE * dt, driest)
    if (!solve(stage, from, during, STAGE * dt)) return failed()
    keepFirst(dt)
    guess(stage, REST * dt, driest)
    if (!solve(stage, target, during, STAGE * dt)) return firstStageAlone(dt, passed, onStep)
    const error = leftOut(dt)
    const factor = error > 0 ? 0.9 * (tolerance / error) ** (1 / 3) : 5
    if (error > tolerance) return { done: 0, factor: Math.min(Math.max(factor, 0.1), 0.7) }
    for (let i = 0; i < nodes; i++) {
      flows.before[i] = held[i]!
      held[i]! += dt * (REST * first[i]! + STAGE * net[i]!)
      before[i] = net[i]!
      trend[i] = (stage[i]! - suctions[i]!) / dt
    }
    goOn(stage)
    early.drainedBefore = terms.drained
    count(passed, dt, REST, STAGE, onStep)
    return { done: dt, factor: Math.min(Math.max(factor, 0.3), 5) }
  }

  /**
   * Lets suctions come closer to what the cells hold, by no more than a step may err: another manner of looking at cells, or a
   * suction that is set at an end, would else ask for flows without limit. Of a cell that is full or as good as empty no more is asked
   * than it can do in the time, and of all cells less where steps find no solution: a short step must be an easy one.
   */
  function comeCloser(dt: number): void {
    for (let i = 0; i < nodes; i++) {
      const s = suctions[i]!
      const byItself = AT_ONCE * Math.max(s, 1) * Math.abs(terms.waterByOwn[i]!)
      const byFlow = s > 1 ? 0 : dt * conductance[i]!
      const wanted = Math.max(MENDED * tolerance * volumes[i]!, FASTER * Math.abs(apart[i]!))
      const most = mending * Math.min(wanted, byItself + byFlow)
      closer[i] = apart[i]! - Math.min(Math.max(apart[i]!, -most), most)
      from[i] = held[i]! + closer[i]!
    }
  }

  /** Takes over the suctions at the end of a step. */
  function goOn(to: Float64Array): void {
    mending = Math.min(1, mending / LESS)
    suctions.set(to)
    apart.set(closer)
    if (history !== undefined) follow(history, grid, suctions)
  }

  /** A step that found no solution: what suctions say beyond what cells hold is counted anew, and the next is shorter. */
  function failed() {
    mending *= LESS
    equations.store(suctions)
    for (let i = 0; i < nodes; i++) apart[i] = terms.water[i]! - held[i]!
    return { done: 0, factor: 0.25 }
  }

  function keepFirst(dt: number): void {
    for (let i = 0; i < nodes; i++) {
      first[i] = net[i]!
      target[i] = from[i]! + dt * REST * net[i]!
      trend[i] = (stage[i]! - suctions[i]!) / (STAGE * dt)
      halfway[i] = stage[i]!
    }
    early.drained = terms.drained
    early.entered = terms.entered
    early.runOff = terms.runOff
    early.evaporated = terms.evaporated
    early.up.set(terms.up)
    early.taken.set(terms.taken)
  }

  /**
   * The first stage as a step of its own, an implicit Euler step. Where a cell runs out of water the second stage would ask it for more
   * than it has, however short the step.
   */
  function firstStageAlone(dt: number, passed: Passed, onStep: ((flows: StepFlows) => void) | undefined) {
    let off = 0
    for (let i = firstFree; i < endFree; i++)
      off = Math.max(off, (STAGE * dt * Math.abs(first[i]! - before[i]!)) / (2 * volumes[i]!))
    if (off > tolerance) return failed()
    for (let i = 0; i < nodes; i++) {
      flows.before[i] = held[i]!
      held[i]! += STAGE * dt * first[i]!
      before[i] = first[i]!
    }
    goOn(halfway)
    early.drainedBefore = early.drained
    count(passed, STAGE * dt, 1, 0, onStep)
    const factor = off > 0 ? 0.9 * (tolerance / off) ** (1 / 2) : 4
    return { done: STAGE * dt, factor: Math.min(Math.max(factor, 0.5), 4) }
  }

  /** Adds up what passed in a step, of which the first stage and the second make the shares a and b. */
  function count(passed: Passed, dt: number, a: number, b: number, onStep: ((flows: StepFlows) => void) | undefined) {
    passed.steps++
    passed.entered += dt * (a * early.entered + b * terms.entered)
    passed.drained += dt * (a * early.drained + b * terms.drained)
    passed.runOff += dt * (a * early.runOff + b * terms.runOff)
    passed.evaporated += dt * (a * early.evaporated + b * terms.evaporated)
    let taken = 0
    for (let i = 0; i < nodes; i++) taken += a * early.taken[i]! + b * terms.taken[i]!
    passed.taken += dt * taken
    if (onStep === undefined) return
    flows.dt = dt
    for (let e = 0; e < nodes - 1; e++) flows.up[e] = a * early.up[e]! + b * terms.up[e]!
    for (let i = 0; i < nodes; i++) flows.taken[i] = a * early.taken[i]! + b * terms.taken[i]!
    flows.drained = a * early.drained + b * terms.drained
    flows.entered = a * early.entered + b * terms.entered
    flows.runOff = a * early.runOff + b * terms.runOff
    flows.after.set(held)
    onStep(flows)
  }

  /** The suctions of the next stage, if they go on as they went. */
  function guess(from: Float64Array, dt: number, driest: number): void {
    for (let i = 0; i < nodes; i++) stage[i] = moved(from[i]!, dt * trend[i]!, 1, driest)
  }

  /**
   * The largest error of the step, as a water content. How the inflow of a cell bends is what the cell would err by itself; the matrix of the
   * step says what of it is left when all cells answer, as full cells do at once. The drain errs by what all cells err together.
   */
  function leftOut(dt: number): number {
    const scale = 2 * LEFT_OUT * dt
    off.fill(0)
    for (let i = firstFree; i < endFree; i++) off[i] = scale * bend(net[i]!, first[i]!, before[i]!)
    solveTridiagonalAgain(equations.lower, equations.diagonal, equations.upper, off)
    const { waterByBelow, waterByOwn, waterByAbove } = terms
    let most = 0
    let all = 0
    let below = 0
    let own = off[0]!
    for (let i = 0; i < nodes; i++) {
      const above = i < nodes - 1 ? off[i + 1]! : 0
      const water = waterByBelow[i]! * below + waterByOwn[i]! * own + waterByAbove[i]! * above
      all += water
      most = Math.max(most, Math.abs(water) / volumes[i]!)
      below = own
      own = above
    }
    return equations.heldBase ? most : Math.max(most, (DRAIN * Math.abs(all)) / volume)
  }
  return { advance, work }
}

/** By how much a rate at the end of a step is off the straight line through those at its begin and its first stage. */
function bend(end: number, first: number, begin: number): number {
  return (end - first) / REST - (first - begin) / STAGE
}
