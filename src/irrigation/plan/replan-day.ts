import type { ContainerFlow } from '../../flow/container-flow.js'
import { waterStore } from '../../flow/water-store.js'
import type { Instant } from '../../quantity/calendar.js'
import type { Domain } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import type { Volume } from '../../quantity/generated/volume.js'
import type { WaterContent } from '../../quantity/generated/water-content.js'
import { numberIn } from '../../quantity/guard.js'
import { byRecord } from './plan-choice.js'
import { beginning, finishPlan, shareFor } from './plan-day.js'
import { checkPlanRequest } from './plan-limits.js'
import type { DayPlan, DayPlanRequest } from './plan-request.js'
import { runPlan } from './plan-run.js'

const CONTENT: Domain = {
  quantity: 'measured water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give volume of water per volume of medium, or leave it out',
}

/** What has happened since a plan began. */
export interface DaySoFar {
  /** The moment from which to plan anew; it is moved to the beginning of a step. Unit: s. Range: any. */
  readonly now: Instant
  /** The shots that were really given. */
  readonly given: readonly { readonly time: Instant; readonly volume: Volume }[]
  /** Water content that is measured now, where the prediction should not be trusted. Unit: m³/m³. Range: [0, 1]. */
  readonly content?: WaterContent
}

/**
 * The rest of a day, planned anew from what has happened so far.
 *
 * When everything went as planned, the rest of the plan stays as it was, shot by shot. Otherwise the share of drain of the coming
 * shots is found again, so that the whole day reaches the wanted share where it still can.
 *
 * @procedure Takes the container through the past with the shots that were given, sets it to the measured water content if there
 * is one, and runs the plan from there.
 * @param request - The request of the plan, with its demand corrected if need be.
 * @param plan - The plan that was followed so far, made by `planDay`.
 * @param soFar - What really happened.
 * @param flow - Model of the container; by default the storage model `waterStore`.
 * @returns A plan of the whole day: the past as it was, the rest as it should be.
 * @throws `InputError` when the moment lies outside the plan; what `planDay` throws.
 * @source Water balance of a container
 * @example
 * ```ts
 * const request = {
 *   start: instant(1779148800), step: minutes(10), demand: new Array(144).fill(0.02),
 *   container: {
 *     substrateVolume: litres(14), containerCapacity: waterContent(0.62), minContent: waterContent(0.15),
 *     bypass: fraction(0.1), drainLag: minutes(10),
 *   },
 *   content: waterContent(0.6), refillPoint: waterContent(0.59), fullPoint: waterContent(0.62),
 *   drainFraction: percent(20), firstShot: instant(1779148800 + 7 * 3600), lastShot: instant(1779148800 + 17 * 3600),
 *   emitters: 2, emitterFlow: litresPerHour(2), lineFill: seconds(8), minRunTime: minutes(2), maxRunTime: minutes(15),
 *   betweenShots: minutes(20), maxPerDay: litres(8), trigger: { by: 'level' },
 * }
 * const plan = planDay(request)
 * const again = replanDay(request, plan, { now: instant(1779148800 + 12 * 3600), given: plan.shots.slice(0, 3) })
 * again.shots.length === plan.shots.length // => true
 * ```
 */
export function replanDay(request: DayPlanRequest, plan: DayPlan, soFar: DaySoFar): DayPlan
export function replanDay<State>(
  request: DayPlanRequest,
  plan: DayPlan,
  soFar: DaySoFar,
  flow: ContainerFlow<State>,
): DayPlan
export function replanDay(
  request: DayPlanRequest,
  plan: DayPlan,
  soFar: DaySoFar,
  flow: ContainerFlow<unknown> = waterStore(request.container) as ContainerFlow<unknown>,
): DayPlan {
  const planning = checkPlanRequest(request, flow)
  const done = Math.round((soFar.now - request.start) / request.step)
  if (!(done >= 0 && done <= request.demand.length))
    throw new InputError('soFar.now', 'lies outside the plan', 'give a moment between its beginning and its end')
  const past = runPlan(planning, beginning(planning), done, byRecord(soFar.given, request.step))
  const now =
    soFar.content === undefined
      ? past.end
      : { ...past.end, state: flow.start(numberIn(soFar.content, CONTENT, 'content') as WaterContent) }
  const asPlanned = finishPlan(planning, now, plan.shotDrainFraction, past)
  // A new search would only move the last digits of an undisturbed plan.
  if (Math.abs(asPlanned.drainFraction - plan.drainFraction) < 1e-9) return asPlanned
  return finishPlan(planning, now, shareFor(planning, now), past)
}
