import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { PlannedShot, ShotReason } from './day-plan.js'
import type { PlanCause } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'
import type { Planning, PlanProgress } from './planning.js'

/** Water that is wanted at the beginning of a step; none when its volume is zero. */
export interface Wish {
  readonly volume: number
  readonly reason?: ShotReason | undefined
  /** Why a shot that a clock asked for is not given. */
  readonly because?: PlanCause
}

/** Chooses the water of a step from where the plan stands. */
export type Chooser<State> = (progress: PlanProgress<State>, time: number, light: number) => Wish

/** What a run of the model through a plan gives. */
export interface PlanRun<State> {
  readonly shots: PlannedShot[]
  /** Set times at which no shot is given. */
  readonly dropped: { readonly step: number; readonly because: PlanCause }[]
  readonly waterContent: Float64Array
  readonly drain: Float64Array
  readonly end: PlanProgress<State>
}

/** Runs the model from where a plan stands until a step, with the water that `choose` asks for. */
export function runPlan<State>(
  planning: Planning<State>,
  from: PlanProgress<State>,
  until: number,
  choose: Chooser<State>,
): PlanRun<State> {
  const { flow, trigger, demand, step } = planning
  const waterContent = new Float64Array(demand.length)
  const drain = new Float64Array(demand.length)
  const shots: PlannedShot[] = []
  const dropped: PlanRun<State>['dropped'] = []
  let progress = from
  for (let i = from.steps; i < until; i++) {
    const time = planning.start + i * step
    const light = progress.light + (trigger.by === 'light' ? trigger.radiation[i]! : 0)
    const wish = choose(progress, time, light)
    const shot = wish.volume > 0 ? shotOf(planning, time, wish, flow.waterContent(progress.state)) : undefined
    if (shot !== undefined) shots.push(shot)
    if (wish.because !== undefined) dropped.push({ step: i, because: wish.because })
    const [next, after] = flow.step(progress.state, {
      duration: step,
      applied: wish.volume as Volume,
      demand: demand[i] as Volume,
    })
    waterContent[i] = flow.waterContent(next)
    drain[i] = after.drained
    progress = {
      steps: i + 1,
      state: next,
      closed: shot === undefined ? progress.closed : time + shot.runTime,
      applied: progress.applied + wish.volume,
      drained: progress.drained + after.drained,
      taken: progress.taken + after.taken,
      surplus: progress.surplus,
      rewetting: progress.rewetting && (i < planning.firstStep || waterContent[i]! < rewetLevel(planning)),
      light: shot !== undefined && trigger.by === 'light' ? Math.max(0, light - trigger.threshold) : light,
    }
  }
  return { shots, dropped, waterContent, drain, end: progress }
}

/** The morning rewet is over when less than half of the band between refill and full point is missing. */
export function rewetLevel({ fullPoint, refillPoint }: DayPlanRequest): number {
  return (fullPoint + refillPoint) / 2
}

function shotOf(request: DayPlanRequest, time: number, { volume, reason }: Wish, waterContent: number): PlannedShot {
  return {
    time: time as PlannedShot['time'],
    volume: volume as Volume,
    perEmitter: (volume / request.emitters) as Volume,
    runTime: runTimeOf(request, volume) as Duration,
    reason: reason as ShotReason,
    waterContent: waterContent as WaterContent,
  }
}

/** How long the valve is open for a volume. */
export function runTimeOf({ emitters, emitterFlow, lineFill }: DayPlanRequest, volume: number): number {
  return (volume / (emitters * emitterFlow)) * 3600 + lineFill
}
