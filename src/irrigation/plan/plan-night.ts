import { maxOf } from '../../quantity/extremes.js'
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
export function nightOf<State>(planning: Planning<State>, run: PlanRun<State>, last: number): Night {
  const { flow, nightEnd, step: duration } = planning
  const { waterContent } = run
  const within = Math.min(waterContent.length, nightEnd)
  let end = waterContent[within - 1]!
  const from = Math.min(stepOf(planning, last), within - 1)
  let peak = maxOf(waterContent.subarray(from, within))
  let { state } = run.end
  for (let i = waterContent.length; i < nightEnd; i++) {
    state = flow.step(state, { duration, applied: 0 as Volume, demand: demandAt(planning, i) as Volume })[0]
    end = flow.waterContent(state)
    peak = Math.max(peak, end)
  }
  return { peak, end }
}
