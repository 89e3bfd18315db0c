import type { ContainerFlow } from '../../flow/container-flow.js'
import type { DayPlan } from './day-plan.js'
import { beginning, finishPlan, runToEnd, shareFor } from './plan-engine.js'
import { checkPlanRequest } from './plan-limits.js'
import type { DayPlanRequest } from './plan-request.js'

/**
 * A plan of shots for a day, with the water content and the drain that it should give.
 *
 * Shots are given between the first and the last allowed moment, when the trigger asks for one: the water content at the refill
 * point, a sum of light, or set times. Each lifts the container to its full point, with as much over as must drain for the
 * wanted share of the day's water; morning shots into a dry container drain less, so that later ones drain more. No opening begins
 * before the last one has ended and the valve has rested; what does not fit into one shot waits for the next. Watering ends early
 * enough for the wanted dry-down until the first shot of the next day. What cannot be had is listed with the amount by which it is missed.
 *
 * A water content that no living plant's container can have, far above its capacity or below what plants can use, is a `danger`, and
 * nothing is planned on it: look at the probe and the plants.
 *
 * A plan is advice. Before it opens a valve, the watering it asks for must pass limits that do not depend on it: a maximum run
 * time, a daily maximum, a leak check, and a defined state when readings are missing.
 *
 * @procedure Runs a water balance of the container step by step and gives a shot at each step where the trigger asks for one and
 * every limit allows it; the share of drain of the single shots is found by bisection so that the drain of the whole day is the wanted share.
 * @param request - Container, demand, limits and wishes.
 * @param flow - Model of the container; by default the storage model `waterStore`.
 * @returns The shots with their reasons, the prediction, and what is to be known of them.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other or an unknown trigger.
 * @validity As good as its demand course and its container model; replan when readings differ from the prediction.
 * @source definition: water balance of a container; common practice, no source, for the order of rewet, maintenance and dry-down
 * @example
 * const plan = planDay({
 *   start: instant(1779148800), step: minutes(10), demand: new Array(144).fill(0.02),
 *   container: {
 *     substrateVolume: litres(14), containerCapacity: waterContent(0.62), minWaterContent: waterContent(0.15),
 *     bypass: fraction(0.1), drainLag: minutes(10),
 *   },
 *   waterContent: waterContent(0.6), refillPoint: waterContent(0.59), fullPoint: waterContent(0.62),
 *   drainFraction: percent(20), firstShot: instant(1779148800 + 7 * 3600), lastShot: instant(1779148800 + 17 * 3600),
 *   emitters: 2, emitterFlow: litresPerHour(2), lineFill: seconds(8), minRunTime: minutes(2), maxRunTime: minutes(15),
 *   minRest: minutes(15), maxPerDay: litres(8), trigger: { by: 'level' },
 * })
 * plan.shots.length // => 5
 * plan.drainFraction // => 0.20
 * plan.findings // => []
 */
export function planDay<State>(request: DayPlanRequest, flow?: ContainerFlow<State>): DayPlan
export function planDay(request: DayPlanRequest, flow?: ContainerFlow<unknown>): DayPlan {
  const planning = checkPlanRequest(request, flow)
  const from = beginning(planning)
  const share = shareFor(planning, from)
  return finishPlan(planning, runToEnd(planning, from, share), share)
}
