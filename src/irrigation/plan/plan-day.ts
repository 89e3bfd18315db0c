import type { ContainerFlow } from '../../flow/container-flow.js'
import { waterStore } from '../../flow/water-store.js'
import type { DrainFraction } from '../../quantity/generated/share.js'
import type { Volume } from '../../quantity/generated/volume.js'
import type { WaterContentChange } from '../../quantity/generated/water-content.js'
import { byTrigger } from './plan-choice.js'
import { compromisesOf } from './plan-compromises.js'
import { checkPlanRequest } from './plan-limits.js'
import type { DayPlan, DayPlanRequest, Planning, PlanProgress } from './plan-request.js'
import { type PlanRun, runPlan } from './plan-run.js'

/**
 * A plan of shots for a day, with the water content and the drain that it should give.
 *
 * Shots are given between the first and the last allowed moment, when the trigger asks for one: the water content at the refill
 * point, a sum of light, or set times. Each lifts the container to its full point, with as much over as must drain for the
 * wanted share of the day's water; morning shots into a dry container drain less, so that later ones drain more. Watering ends
 * early enough for the wanted dry-down overnight. What cannot be had is listed with the amount by which it is missed.
 *
 * A plan is advice. Before it opens a valve, the watering it asks for must pass limits that do not depend on it: a longest run
 * time, a most per day, a leak check, and a defined state when readings are missing.
 *
 * @procedure Runs a water balance of the container step by step and gives a shot at each step where the trigger asks for one and
 * every limit allows it; the share of drain of the single shots is found by bisection so that the drain of the whole day is the wanted share.
 * @param request - Container, demand, limits and wishes.
 * @param flow - Model of the container; by default the storage model `waterStore`.
 * @returns The shots with their reasons, the prediction, and the compromises.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other.
 * @validity As good as its demand course and its container model; replan when readings differ from the prediction.
 * @source Water balance of a container; common practice, no source, for the order of rewet, maintenance and dry-down
 * @example
 * ```ts
 * const plan = planDay({
 *   start: instant(1779148800), step: minutes(10), demand: new Array(144).fill(0.02),
 *   container: {
 *     substrateVolume: litres(14), containerCapacity: waterContent(0.62), minContent: waterContent(0.15),
 *     bypass: fraction(0.1), drainLag: minutes(10),
 *   },
 *   content: waterContent(0.6), refillPoint: waterContent(0.59), fullPoint: waterContent(0.62),
 *   drainFraction: percent(20), firstShot: instant(1779148800 + 7 * 3600), lastShot: instant(1779148800 + 17 * 3600),
 *   emitters: 2, emitterFlow: litresPerHour(2), lineFill: seconds(8), minRunTime: minutes(2), maxRunTime: minutes(15),
 *   betweenShots: minutes(20), maxPerDay: litres(8), trigger: { by: 'level' },
 * })
 * plan.shots.length // => 5
 * plan.drainFraction // => 0.20
 * plan.compromises // => []
 * ```
 */
export function planDay(request: DayPlanRequest): DayPlan
export function planDay<State>(request: DayPlanRequest, flow: ContainerFlow<State>): DayPlan
export function planDay(
  request: DayPlanRequest,
  flow: ContainerFlow<unknown> = waterStore(request.container) as ContainerFlow<unknown>,
): DayPlan {
  const planning = checkPlanRequest(request, flow)
  const from = beginning(planning)
  return finishPlan(planning, from, shareFor(planning, from))
}

/** Where a plan stands before its first step. */
export function beginning<State>({ request, flow }: Planning<State>): PlanProgress<State> {
  return {
    steps: 0,
    state: flow.start(request.content),
    last: undefined,
    applied: 0,
    drained: 0,
    taken: 0,
    rewetting: true,
    light: 0,
  }
}

/** Runs a plan to its end with a given share of drain of the single shots, and says what it misses. */
export function finishPlan<State>(
  planning: Planning<State>,
  from: PlanProgress<State>,
  share: number,
  before?: PlanRun<State>,
): DayPlan {
  const { request } = planning
  const n = request.demand.length
  const run = runPlan(planning, from, n, byTrigger(planning, share))
  for (let i = 0; i < from.steps; i++) {
    run.content[i] = before?.content[i] as number
    run.drain[i] = before?.drain[i] as number
  }
  const shots = [...(before?.shots ?? []), ...run.shots]
  const drained = drainInAll(planning, run.end)
  return {
    shots,
    time: Float64Array.from({ length: n }, (_, i) => request.start + (i + 1) * request.step),
    content: run.content,
    drain: run.drain,
    applied: run.end.applied as Volume,
    drained: drained as Volume,
    taken: run.end.taken as Volume,
    drainFraction: (run.end.applied > 0 ? drained / run.end.applied : 0) as DrainFraction,
    shotDrainFraction: share as DrainFraction,
    overnightDryDown: dryDown(request, run.content, shots.at(-1)?.time) as WaterContentChange,
    compromises: compromisesOf(planning, run, shots, drained),
  }
}

/** Drain with the water that is still on its way when the plan ends, found by letting it leave. */
function drainInAll<State>({ request, flow }: Planning<State>, end: PlanProgress<State>): number {
  let { state, drained } = end
  const days = Math.ceil((40 * request.container.drainLag) / 86400)
  for (let day = 0; day < days; day++) {
    const after = flow.step(state, { duration: 86400 as never, applied: 0 as Volume, demand: 0 as Volume })
    state = after.state
    drained += after.drained
  }
  return drained
}

/** The share of drain of the single shots that gives the wanted share over the day, or the nearest that can be had. */
export function shareFor<State>(planning: Planning<State>, from: PlanProgress<State>): number {
  const { request } = planning
  const wanted = request.drainFraction
  const dayShare = (share: number) => {
    const { end } = runPlan(planning, from, request.demand.length, byTrigger(planning, share))
    return end.applied > 0 ? drainInAll(planning, end) / end.applied : 0
  }
  if (request.fullPoint < request.container.containerCapacity) return wanted
  let low = 0
  let high = 0.9
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

function dryDown(request: DayPlanRequest, content: Float64Array, last: number | undefined): number {
  const from = last === undefined ? 0 : Math.round((last - request.start) / request.step)
  let peak = -Infinity
  for (let i = from; i < content.length; i++) peak = Math.max(peak, content[i] as number)
  return peak - (content[content.length - 1] as number)
}
