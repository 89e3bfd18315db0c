import { comeCloser, countApart } from './come-closer.js'
import type { Conditions } from './equations.js'
import { addFlows, keepRates, REST, STAGE } from './flow-rates.js'
import { follow } from './history.js'
import { meanOfStages, meanOfThirdOrder } from './mean-rates.js'
import { moved } from './moved.js'
import type { ColumnNewton } from './newton.js'
import { pastOnset, shareToOnset } from './onset.js'
import { addPassed, type Passed, type StepFlows } from './passed.js'
import { arePossible, canHold, goesAstray, passesSaturation } from './possible.js'
import { factorFor, growth } from './step-control.js'
import { dampCorrection, errorOfStep } from './step-correction.js'
import type { StepWork } from './step-work.js'

/** Share of the mending that is left behind a step that found no solution. */
const LESS = 0.3

/** What a step tells: how much of it was done, and by how much the next should be longer or shorter. */
interface StepOutcome {
  readonly done: number
  readonly factor: number
}

/** Who is told of the flows of a step. */
export type OnStep = ((flows: StepFlows) => void) | undefined

/** Tries one step. */
export function tryStep(
  work: StepWork,
  solve: ColumnNewton['solve'],
  dt: number,
  during: Conditions,
  passed: Passed,
  onStep: OnStep,
): StepOutcome {
  const { equations, tolerance, control, suctions, stage, held, flows, from, target, before, begun } = work
  const driest = during.sink?.h4 ?? Infinity
  const rate = work.trend[0]!
  const { behind } = control
  control.behind = 0
  comeCloser(work, dt)
  guess(work, suctions, STAGE * dt, driest)
  if (!solve(stage, from, during, STAGE * dt)) return failed(work)
  keepFirst(work, dt)
  guess(work, stage, REST * dt, driest)
  if (!solve(stage, target, during, STAGE * dt)) return firstStageAlone(work, dt, passed, onStep)
  const error = errorOfStep(work, dt)
  if (error > tolerance) {
    const factor = Math.min(Math.max(factorFor(error, tolerance), 0.1), 0.7)
    return { done: 0, factor: shareToOnset(work, dt, rate, error) || factor }
  }
  improve(work, dt, during)
  if (goesAstray(equations, held, flows, dt, suctions, stage)) return failed(work)
  keepTrend(work, dt)
  goOn(work, stage, dt, passed, onStep)
  before.set(equations.net)
  keepRates(begun, equations.terms)
  const factor = growth(work, dt, error)
  return { done: dt, factor: behind > 0 ? pastOnset(work, behind) / dt : Math.min(Math.max(factor, 0.3), 5) }
}

/** Adds what the stages leave out, unless flows or cells could not do it. */
function improve(work: StepWork, dt: number, during: Conditions): void {
  const { equations, correction, flows, held, stage } = work
  const { again } = correction
  // Where media drain and wet on two curves a small move back would be a turn.
  let better = equations.points.history === undefined
  if (better) {
    dampCorrection(work)
    meanOfThirdOrder(work)
    better =
      !passesSaturation(stage, again) && arePossible(equations, flows, during) && canHold(equations, held, flows, dt)
  }
  if (!better) {
    meanOfStages(work)
    return
  }
  equations.carryOn(again, during)
  for (let i = 0; i < stage.length; i++) stage[i]! += again[i]!
}

/** Keeps what the first stage found, and how much water the second is to find. */
function keepFirst({ equations, first, target, from, trend, stage, suctions, halfway, early }: StepWork, dt: number) {
  const { net, terms } = equations
  first.set(net)
  halfway.set(stage)
  for (let i = 0; i < first.length; i++) {
    target[i] = from[i]! + dt * REST * net[i]!
    trend[i] = (stage[i]! - suctions[i]!) / (STAGE * dt)
  }
  keepRates(early, terms)
}

/**
 * How suctions change at the end of a step, by the parabola through begin, first stage and end; by the chord where the medium turns, at which
 * they bend.
 */
function keepTrend({ equations, trend, stage, halfway, suctions }: StepWork, dt: number): void {
  const curve = equations.points.history === undefined ? REST : -STAGE
  for (let i = 0; i < trend.length; i++) {
    const early = (halfway[i]! - suctions[i]!) / STAGE
    const late = (stage[i]! - halfway[i]!) / REST
    trend[i] = (late + curve * (late - early)) / dt
  }
}

/** The suctions of the next stage, if they go on as they went. */
function guess({ stage, trend }: StepWork, from: Float64Array, dt: number, driest: number): void {
  for (let i = 0; i < stage.length; i++) stage[i] = moved(from[i]!, dt * trend[i]!, 1, driest)
}

/** Takes over suctions and mean flows of a step, and adds up what passed. */
function goOn(work: StepWork, to: Float64Array, dt: number, passed: Passed, onStep: OnStep): void {
  const { equations, suctions, apart, closer, flows, held } = work
  const { history } = equations.points
  work.mending = Math.min(1, work.mending / LESS)
  suctions.set(to)
  apart.set(closer)
  if (history !== undefined) follow(history, equations.grid, suctions)
  flows.dt = dt
  flows.before.set(held)
  addFlows(held, flows, dt)
  addPassed(passed, flows)
  if (onStep === undefined) return
  flows.after.set(held)
  onStep(flows)
}

/** A step that found no solution: what suctions say beyond what cells hold is counted anew, and the next is shorter. */
function failed(work: StepWork): StepOutcome {
  work.mending *= LESS
  work.equations.store(work.suctions)
  countApart(work)
  return { done: 0, factor: 0.25 }
}

/**
 * The first stage as a step of its own, an implicit Euler step. Where a cell runs out of water the second stage would ask it for more
 * than it has, however short the step.
 */
function firstStageAlone(work: StepWork, dt: number, passed: Passed, onStep: OnStep): StepOutcome {
  const { equations, tolerance, suctions, held, first, before, halfway, flows, early, begun, firstFree, endFree } = work
  const { volumes } = equations.grid
  let off = 0
  for (let i = firstFree; i < endFree; i++)
    off = Math.max(off, (STAGE * dt * Math.abs(first[i]! - before[i]!)) / (2 * volumes[i]!))
  if (off > tolerance) return failed(work)
  keepRates(flows, early)
  if (goesAstray(equations, held, flows, STAGE * dt, suctions, halfway)) return failed(work)
  goOn(work, halfway, STAGE * dt, passed, onStep)
  before.set(first)
  keepRates(begun, early)
  const factor = off > 0 ? 0.9 * (tolerance / off) ** (1 / 2) : 4
  return { done: STAGE * dt, factor: Math.min(Math.max(factor, 0.5), 4) }
}
