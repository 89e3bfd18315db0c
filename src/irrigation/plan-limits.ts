import type { ContainerFlow } from '../flow/container-flow.js'
import { InputError } from '../quantity/errors.js'
import { wholeWithin, within } from '../quantity/guard.js'
import type { Span } from '../quantity/span.js'
import { DROP } from './plan-choice.js'
import type { DayPlanRequest, Planning } from './plan-request.js'
import { EMITTER_FLOW, FILL_TIME } from './spans.js'

const STEP: Span = {
  quantity: 'step of the plan',
  unit: 's',
  min: 30,
  max: 3600,
  ends: '[]',
  hint: 'plan in steps of half a minute to an hour',
}
const DEMAND: Span = {
  quantity: 'demand in a step',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water that the plants will take, zero or more',
}
const RADIATION: Span = {
  quantity: 'light in a step',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}
const THRESHOLD: Span = {
  quantity: 'light between two shots',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a sum of light above zero',
}
const CONTENT: Span = {
  quantity: 'water content at the start',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give volume of water per volume of medium',
}
const REFILL: Span = {
  quantity: 'refill point',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '()',
  hint: 'give the water content at which to water again',
}
const FULL: Span = {
  quantity: 'full point',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the water content that a shot must not exceed',
}
const DRAIN: Span = {
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 0.9,
  ends: '[]',
  hint: 'at nine tenths of drain nearly all water is lost; ask for less',
}
const DRY: Span = {
  quantity: 'overnight dry-down',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the fall as a positive change',
}
const EMITTERS: Span = {
  quantity: 'emitters',
  unit: '1',
  min: 1,
  max: 1000,
  ends: '[]',
  hint: 'give the whole number of emitters in one container',
}
const LEAST: Span = {
  quantity: 'shortest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const MOST: Span = {
  quantity: 'longest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'every valve needs a longest time above zero',
}
const BETWEEN: Span = {
  quantity: 'time between shots',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const PER_DAY: Span = {
  quantity: 'most water in the plan',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'every plan needs a finite limit',
}

/** Checks a request and works out what stays the same through the plan. */
export function checkPlanRequest<State>(request: DayPlanRequest, flow: ContainerFlow<State>): Planning<State> {
  const { trigger } = request
  within(request.step, STEP)
  within(request.content, CONTENT)
  within(request.refillPoint, REFILL)
  within(request.fullPoint, FULL)
  within(request.drainFraction, DRAIN)
  if (request.overnightDryDown !== undefined) within(request.overnightDryDown, DRY)
  wholeWithin(request.emitters, EMITTERS)
  within(request.emitterFlow, EMITTER_FLOW)
  within(request.lineFill, FILL_TIME)
  within(request.leastRunTime, LEAST)
  within(request.mostRunTime, MOST)
  within(request.betweenShots, BETWEEN)
  within(request.mostPerDay, PER_DAY)
  if (request.demand.length === 0)
    throw new InputError('demand', 'has no step', 'give the demand of each step of the plan')
  for (let i = 0; i < request.demand.length; i++) within(request.demand[i] as number, DEMAND)
  if (trigger.by === 'light') {
    within(trigger.threshold, THRESHOLD)
    if (trigger.radiation.length !== request.demand.length)
      throw new InputError(
        'trigger.radiation',
        `has ${trigger.radiation.length} steps, the demand ${request.demand.length}`,
        'give the light of each step',
      )
    for (let i = 0; i < trigger.radiation.length; i++) within(trigger.radiation[i] as number, RADIATION)
  }
  if (request.refillPoint >= request.fullPoint)
    throw new InputError('refillPoint', 'is not below the full point', 'give a lower refill point')
  if (request.fullPoint > request.container.containerCapacity + DROP)
    throw new InputError(
      'fullPoint',
      'is above the container capacity, which the container cannot hold',
      'set it at or below the capacity',
    )
  if (request.leastRunTime > request.mostRunTime)
    throw new InputError('leastRunTime', 'is longer than the longest run time', 'give a shorter one')
  if (!(request.firstShot <= request.lastShot))
    throw new InputError('firstShot', 'is after the last shot', 'give an earlier one')
  const volumeIn = (seconds: number) =>
    (Math.max(0, seconds - request.lineFill) / 3600) * request.emitters * request.emitterFlow
  return {
    request,
    flow,
    leastVolume: volumeIn(request.leastRunTime),
    mostVolume: volumeIn(request.mostRunTime),
    firstStep: Math.max(0, Math.ceil((request.firstShot - request.start) / request.step - DROP)),
    lastStep: lastStep(request),
  }
}

/** The last step for a shot: not after the last allowed moment, and early enough for the wanted dry-down. */
function lastStep(request: DayPlanRequest): number {
  const { demand } = request
  const allowed = Math.min(demand.length - 1, Math.floor((request.lastShot - request.start) / request.step + DROP))
  if (request.overnightDryDown === undefined) return allowed
  const wanted = request.overnightDryDown * request.container.substrateVolume
  let ahead = 0
  for (let i = demand.length - 1; i >= 0; i--) {
    // A shot leaves the container full at the end of its step; what dries it comes after.
    if (i <= allowed && ahead >= wanted - DROP) return i
    ahead += demand[i] as number
  }
  return -1
}
