import type { Conditions } from '../equations/equations.js'
import { keepRates, PER_REST, PER_STAGE, REST, STAGE } from '../equations/flow-rates.js'
import { comeCloser } from './come-closer.js'
import { firstStageAlone } from './first-stage-alone.js'
import { meanOfStages, meanOfThirdOrder } from './mean-rates.js'
import { moveAll } from './moved.js'
import type { ColumnNewton } from './newton.js'
import { pastOnset, shareToEnd, shareToOnset } from './onset.js'
import type { Passed } from './passed.js'
import { arePossible, canHold, goesAstray, passesSaturation } from './possible.js'
import { factorFor, growth } from './step-control.js'
import { dampCorrection, errorOfStep } from './step-correction.js'
import { failed, goOn, type OnStep, type StepOutcome } from './step-ends.js'
import type { StepWork } from './step-work.js'

/** Tries one step. */
export function tryStep(
  work: StepWork,
  solve: ColumnNewton['solve'],
  dt: number,
  during: Conditions,
  passed: Passed,
  onStep: OnStep,
): StepOutcome {
  const { equations, tolerance, control, suctions, stage, held, flows, from, target, contents, later, before, begun } =
    work
  const driest = during.sink?.h4 ?? Infinity
  const rate = work.trend[0]!
  const { behind } = control
  control.behind = 0
  comeCloser(work, dt)
  guess(work, suctions, STAGE * dt, driest)
  equations.fillFrom(contents, STAGE * dt)
  if (!solve(stage, from, during, STAGE * dt)) return failed(work)
  keepFirst(work, dt)
  guess(work, stage, REST * dt, driest)
  equations.fillFrom(later, STAGE * dt)
  if (!solve(stage, target, during, STAGE * dt)) return firstStageAlone(work, dt, passed, onStep)
  const error = errorOfStep(work, dt)
  if (error > tolerance) {
    const factor = Math.min(Math.max(factorFor(error, tolerance), 0.1), 0.7)
    return { done: 0, factor: shareToOnset(work, dt, rate, error) || factor }
  }
  improve(work, dt, during)
  const toEnd = shareToEnd(work, dt)
  if (toEnd > 0) return { done: 0, factor: toEnd }
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
function keepFirst(work: StepWork, dt: number) {
  const { equations, first, target, from, trend, stage, suctions, halfway, early, contents, later } = work
  const { net, terms, points } = equations
  const { waterContent } = points.at
  first.set(net)
  halfway.set(stage)
  const rest = dt * REST
  const perStage = PER_STAGE / dt
  for (let i = 0; i < first.length; i++) {
    target[i] = from[i]! + rest * net[i]!
    trend[i] = (stage[i]! - suctions[i]!) * perStage
  }
  const on = REST / STAGE
  for (let p = 0; p < later.length; p++) later[p] = contents[p]! + on * (waterContent[p]! - contents[p]!)
  keepRates(early, terms)
}

/**
 * How suctions change at the end of a step, by the parabola through begin, first stage and end; by the chord where the medium turns, at which
 * they bend.
 */
function keepTrend({ equations, trend, stage, halfway, suctions }: StepWork, dt: number): void {
  const curve = equations.points.history === undefined ? REST : -STAGE
  const perTime = 1 / dt
  for (let i = 0; i < trend.length; i++) {
    const early = (halfway[i]! - suctions[i]!) * PER_STAGE
    const late = (stage[i]! - halfway[i]!) * PER_REST
    trend[i] = (late + curve * (late - early)) * perTime
  }
}

/** The suctions of the next stage, if they go on as they went. */
function guess({ stage, trend, correction: { move } }: StepWork, from: Float64Array, dt: number, driest: number): void {
  for (let i = 0; i < move.length; i++) move[i] = dt * trend[i]!
  moveAll(from, move, 1, driest, stage)
}
