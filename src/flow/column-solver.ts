import { ConvergenceError } from '../quantity/errors.js'
import type { ColumnEquations, Conditions } from './column-equations.js'
import { columnNewton, ENOUGH, moved } from './column-newton.js'

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
/** Steps after which a time is given up; a day of many shots takes some hundred. */
const MOST_STEPS = 10000

/** Moves the suctions of a column through time in steps whose error, as a water content, stays below the tolerance in every layer. */
export function columnSolver(equations: ColumnEquations, tolerance: number) {
  const { nodes, volumes, net, rate, water, isHeld } = equations
  const solve = columnNewton(equations)
  const room = () => new Float64Array(nodes)
  const [suctions, stage, held, target] = [room(), room(), room(), room()]
  /** Net inflow at the begin of the step and at its first stage; suctions at that stage; rate at which suctions change. */
  const [before, first, halfway, trend] = [room(), room(), room(), room()]

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
      left = left === done ? 0 : left - done
      if ((done === 0 && dt < SHORTEST) || passed.steps > MOST_STEPS) throw stuck(passed.steps, left)
      dt *= factor
    }
    for (let i = 0; i < nodes; i++) if (!isHeld(i)) passed.imbalance += water(suctions, i) - held[i]!
    state.set(suctions)
    return passed
  }

  /** Tries one step, and says how much of it was done and by how much the next should be longer or shorter. */
  function step(dt: number, during: Conditions, passed: Passed): { done: number; factor: number } {
    const driest = during.sink?.driest ?? Infinity
    guess(suctions, STAGE * dt, driest)
    if (!solve(stage, held, during, STAGE * dt)) return { done: 0, factor: 0.25 }
    const early = { ...rate }
    for (let i = 0; i < nodes; i++) {
      first[i] = net[i]!
      target[i] = held[i]! + dt * REST * net[i]!
      trend[i] = (stage[i]! - suctions[i]!) / (STAGE * dt)
      halfway[i] = stage[i]!
    }
    guess(stage, REST * dt, driest)
    if (!solve(stage, target, during, STAGE * dt)) return firstStageAlone(dt, during, early, passed)
    const off = leftOut(dt)
    const factor = off > 0 ? 0.9 * (tolerance / off) ** (1 / 3) : 5
    if (off > tolerance) return { done: 0, factor: Math.min(Math.max(factor, 0.1), 0.7) }
    for (let i = 0; i < nodes; i++) {
      held[i]! += dt * (REST * first[i]! + STAGE * net[i]!)
      before[i] = net[i]!
      trend[i] = (stage[i]! - suctions[i]!) / dt
    }
    suctions.set(stage)
    count(passed, early, dt * REST)
    count(passed, rate, dt * STAGE)
    settle(passed)
    return { done: dt, factor: Math.min(Math.max(factor, 0.3), 5) }
  }

  /**
   * The first stage as a step of its own, an implicit Euler step. Where a layer runs out of water the second stage would ask it for more
   * than it has, however short the step.
   */
  function firstStageAlone(dt: number, during: Conditions, early: ColumnEquations['rate'], passed: Passed) {
    let off = 0
    for (let i = 0; i < nodes; i++)
      off = Math.max(off, (STAGE * dt * Math.abs(first[i]! - before[i]!)) / (2 * volumes[i]!))
    if (off > tolerance) return { done: 0, factor: 0.25 }
    equations.evaluate(halfway, during, 0)
    for (let i = 0; i < nodes; i++) {
      held[i]! += STAGE * dt * first[i]!
      before[i] = first[i]!
    }
    suctions.set(halfway)
    count(passed, early, STAGE * dt)
    settle(passed)
    const factor = off > 0 ? 0.9 * (tolerance / off) ** (1 / 2) : 4
    return { done: STAGE * dt, factor: Math.min(Math.max(factor, 0.5), 4) }
  }

  /**
   * Layers hold what the flows brought, not what their suctions say: the next step then sees the difference and mends it. Only a
   * difference that an iteration could not overcome is written off.
   */
  function settle(passed: Passed): void {
    passed.steps++
    for (let i = 0; i < nodes; i++) {
      const off = water(suctions, i) - held[i]!
      if (isHeld(i) || Math.abs(off) <= 2 * ENOUGH * volumes[i]!) continue
      held[i]! += off
      passed.imbalance += off
    }
  }

  /** The suctions of the next stage, if they go on as they went. */
  function guess(from: Float64Array, dt: number, driest: number): void {
    for (let i = 0; i < nodes; i++) stage[i] = moved(from[i]!, dt * trend[i]!, 1, driest)
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

function count(passed: Passed, rate: ColumnEquations['rate'], dt: number): void {
  passed.entered += dt * rate.entered
  passed.drained += dt * rate.drained
  passed.taken += dt * rate.taken
}

function stuck(steps: number, left: number): ConvergenceError {
  return new ConvergenceError(
    'flow in the container',
    steps,
    left,
    'check the conductivity and its unit; roots may have emptied a coarse medium, into which water then hardly finds its way',
  )
}
