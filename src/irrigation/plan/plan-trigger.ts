import { INSTANT } from '../../quantity/domains.js'
import { DomainError, InputError } from '../../quantity/errors.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { LIGHT_IN_STEP, LIGHT_THRESHOLD } from '../domains.js'
import { listOf } from '../list-of.js'
import { type PlanFinding, timeDropped } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'
import { DROP } from './planning.js'

/** Refuses a trigger that has no meaning; a word that is none of the three would else water by nothing or by the wrong thing. */
export function checkTrigger({ trigger, demand, step }: DayPlanRequest): void {
  requireObject(trigger, 'trigger.by')
  oneOf(trigger.by, ['level', 'light', 'clock'], 'trigger.by')
  if (trigger.by === 'clock')
    for (const time of listOf(trigger.times, 'trigger.times')) numberIn(time, INSTANT, 'times')
  if (trigger.by !== 'light') return
  const { radiation, threshold } = trigger
  numberIn(threshold, LIGHT_THRESHOLD, 'threshold')
  if (radiation?.length !== demand.length)
    throw new InputError('trigger.radiation', 'is not as long as demand', 'give each step')
  // The row holds for an hour. Edges of clouds that gather the sun have brought 1800 W/m² for seconds, from memory.
  const max = step * 0.15 + 1.5
  for (const light of Array.from(radiation))
    if (numberIn(light, LIGHT_IN_STEP, 'radiation') > max)
      throw new DomainError(light, { ...LIGHT_IN_STEP, max }, 'radiation')
}

/** The steps at which a clock asks for a shot, and the times outside the plan or after another one in their step, which get none. */
export function dueSteps(request: DayPlanRequest) {
  const due = new Map<number, number>()
  const dropped: PlanFinding[] = []
  const { trigger, demand } = request
  if (trigger.by === 'clock')
    for (const time of [...trigger.times].sort((a, b) => a - b)) {
      const step = stepOf(request, time)
      if (step < 0 || step >= demand.length) dropped.push(timeDropped(time, 'outside-plan'))
      else if (!due.has(step)) due.set(step, time)
      else if (due.get(step) !== time) dropped.push(timeDropped(time, 'rest'))
    }
  return { due, dropped }
}

/** The step within which a moment lies. */
export function stepOf({ start, step }: DayPlanRequest, time: number): number {
  return Math.floor((time - start) / step + DROP)
}
