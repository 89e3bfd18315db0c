import type { ContainerFlow } from '../../flow/container-flow.js'
import { DRAIN_FRACTION, INSTANT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { onlyNames } from '../../quantity/one-of.js'
import type { DayPlan } from './day-plan.js'
import { type DaySoFar, givenOf } from './day-so-far.js'
import { finishPlan, runToEnd, shareFor } from './plan-engine.js'
import { checkPlanRequest } from './plan-limits.js'
import { pastOf } from './plan-past.js'
import type { DayPlanRequest } from './plan-request.js'

/**
 * The rest of a day, planned anew from what has happened so far.
 *
 * When everything went as planned, the rest of the plan stays as it was, shot by shot. Otherwise the share of drain of the coming
 * shots is found again, so that the whole day reaches the wanted share where it still can. Every shot that was given counts, the one
 * that runs just now among them: none begins before it has ended and the valve has rested.
 *
 * A measured water content is believed only where the water balance could have led to it: between what twice the demand without any
 * water would leave and what all water without any use would. One below is doubted and not used; one far above the capacity is a
 * `danger`, after which nothing is planned.
 *
 * @procedure Takes the container through the past with the shots that were given, sets it to the measured water content if there
 * is one, and runs the plan from there.
 * @param request - The request of the plan, with its demand corrected if need be.
 * @param plan - The plan that was followed so far, made by `planDay`.
 * @param flow - Model of the container; by default the storage model `waterStore`.
 * @returns A plan of the whole day: the past as it was, the rest as it should be.
 * @throws `InputError` when the moment or a shot lies outside the plan, a shot lies after the moment, or the plan is of another day; what `planDay` throws.
 * @source definition: water balance of a container
 * @example
 * const request = {
 *   start: instant(1779148800), step: minutes(10), demand: new Array(144).fill(0.02),
 *   container: {
 *     substrateVolume: litres(14), containerCapacity: waterContent(0.62), minWaterContent: waterContent(0.15),
 *     bypass: fraction(0.1), drainLag: minutes(10),
 *   },
 *   waterContent: waterContent(0.6), refillPoint: waterContent(0.59), fullPoint: waterContent(0.62),
 *   drainFraction: percent(20), firstShot: instant(1779148800 + 7 * 3600), lastShot: instant(1779148800 + 17 * 3600),
 *   emitters: 2, emitterFlow: litresPerHour(2), lineFill: seconds(8), minRunTime: minutes(2), maxRunTime: minutes(15),
 *   minRest: minutes(15), maxPerDay: litres(8), trigger: { by: 'level' },
 * }
 * const plan = planDay(request)
 * const again = replanDay(request, plan, { now: instant(1779148800 + 12 * 3600), given: plan.shots.slice(0, 3) })
 * again.shots.length === plan.shots.length // => true
 */
export function replanDay<State>(
  request: DayPlanRequest,
  plan: DayPlan,
  soFar: DaySoFar,
  flow?: ContainerFlow<State>,
): DayPlan
export function replanDay(
  request: DayPlanRequest,
  plan: DayPlan,
  soFar: DaySoFar,
  flow?: ContainerFlow<unknown>,
): DayPlan {
  requireObject(request, 'request')
  requireObject(plan, 'plan')
  onlyNames(soFar, { now: 1, given: 1, waterContent: 1 }, 'soFar')
  const planning = checkPlanRequest(request, flow)
  const now = momentOf(request, plan, soFar)
  const past = pastOf(planning, givenOf(request, soFar.given, now), now, soFar.waterContent)
  const { planning: believed } = past
  const rest = (share: number) => {
    const run = runToEnd(believed, past.end, share)
    for (const series of ['waterContent', 'drain'] as const) run[series].set(past[series].subarray(0, past.end.steps))
    return finishPlan(believed, run, share, [...past.shots, ...run.shots])
  }
  const asPlanned = rest(plan.shotDrainFraction)
  // A new search would only move the last digits of an undisturbed plan.
  if (Math.abs(asPlanned.drainFraction - plan.drainFraction) < 1e-9) return asPlanned
  return rest(shareFor(believed, past.end))
}

/** The moment from which to plan anew. */
function momentOf(request: DayPlanRequest, plan: DayPlan, { now }: DaySoFar): number {
  const { start, step, demand } = request
  numberIn(now, INSTANT, 'soFar.now')
  if (!(now >= start && now <= start + step * demand.length))
    throw new InputError('soFar.now', 'lies outside the plan', 'give a moment between its beginning and its end')
  requireList(plan.time, 'plan.time')
  const first = plan.time[0]
  if (first !== undefined && Math.abs(first - start - step) > 1e-6)
    throw new InputError('plan', 'begins at another time than the request', 'give the plan that was made for this day')
  numberIn(plan.shotDrainFraction, DRAIN_FRACTION, 'shotDrainFraction')
  return now
}
