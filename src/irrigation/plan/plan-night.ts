import type { Volume } from '../../quantity/generated/kinds.js'
import type { PlanRun } from './plan-run.js'
import { stepOf } from './plan-trigger.js'
import { demandAt, type Planning } from './planning.js'

/** The water content between the last shot and the first of the next day. */
export interface Night {
  readonly peak: number
  readonly end: number
}

/** Follows the container from the last shot, or from the beginning without one, until the first shot of the next day. */
export function nightOf<State>(planning: Planning<State>, run: PlanRun<State>, last: number | undefined): Night {
  const { request, flow, nightEnd } = planning
  const { waterContent } = run
  const within = Math.min(waterContent.length, nightEnd)
  let peak = -Infinity
  for (let i = last === undefined ? 0 : Math.min(stepOf(request, last), within - 1); i < within; i++)
    peak = Math.max(peak, waterContent[i]!)
  let end = waterContent[within - 1]!
  let { state } = run.end
  for (let i = waterContent.length; i < nightEnd; i++) {
    const demand = demandAt(request, i) as Volume
    state = flow.step(state, { duration: request.step, applied: 0 as Volume, demand }).state
    end = flow.waterContent(state)
    peak = Math.max(peak, end)
  }
  return { peak, end }
}
