import { ConvergenceError } from '../quantity/errors.js'
import type { ColumnEquations, Conditions } from './column-equations.js'
import { columnNewton, limited } from './column-newton.js'

/** Water that passed the ends of a column in a time, and how the simulation went. Unit: cm³. */
export interface Passed {
  entered: number
  drained: number
  taken: number
  /** Water that the suctions hold and no flow brought. */
  imbalance: number
  steps: number
}

// Two implicit stages, the second at the end of the step: Alexander (1977), SIAM Journal on Numerical Analysis 14:1006-1021.
const STAGE = 0.2928932188134524
const REST = 0.7071067811865476
/** Size of the term of third order that the method leaves out: 1/6 - 3 γ² + 2 γ³ without its sign. */
const LEFT_OUT = 0.04044
/** Shortest step. Unit: s. */
const SHORTEST = 1e-9

/** Moves the suctions of a column through time in steps whose error, as a water content, stays below the tolerance in every layer. */
export function columnSolver(equations: ColumnEquations, tolerance: number) {
  const { nodes, volumes, net, rate, water, isHeld } = equations
  const solve = columnNewton(equations)
  const room = () => new Float64Array(nodes)
  const [suctions, stage, held, target] = [room(), room(), room(), room()]
  /** Net inflow at the begin of the step and at its first stage; rate at which the suctions change. */
  const [before, first, trend] = [room(), room(), room()]

  /** Changes the suctions given; conditions are the same throughout the duration. */
  return (state: Float64Array, duration: number, during: Conditions): Passed => {
    const passed: Passed = { entered: 0, drained: 0, taken: 0, imbalance: 0, steps: 0 }
    suctions.set(state)
    trend.fill(0)
    const [below, above] = equations.hold(suctions)
    passed.drained -= below
    passed.entered += above
    equations.evaluate(suctions, during, 0)
    let fastest = 0
    for (let i = 0; i < nodes; i++) {
      held[i] = water(suctions, i)
      before[i] = net[i]!
      fastest = Math.max(fastest, Math.abs(before[i]!) / volumes[i]!)
    }
    // At first no layer shall change by more than some tolerances.
    let dt = fastest > 0 ? Math.min(duration, (10 * tolerance) / fastest) : duration
    for (let left = duration; left > 0; ) {
      // A last crumb would cost as much as a step.
      if (left < dt * 1.000001) dt = left
      const { done, factor } = step(dt, during, passed)
      if (done) left = left === dt ? 0 : left - dt
      else if (dt < SHORTEST) throw stuck(passed.steps, left)
      dt *= factor
    }
    for (let i = 0; i < nodes; i++) if (!isHeld(i)) passed.imbalance += water(suctions, i) - held[i]!
    state.set(suctions)
    return passed
  }

  /** Tries one step, and says by how much the next should be longer or shorter. */
  function step(dt: number, during: Conditions, passed: Passed): { done: boolean; factor: number } {
    guess(suctions, STAGE * dt)
    if (!solve(stage, held, during, STAGE * dt)) return { done: false, factor: 0.25 }
    const { entered, drained, taken } = rate
    for (let i = 0; i < nodes; i++) {
      first[i] = net[i]!
      target[i] = held[i]! + dt * REST * net[i]!
      trend[i] = (stage[i]! - suctions[i]!) / (STAGE * dt)
    }
    guess(stage, REST * dt)
    if (!solve(stage, target, during, STAGE * dt)) return { done: false, factor: 0.25 }
    const off = leftOut(dt)
    const factor = off > 0 ? 0.9 * (tolerance / off) ** (1 / 3) : 5
    if (off > tolerance) return { done: false, factor: Math.min(Math.max(factor, 0.1), 0.7) }
    for (let i = 0; i < nodes; i++) {
      // What the flows brought, not what the suctions hold: the next step then sees the difference and mends it.
      held[i]! += dt * (REST * first[i]! + STAGE * net[i]!)
      before[i] = net[i]!
      trend[i] = (stage[i]! - suctions[i]!) / dt
    }
    suctions.set(stage)
    passed.entered += dt * (REST * entered + STAGE * rate.entered)
    passed.drained += dt * (REST * drained + STAGE * rate.drained)
    passed.taken += dt * (REST * taken + STAGE * rate.taken)
    passed.steps++
    return { done: true, factor: Math.min(Math.max(factor, 0.3), 5) }
  }

  /** The suctions of the next stage, if they go on as they went. */
  function guess(from: Float64Array, dt: number): void {
    for (let i = 0; i < nodes; i++) stage[i] = from[i]! + limited(dt * trend[i]!, from[i]!)
  }

  /** The largest error of the step, as a water content, from how the inflow of a layer bends. */
  function leftOut(dt: number): number {
    let most = 0
    for (let i = 0; i < nodes; i++) {
      const bend = (net[i]! - first[i]!) / REST - (first[i]! - before[i]!) / STAGE
      most = Math.max(most, (2 * LEFT_OUT * dt * Math.abs(bend)) / volumes[i]!)
    }
    return most
  }
}

function stuck(steps: number, left: number): ConvergenceError {
  return new ConvergenceError(
    'flow in the container',
    steps,
    left,
    'check the conductivity and its unit, or take another number of nodes',
  )
}
