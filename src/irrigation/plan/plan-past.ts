import { answerOf } from '../../quantity/answer.js'
import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { PlannedShot } from './day-plan.js'
import type { GivenShot } from './day-so-far.js'
import { doubtsOfGiven, openFor } from './given-doubts.js'
import { byRecord } from './plan-choice.js'
import { beginning } from './plan-engine.js'
import { atOnce, type Reached } from './plan-measured.js'
import type { DayPlanRequest } from './plan-request.js'
import { type PlanRun, runPlan } from './plan-run.js'
import { stepOf } from './plan-trigger.js'
import { DROP, type Planning, type PlanProgress } from './planning.js'

/** The past of a plan, and the request with what is doubted in it. */
export interface PlanPast<State> extends Pick<PlanRun<State>, 'shots' | 'waterContent' | 'drain' | 'end'> {
  readonly planning: Planning<State>
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
    planning: { ...run.planning, doubts: [...run.planning.doubts, ...doubtsOfGiven(planning, given)] },
  }
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
  const [next, after] = flow.step(from.state, {
    duration: duration as Duration,
    applied: volume as Volume,
    demand: demand as Volume,
  })
  return {
    ...from,
    state: next,
    applied: from.applied + volume,
    drained: from.drained + after.drained,
    taken: from.taken + after.taken,
  }
}

function shotsOf(request: DayPlanRequest, given: readonly GivenShot[], waterContent: Float64Array): PlannedShot[] {
  return given
    .filter(({ volume }) => volume > 0)
    .map((shot) => ({
      time: shot.time,
      volume: shot.volume,
      perEmitter: answerOf(shot.volume / request.emitters, 'emitters') as Volume,
      runTime: openFor(request, shot) as Duration,
      reason: 'given',
      waterContent: (waterContent[stepOf(request, shot.time) - 1] ?? request.waterContent) as WaterContent,
    }))
}
