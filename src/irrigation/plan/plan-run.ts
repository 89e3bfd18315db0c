import type { Duration } from '../../quantity/generated/duration.js'
import type { Volume } from '../../quantity/generated/volume.js'
import type { DayPlanRequest, PlannedShot, Planning, PlanProgress } from './plan-request.js'

/** A shot that is wanted at the beginning of a step; none when its volume is zero. */
export interface Wish {
  readonly volume: number
  readonly reason: string
}

/** Chooses the water of a step from where the plan stands. */
export type Chooser<State> = (progress: PlanProgress<State>, time: number, light: number) => Wish

/** What a run of the model through a plan gives. */
export interface PlanRun<State> {
  readonly shots: PlannedShot[]
  readonly content: Float64Array
  readonly drain: Float64Array
  readonly end: PlanProgress<State>
}

/** Runs the model from where a plan stands until a step, with the water that `choose` asks for. */
export function runPlan<State>(
  { request, flow, firstStep }: Planning<State>,
  from: PlanProgress<State>,
  until: number,
  choose: Chooser<State>,
): PlanRun<State> {
  const { trigger, step } = request
  const content = new Float64Array(request.demand.length)
  const drain = new Float64Array(request.demand.length)
  const shots: PlannedShot[] = []
  let progress = from
  for (let i = from.steps; i < until; i++) {
    const time = request.start + i * step
    const light = progress.light + (trigger.by === 'light' ? (trigger.radiation[i] as number) : 0)
    const { volume, reason } = choose(progress, time, light)
    if (volume > 0) shots.push(shotOf(request, time, volume, reason))
    const after = flow.step(progress.state, {
      duration: step,
      applied: volume as Volume,
      demand: request.demand[i] as Volume,
    })
    const now = flow.waterContent(after.state)
    content[i] = now
    drain[i] = after.drained
    progress = {
      steps: i + 1,
      state: after.state,
      last: volume > 0 ? time : progress.last,
      applied: progress.applied + volume,
      drained: progress.drained + after.drained,
      taken: progress.taken + after.taken,
      rewetting: progress.rewetting && (i < firstStep || now < rewetLevel(request)),
      light: volume > 0 && trigger.by === 'light' ? Math.max(0, light - trigger.threshold) : light,
    }
  }
  return { shots, content, drain, end: progress }
}

/** The morning rewet is over when less than half of the band between refill and full point is missing. */
export function rewetLevel({ fullPoint, refillPoint }: DayPlanRequest): number {
  return (fullPoint + refillPoint) / 2
}

function shotOf(request: DayPlanRequest, time: number, volume: number, reason: string): PlannedShot {
  const seconds = (volume / (request.emitters * request.emitterFlow)) * 3600 + request.lineFill
  return {
    time: time as PlannedShot['time'],
    volume: volume as Volume,
    perEmitter: (volume / request.emitters) as Volume,
    runTime: seconds as Duration,
    reason,
  }
}
