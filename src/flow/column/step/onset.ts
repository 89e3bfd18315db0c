import { REST, STAGE } from '../equations/flow-rates.js'
import { DRAIN } from './step-control.js'
import type { StepWork } from './step-work.js'

/** Share of the tolerance at which the step behind an onset aims; errors there go with the power 3/2 of the length. */
const BEHIND = 0.6
/** By how much a step goes beyond the onset that is reckoned, so that the next begins behind it. */
const BEYOND = 1.01
/** Shares of a step between which it is worth while to try it again up to the onset. */
const SOONEST = 0.02
const LATEST = 0.95
/** Share of what drains in a step by which it errs because the drain ends within it, and of the step at which the end is late enough. */
const ENDING = 0.1
const LATE = 0.85

/**
 * How far the onset of the drain is, as a share of a step that it made too inexact, or zero where drain begins elsewhere. How long the step
 * behind it may be is kept: to come closer by halves would cost more steps than the drain itself. Takes the rate at which the suction at
 * the bottom changed when the step began.
 */
export function shareToOnset(work: StepWork, dt: number, rate: number, error: number): number {
  const { equations, suctions, halfway, stage, tolerance } = work
  const begin = suctions[0]!
  if (equations.heldBase || !(begin > 0 && stage[0]! <= 0)) return 0
  const early = STAGE * dt
  const middle = halfway[0]!
  // Where the film of a drain stands already at the first stage, only the rate tells more.
  const slowest = begin / (REST * early)
  const onset = middle > 0 ? whenEmpty(begin, rate, middle, early) : Math.min(begin / Math.max(-rate, slowest), early)
  const share = (BEYOND * onset) / dt
  if (!(share < LATEST)) return 0
  work.control.behind = (dt - onset) * ((BEHIND * tolerance) / error) ** (2 / 3)
  return Math.max(share, SOONEST)
}

/**
 * How far the end of the drain is, as a share of a step that it makes too inexact, or zero: by the straight line through the drain at the begin
 * and at the first stage, which comes to nothing too soon rather than too late.
 */
export function shareToEnd(
  { equations, suctions, stage, begun, early, flows, tolerance }: StepWork,
  dt: number,
): number {
  if (equations.heldBase || equations.points.history !== undefined || suctions[0]! > 0 || stage[0]! <= 0) return 0
  if (ENDING * DRAIN * dt * flows.drained <= tolerance * equations.grid.volume) return 0
  const fall = begun.drained - early.drained
  if (fall <= 0) return 0
  // Where nothing drained at the first stage any more, it ended before.
  const share = early.drained > 0 ? (STAGE * begun.drained) / fall : STAGE / 2
  return share < LATE ? share : 0
}

/** How long the step may be behind one towards an onset, where it stands: what is left of the way, and the step behind it. */
export function pastOnset({ suctions, trend, control }: StepWork, behind: number): number {
  const left = suctions[0]!
  if (left <= 0) return behind
  control.behind = behind
  return trend[0]! < 0 ? (BEYOND * left) / -trend[0]! + behind : behind
}

/** When a suction that falls is zero, by the parabola with its rate at the begin and its value at a later time. */
function whenEmpty(begin: number, rate: number, later: number, time: number): number {
  const bend = (later - begin - rate * time) / (time * time)
  const root = rate * rate - 4 * bend * begin
  if (rate >= 0 || root < 0) return (time * begin) / Math.max(begin - later, 0)
  // Written so that a bend of nothing is no division by it.
  return (2 * begin) / (-rate + Math.sqrt(root))
}
