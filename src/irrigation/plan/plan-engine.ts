import { ADVICE } from '../../quantity/advice.js'
import type {
  DrainFraction,
  Duration,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../../quantity/generated/kinds.js'
import type { DayPlan } from './day-plan.js'
import { byTrigger } from './plan-choice.js'
import { compromisesOf } from './plan-compromises.js'
import { nightOf } from './plan-night.js'
import { type PlanRun, runPlan } from './plan-run.js'
import type { Planning, PlanProgress } from './planning.js'

/** The largest share of drain for which a single shot is sized: beyond it nearly all of its water is lost. */
const MAX_SHARE = 0.9

/** Where a plan stands before its first step. */
export function beginning<State>(planning: Planning<State>): PlanProgress<State> {
  const start = { steps: 0, applied: 0, drained: 0, taken: 0, surplus: 0, rewetting: true, light: 0 }
  return heldAt(planning, start, planning.waterContent)
}

/** The same moment with another water content; one that cannot be is moved to the nearest that can, for a prediction to be made. */
export function heldAt<State>(
  { flow, blocked, containerCapacity, minWaterContent, substrateVolume }: Planning<State>,
  progress: Omit<PlanProgress<State>, 'state'>,
  waterContent: number,
): PlanProgress<State> {
  const held = blocked ? Math.min(Math.max(waterContent, minWaterContent), containerCapacity) : waterContent
  return {
    ...progress,
    state: flow.startFrom(held as WaterContent),
    surplus: progress.surplus + Math.max(0, held - containerCapacity) * substrateVolume,
  }
}

/** Runs a plan to its end with a given share of drain of the single shots. */
export function runToEnd<State>(
  planning: Planning<State>,
  from: PlanProgress<State>,
  share: number,
  until = planning.demand.length,
): PlanRun<State> {
  return runPlan(planning, from, until, byTrigger(planning, share))
}

/** The plan that a run to the end makes, with the shots of the whole day, and what it misses. */
export function finishPlan<State>(
  planning: Planning<State>,
  run: PlanRun<State>,
  share: number,
  shots = run.shots,
): DayPlan {
  const { end } = run
  const drained = drainInAll(planning, end)
  const night = nightOf(planning, run, shots.at(-1)?.time ?? planning.start)
  const plan = {
    shots,
    time: Array.from(run.drain, (_, i) => planning.start + (i + 1) * planning.step),
    // Plain lists: a typed array would become an object in JSON.
    waterContent: Array.from(run.waterContent),
    drain: Array.from(run.drain),
    applied: end.applied as Volume,
    drained: drained as Volume,
    taken: end.taken as Volume,
    drainFraction: shareOf(end, drained) as DrainFraction,
    shotDrainFraction: share as DrainFraction,
    overnightDryDown: (night.peak - night.end) as WaterContentChange,
  }
  return { ...plan, findings: compromisesOf(planning, run, plan, night), caution: ADVICE }
}

/** The share of drain of the single shots that gives the wanted share over the day, or the nearest that can be had. */
export function shareFor<State>(planning: Planning<State>, from: PlanProgress<State>): number {
  const { drainFraction: wanted } = planning
  if (planning.blocked || planning.fullPoint < planning.containerCapacity) return Math.min(wanted, MAX_SHARE)
  // Until the first step that may water all shares give the same day.
  const dawn = runToEnd(planning, from, 0, Math.min(planning.demand.length, planning.firstStep)).end
  const dayShare = (share: number) => {
    const { end } = runToEnd(planning, dawn, share)
    return shareOf(end, drainInAll(planning, end))
  }
  let low = 0
  let high = MAX_SHARE
  if (dayShare(low) >= wanted) return low
  if (dayShare(high) <= wanted) return high
  // Bisection: the day's share rises with the shots', but in steps where a shot more or less is given.
  while (high - low > 1e-7) {
    const middle = (low + high) / 2
    if (dayShare(middle) < wanted) low = middle
    else high = middle
  }
  return high
}

function shareOf({ applied, surplus }: Pick<PlanProgress, 'applied' | 'surplus'>, drained: number): number {
  return applied > 0 ? Math.max(0, drained - surplus) / applied : 0
}

/** Drain with the water that is still on its way when the plan ends, found by letting it leave. */
function drainInAll<State>({ flow, drainLag }: Planning<State>, end: PlanProgress<State>): number {
  let { state, drained } = end
  const days = Math.ceil((40 * drainLag) / 86400)
  for (let day = 0; day < days; day++) {
    const [next, after] = flow.step(state, { duration: 86400 as Duration, applied: 0 as Volume, demand: 0 as Volume })
    state = next
    drained += after.drained
  }
  return drained
}
