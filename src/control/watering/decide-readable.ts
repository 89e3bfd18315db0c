import { readable } from '../../quantity/attempt.js'
import { decide, type Step } from './decide.js'
import type { Limits } from './settings/checked-settings.js'
import type { WateringInput } from './state/input.js'

/**
 * A decision that no getter and no proxy can keep from being made: a message that cannot be read says nothing, so that the valve closes, and a state that
 * cannot be read is lost.
 */
export function decideReadable(limits: Limits, state: unknown, input: WateringInput): Step {
  const silent = {} as WateringInput
  return (
    readable(() => decide(limits, state, input)) ??
    readable(() => unreadable(decide(limits, state, silent))) ??
    readable(() => decide(limits, null, input)) ??
    decide(limits, null, silent)
  )
}

function unreadable([state, decision]: Step): Step {
  return [state, { ...decision, reason: 'message-unreadable' }]
}
