import type { ContainerFlow } from '../../flow/container-flow.js'
import type { Domain } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn, wholeNumberIn } from '../../quantity/guard.js'
import { EMITTER_FLOW, FILL_TIME } from '../domains.js'
import { DROP } from './plan-choice.js'
import type { DayPlanRequest, Planning } from './plan-request.js'

const STEP: Domain = {
  quantity: 'step of the plan',
  unit: 's',
  min: 30,
  max: 3600,
  ends: '[]',
  hint: 'plan in steps of half a minute to an hour',
}
const DEMAND: Domain = {
  quantity: 'demand in a step',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the water that the plants will take, zero or more',
}
const RADIATION: Domain = {
  quantity: 'light in a step',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}
const THRESHOLD: Domain = {
  quantity: 'light between two shots',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a sum of light above zero',
}
const CONTENT: Domain = {
  quantity: 'water content at the start',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give volume of water per volume of medium',
}
const REFILL: Domain = {
  quantity: 'refill point',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '()',
  hint: 'give the water content at which to water again',
}
const FULL: Domain = {
  quantity: 'full point',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '(]',
  hint: 'give the water content that a shot must not exceed',
}
const DRAIN: Domain = {
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 0.9,
  ends: '[]',
  hint: 'at nine tenths of drain nearly all water is lost; ask for less',
}
const DRY: Domain = {
  quantity: 'overnight dry-down',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the fall as a positive change',
}
const EMITTERS: Domain = {
  quantity: 'emitters',
  unit: '1',
  min: 1,
  max: 1000,
  ends: '[]',
  hint: 'give the whole number of emitters in one container',
}
const LEAST: Domain = {
  quantity: 'shortest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const MOST: Domain = {
  quantity: 'longest run time',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '(]',
  hint: 'every valve needs a longest time above zero',
}
const BETWEEN: Domain = {
  quantity: 'time between shots',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give zero or more',
}
const PER_DAY: Domain = {
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
  numberIn(request.step, STEP, 'step')
  numberIn(request.content, CONTENT, 'content')
  numberIn(request.refillPoint, REFILL, 'refillPoint')
  numberIn(request.fullPoint, FULL, 'fullPoint')
  numberIn(request.drainFraction, DRAIN, 'drainFraction')
  if (request.overnightDryDown !== undefined) numberIn(request.overnightDryDown, DRY, 'overnightDryDown')
  wholeNumberIn(request.emitters, EMITTERS, 'emitters')
  numberIn(request.emitterFlow, EMITTER_FLOW, 'emitterFlow')
  numberIn(request.lineFill, FILL_TIME, 'lineFill')
  numberIn(request.minRunTime, LEAST, 'minRunTime')
  numberIn(request.maxRunTime, MOST, 'maxRunTime')
  numberIn(request.betweenShots, BETWEEN, 'betweenShots')
  numberIn(request.maxPerDay, PER_DAY, 'maxPerDay')
  if (request.demand.length === 0)
    throw new InputError('demand', 'has no step', 'give the demand of each step of the plan')
  for (let i = 0; i < request.demand.length; i++) numberIn(request.demand[i] as number, DEMAND)
  if (trigger.by === 'light') {
    numberIn(trigger.threshold, THRESHOLD, 'threshold')
    if (trigger.radiation.length !== request.demand.length)
      throw new InputError(
        'trigger.radiation',
        `has ${trigger.radiation.length} steps, the demand ${request.demand.length}`,
        'give the light of each step',
      )
    for (let i = 0; i < trigger.radiation.length; i++) numberIn(trigger.radiation[i] as number, RADIATION)
  }
  if (request.refillPoint >= request.fullPoint)
    throw new InputError('refillPoint', 'is not below the full point', 'give a lower refill point')
  if (request.fullPoint > request.container.containerCapacity + DROP)
    throw new InputError(
      'fullPoint',
      'is above the container capacity, which the container cannot hold',
      'set it at or below the capacity',
    )
  if (request.minRunTime > request.maxRunTime)
    throw new InputError('minRunTime', 'is longer than the longest run time', 'give a shorter one')
  if (!(request.firstShot <= request.lastShot))
    throw new InputError('firstShot', 'is after the last shot', 'give an earlier one')
  const volumeIn = (seconds: number) =>
    (Math.max(0, seconds - request.lineFill) / 3600) * request.emitters * request.emitterFlow
  return {
    request,
    flow,
    minVolume: volumeIn(request.minRunTime),
    maxVolume: volumeIn(request.maxRunTime),
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
