import type { Instant } from '../../quantity/calendar.js'
import { INSTANT, VALVE_TIME, WATER_CONTENT, WATER_GIVEN } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'

import { listOf } from '../list-of.js'
import type { PlannedShot } from './day-plan.js'
import { byRecord } from './plan-choice.js'
import { waterContentDoubt } from './plan-doubts.js'
import { beginning, heldAt } from './plan-engine.js'
import { missed, type PlanFinding } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'
import { type PlanRun, runPlan, runTimeOf } from './plan-run.js'
import { stepOf } from './plan-trigger.js'
import { DROP, type Planning, type PlanProgress } from './planning.js'

/** A shot that was really given. */
export interface GivenShot {
  /** When it began. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly time: Instant
  /** Water for the container. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
  /** How long the valve was, or will be, open; by default as long as its emitters need for the volume. Unit: s. Range: [0, 86400]. */
  readonly runTime?: Duration
}

/** What has happened since a plan began. */
export interface DaySoFar {
  /** The moment from which to plan anew; new shots begin with the next step. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly now: Instant
  /** All shots that were really given, the one that runs now among them with its whole volume. */
  readonly given: readonly GivenShot[]
  /** Water content that is measured now, where the prediction should not be trusted. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent?: WaterContent
}

/** The past of a plan, and the request with what is doubted in it. */
export interface PlanPast<State> extends Pick<PlanRun<State>, 'shots' | 'waterContent' | 'drain' | 'end'> {
  readonly planning: Planning<State>
}

/** Scatter of a sound probe, in m³/m³. Common practice, no source. */
const SCATTER = 0.03

/** The shots that were given, in order; refused where one cannot have been. */
export function givenOf(request: DayPlanRequest, given: readonly GivenShot[], now: number): GivenShot[] {
  listOf(given, 'soFar.given').forEach((shot, i) => {
    requireObject(shot, `soFar.given[${i}]`)
    const { time, volume, runTime } = shot
    numberIn(time, INSTANT, 'time')
    numberIn(volume, WATER_GIVEN, 'volume')
    if (runTime !== undefined) numberIn(runTime, VALVE_TIME, 'runTime')
    const refuse = (problem: string, hint: string) => {
      throw new InputError(`soFar.given[${i}]`, problem, hint)
    }
    if (time < request.start) refuse('lies before the plan', 'leave it out, or plan from an earlier moment')
    if (time > now) refuse('lies after the moment from which to plan', 'give shots of the past only, in seconds')
    if (volume > request.container.substrateVolume)
      refuse(`gives ${volume} L to ${request.container.substrateVolume} L of medium`, 'give litres for one container')
  })
  return [...given].sort((a, b) => a.time - b.time)
}

/** Takes the container through the past with the shots that were given, to the next step at which one can begin. */
export function pastOf<State>(
  planning: Planning<State>,
  given: readonly GivenShot[],
  now: number,
  measured: WaterContent | undefined,
): PlanPast<State> {
  const n = planning.demand.length
  const present = Math.min(n, stepOf(planning, now))
  const water = new Float64Array(n + 1)
  for (const { time, volume } of given) {
    const step = Math.min(n - 1, stepOf(planning, time))
    water[step] = water[step]! + volume
  }
  const before = runPlan(planning, beginning(planning), present, byRecord(water))
  const shots = shotsOf(planning, given, before.waterContent)
  const elapsed = now - planning.start - present * planning.step
  // A step in which something was given is done, even if it begins just now.
  const started = present < n && (elapsed > DROP || water[present]! > 0)
  const run = started
    ? throughStep(planning, before, water[present]!, elapsed, measured, given)
    : atOnce(planning, before, measured, given)
  const closed = given.reduce(
    (end, shot) => Math.max(end, shot.time + openFor(planning, shot)),
    Number.NEGATIVE_INFINITY,
  )
  return {
    shots,
    waterContent: before.waterContent,
    drain: before.drain,
    end: given.length > 0 ? { ...run.end, closed } : run.end,
    planning: { ...run.planning, doubts: [...run.planning.doubts, ...tooMuch(planning, given)] },
  }
}

interface Reached<State> {
  readonly end: PlanProgress<State>
  readonly planning: Planning<State>
}

/** The present step: what was given in it and its use until now, the measured water content, and the rest of its use. */
function throughStep<State>(
  planning: Planning<State>,
  { end, waterContent, drain }: PlanRun<State>,
  given: number,
  elapsed: number,
  measured: WaterContent | undefined,
  shots: readonly GivenShot[],
): Reached<State> {
  const demand = planning.demand[end.steps]!
  // Without a reading nothing parts the step, so that an undisturbed plan stays as it was.
  const share = measured === undefined ? 0 : elapsed / planning.step
  const early = share > DROP ? spent(planning, end, planning.step * share, given, demand * share) : end
  const now = atOnce(planning, { end: early }, measured, shots)
  const late = spent(now.planning, now.end, planning.step * (1 - share), share > DROP ? 0 : given, demand * (1 - share))
  waterContent[end.steps] = planning.flow.waterContent(late.state)
  drain[end.steps] = late.drained - end.drained
  const { trigger } = planning
  const light = end.light + (trigger.by === 'light' ? trigger.radiation[end.steps]! : 0)
  const left = given > 0 && trigger.by === 'light' ? Math.max(0, light - trigger.threshold) : light
  return { planning: now.planning, end: { ...late, steps: end.steps + 1, light: left } }
}

function spent<State>(
  { flow }: Planning<State>,
  from: PlanProgress<State>,
  duration: number,
  volume: number,
  demand: number,
): PlanProgress<State> {
  if (!(duration > DROP)) return from
  const after = flow.step(from.state, {
    duration: duration as Duration,
    applied: volume as Volume,
    demand: demand as Volume,
  })
  return {
    ...from,
    state: after.state,
    applied: from.applied + volume,
    drained: from.drained + after.drained,
    taken: from.taken + after.taken,
  }
}

/** Puts a measured water content in the place of the predicted one, if it can be believed. */
function atOnce<State>(
  planning: Planning<State>,
  { end }: Pick<PlanRun<State>, 'end'>,
  measured: WaterContent | undefined,
  given: readonly GivenShot[],
): Reached<State> {
  if (measured === undefined) return { end, planning }
  const waterContent = numberIn(measured, WATER_CONTENT)
  const doubt = measuredDoubt(planning, end, waterContent, given)
  if (doubt === undefined) return { end: heldAt(planning, end, waterContent), planning }
  const blocked = planning.blocked || doubt.level === 'danger'
  const doubted = { ...planning, blocked, doubts: [...planning.doubts, doubt] }
  return {
    end: doubt.code === 'water-content-above-capacity' ? heldAt(planning, end, waterContent) : end,
    planning: doubted,
  }
}

function measuredDoubt<State>(
  planning: Planning<State>,
  end: PlanProgress<State>,
  waterContent: number,
  given: readonly GivenShot[],
): PlanFinding | undefined {
  const { substrateVolume } = planning
  const about = 'soFar.waterContent'
  const doubt = waterContentDoubt(waterContent, planning, about)
  if (doubt?.because === 'above-capacity') return doubt
  let use = 0
  for (let i = 0; i < end.steps; i++) use += planning.demand[i]!
  const water = given.reduce((sum, { volume }) => sum + volume, 0)
  const dry = planning.waterContent - (2 * use) / substrateVolume - SCATTER
  const wet = planning.waterContent + water / substrateVolume + SCATTER
  if (doubt === undefined && waterContent >= dry && waterContent <= wet) return undefined
  return missed('measured-content-doubted', about, waterContent, planning.flow.waterContent(end.state), 'm³/m³')
}

function shotsOf(request: DayPlanRequest, given: readonly GivenShot[], waterContent: Float64Array): PlannedShot[] {
  return given
    .filter(({ volume }) => volume > 0)
    .map((shot) => ({
      time: shot.time,
      volume: shot.volume,
      perEmitter: (shot.volume / request.emitters) as Volume,
      runTime: openFor(request, shot) as Duration,
      reason: 'given',
      waterContent: (waterContent[stepOf(request, shot.time) - 1] ?? request.waterContent) as WaterContent,
    }))
}

function openFor(request: DayPlanRequest, { volume, runTime }: GivenShot): number {
  return runTime ?? (volume > 0 ? runTimeOf(request, volume) : 0)
}

/** Shots larger than the valve gives in its longest time: a wrong unit, a leak, or a valve that stuck open. */
function tooMuch<State>({ maxVolume: wanted }: Planning<State>, given: readonly GivenShot[]): PlanFinding[] {
  const findings: PlanFinding[] = []
  for (const { time, volume: reached } of given) {
    if (reached > wanted * 1.1)
      findings.push({ ...missed('given-more-than-allowed', 'soFar.given', reached, wanted, 'L'), time })
  }
  return findings
}
