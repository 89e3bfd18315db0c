import { INSTANT, RADIATION_SUM } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { LIGHT_THRESHOLD } from '../domains.js'

import { listOf } from '../list-of.js'
import type { DayPlanRequest } from './plan-request.js'
import { DROP } from './planning.js'

const TRIGGERS = ['level', 'light', 'clock'] as const

/** Refuses a trigger that has no meaning; a word that is none of the three would else water by nothing or by the wrong thing. */
export function checkTrigger({ trigger, demand }: DayPlanRequest): void {
  oneOf(trigger?.by, TRIGGERS, 'trigger.by')
  if (trigger.by === 'clock')
    for (const time of listOf(trigger.times, 'trigger.times')) numberIn(time, INSTANT, 'times')
  if (trigger.by !== 'light') return
  const { radiation, threshold } = trigger
  numberIn(threshold, LIGHT_THRESHOLD, 'threshold')
  if (radiation?.length !== demand.length)
    throw new InputError('trigger.radiation', 'is not as long as demand', 'give each step')
  for (let i = 0; i < radiation.length; i++) numberIn(radiation[i]!, RADIATION_SUM, 'radiation')
}

/** The steps at which a clock asks for a shot; of several times in one step only the first has one. */
export function dueSteps(request: DayPlanRequest): Map<number, number> {
  const due = new Map<number, number>()
  if (request.trigger.by !== 'clock') return due
  for (const time of request.trigger.times) {
    const step = stepOf(request, time)
    const before = due.get(step)
    if (before === undefined || time < before) due.set(step, time)
  }
  return due
}

/** The step within which a moment lies. */
export function stepOf({ start, step }: DayPlanRequest, time: number): number {
  return Math.floor((time - start) / step + DROP)
}
