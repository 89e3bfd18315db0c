import type { Domain } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn } from '../../quantity/guard.js'
import { LIGHT_THRESHOLD, MOMENT } from '../domains.js'
import type { DayPlanRequest } from './plan-request.js'
import { DROP } from './planning.js'

const RADIATION: Domain = {
  quantity: 'light in a step',
  unit: 'J/cm²',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}

/** Refuses a trigger that has no meaning; a word that is none of the three would else water by nothing or by the wrong thing. */
export function checkTrigger({ trigger, demand }: DayPlanRequest): void {
  switch (trigger?.by) {
    case 'level':
      return
    case 'light': {
      const { radiation, threshold } = trigger
      numberIn(threshold, LIGHT_THRESHOLD)
      if (radiation?.length !== demand.length)
        throw new InputError(
          'trigger.radiation',
          `has ${radiation?.length} steps, the demand ${demand.length}`,
          'give the light of each step',
        )
      for (let i = 0; i < radiation.length; i++) numberIn(radiation[i] as number, RADIATION)
      return
    }
    case 'clock':
      if (!Array.isArray(trigger.times))
        throw new InputError('trigger.times', 'is no list', 'give the moments of the shots as an array')
      for (const time of trigger.times) numberIn(time, MOMENT)
      return
    default:
      throw new InputError(
        'trigger.by',
        `${JSON.stringify((trigger as { by?: unknown } | undefined)?.by)} is unknown`,
        'use one of level, light, clock',
      )
  }
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
