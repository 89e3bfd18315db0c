import type { ContainerFlow } from '../../flow/container-flow.js'
import { type WaterStore, waterStore } from '../../flow/water-store.js'
import {
  DRAIN_FRACTION,
  EMITTERS,
  INSTANT,
  MAX_RUN_TIME,
  VALVE_TIME,
  WATER_CONTENT,
  WATER_GIVEN,
  WATER_USE,
} from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { isObject, numberIn, requireObject } from '../../quantity/guard.js'
import { inOrder } from '../../quantity/in-order.js'
import { EMITTER_FLOW, PLAN_STEP, SHOT, WATER_CONTENT_CHANGE } from '../domains.js'
import { doubtsOf } from './plan-doubts.js'
import type { DayPlanRequest } from './plan-request.js'
import { checkTrigger, dueSteps, stepOf } from './plan-trigger.js'
import { DROP, demandAt, type Planning } from './planning.js'

/** The domain of each number of a request. */
export const PLAN_DOMAINS = {
  start: INSTANT,
  firstShot: INSTANT,
  lastShot: INSTANT,
  step: PLAN_STEP,
  waterContent: WATER_CONTENT,
  refillPoint: WATER_CONTENT,
  fullPoint: WATER_CONTENT,
  drainFraction: DRAIN_FRACTION,
  overnightDryDown: WATER_CONTENT_CHANGE,
  emitters: EMITTERS,
  emitterFlow: EMITTER_FLOW,
  lineFill: VALVE_TIME,
  minRunTime: VALVE_TIME,
  maxRunTime: MAX_RUN_TIME,
  minRest: VALVE_TIME,
  maxPerShot: SHOT,
  maxPerDay: WATER_GIVEN,
} as const
/** What must lie below what, and by how much it may pass it: where the two may be equal, a little. */
const ORDER = [
  ['minWaterContent', 'refillPoint', 0],
  ['refillPoint', 'fullPoint', 0],
  ['fullPoint', 'containerCapacity', 1e-9],
  ['lineFill', 'maxRunTime', 0],
  ['minRunTime', 'maxRunTime', 1e-9],
  ['firstShot', 'lastShot', 1e-3],
] as const

/** Checks a request and works out what stays the same through the plan. */
export function checkPlanRequest(request: DayPlanRequest, flow?: ContainerFlow<unknown>): Planning<unknown> {
  // A document of a request carries its version, and what else was kept with it.
  requireObject(request, 'request')
  requireObject(request.container, 'container')
  const model = flow ?? (waterStore(request.container) as ContainerFlow<unknown>)
  const allDemand = checkNumbers(request)
  checkTrigger(request)
  const all = { ...request.container, ...request }
  for (const [lower, upper, slack] of ORDER) inOrder(lower, all[lower], upper, all[upper], slack)
  const volumeIn = (seconds: number) =>
    (Math.max(0, seconds - request.lineFill) / 3600) * request.emitters * request.emitterFlow
  const minVolume = volumeIn(request.minRunTime)
  const maxPerShot = request.maxPerShot ?? Infinity
  inOrder('minRunTime', minVolume, 'maxPerShot', maxPerShot, DROP)
  const nightEnd = endOfNight(request)
  const allowedStep = Math.min(request.demand.length - 1, stepOf(request, request.lastShot))
  const { due, dropped } = dueSteps(request)
  const doubts = doubtsOf(all, allDemand).concat(dropped)
  return {
    ...all,
    flow: model,
    minVolume,
    maxVolume: Math.min(volumeIn(request.maxRunTime), maxPerShot, all.substrateVolume),
    firstStep: Math.max(0, stepAt(request, request.firstShot)),
    allowedStep,
    lastStep: lastStep(all, allowedStep, nightEnd),
    due,
    nightEnd,
    doubts,
    blocked: doubts.some(({ code }) => code === 'impossible-water-content'),
  }
}

/** Refuses numbers without meaning, by name, and gives the demand of all steps together. */
function checkNumbers(request: DayPlanRequest): number {
  let name: keyof typeof PLAN_DOMAINS
  for (name in PLAN_DOMAINS) {
    const value = request[name]
    const optional = name === 'overnightDryDown' || name === 'maxPerShot'
    if (value !== undefined || !optional) numberIn(value as number, PLAN_DOMAINS[name], name)
  }
  const { demand } = request
  if (!isObject(demand) || !(demand.length > 0)) throw new InputError('demand', 'has no step', 'give each step')
  let total = 0
  for (let i = 0; i < demand.length; i++) total += numberIn(demand[i]!, WATER_USE, 'demand')
  return numberIn(total, WATER_USE, 'demand')
}

/** The step that begins at a moment, or the next one. */
function stepAt({ start, step }: DayPlanRequest, time: number): number {
  return Math.ceil((time - start) / step - DROP)
}

/** The first shot of the next day, as far as the demand of the night is known: a plan of a whole day knows it from its own morning. */
function endOfNight(request: DayPlanRequest): number {
  const steps = request.demand.length
  const day = Math.round(86400 / request.step)
  const next = stepAt(request, request.firstShot) + day
  if (next <= steps) return next > 0 ? next : steps
  return steps < day ? steps : Math.min(next, steps + day)
}

/** The last step for a shot: not after the last allowed moment, and early enough for the wanted dry-down. */
function lastStep(request: DayPlanRequest & WaterStore, allowed: number, nightEnd: number): number {
  const { overnightDryDown } = request
  if (overnightDryDown === undefined) return allowed
  const wanted = overnightDryDown * request.substrateVolume
  let ahead = 0
  for (let i = nightEnd - 1; i >= 0; i--) {
    // A shot leaves the container full at the end of its step; what dries it comes after.
    if (i <= allowed && ahead >= wanted - DROP) return i
    ahead += demandAt(request, i)
  }
  return -1
}
