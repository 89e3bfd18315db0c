import type { Duration, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import type { WateringDecision } from './decision.js'
import { closeValve, openValve } from './delivery/move-valve.js'
import { forbidden, mayOpen, mustClose, no } from './delivery/opening.js'
import { addToTally } from './delivery/tally.js'
import { heldBack } from './delivery/unknown-time.js'
import type { WateringReason } from './findings/finding.js'
import { findingsOf } from './findings.js'
import { type Looked, look } from './look.js'
import { isSound } from './restore/is-sound.js'
import { salvaged } from './restore/salvage.js'
import type { Limits } from './settings/checked-settings.js'
import { startState } from './start.js'
import { givenInDay, givenInLongDay } from './state/given-water.js'
import type { WateringInput } from './state/input.js'
import type { WateringState, WateringValve } from './state/state.js'

export type Step = readonly [WateringState, WateringDecision]

/** One decision: what is known now is taken in, the valve is looked at, and only then is anything opened. */
export function decide(limits: Limits, stored: unknown, sent: WateringInput): Step {
  const isLost = !isSound(stored, limits)
  const input: Partial<WateringInput> = typeof sent === 'object' && sent !== null ? sent : {}
  const seen = look(limits, isLost ? salvaged(stored, startState(limits), limits) : stored, input)
  if (isLost) return answer(limits, closeValve(limits, seen.state), 'state-lost', seen)
  const { state, zone, ended, views } = seen
  // What a valve reports in the very moment in which it closes says nothing yet.
  const against = forbidden(state, input.locked, ended ? 'closed' : input.valve, seen.overrideCloses)
  const isOpen = state.valve.opened !== null
  const end = ended ? 'shot-given' : isOpen ? (against ?? mustClose(state, zone, limits)) : null
  if (isOpen && end === null) return answer(limits, state, state.valve.reason, seen)
  const closed = isOpen ? closeValve(limits, state) : state
  if (against !== null) return answer(limits, closed, against, seen)
  const choice = end === null || end === 'shot-given' ? mayOpen(closed, zone, limits) : no(end)
  if (choice.open && seen.held)
    return answer(limits, { ...closed, clock: heldBack(closed.clock) }, 'decisions-missing', seen)
  // A refill looks whether its last shot drained before it gives the next, however seldom decisions come.
  if (choice.open && !(choice.reason === 'refill' && isOpen))
    return answer(
      limits,
      openValve(limits, closed, views, choice.reason as WateringValve['reason'], choice.run),
      choice.reason,
      seen,
    )
  return answer(limits, closed, end ?? choice.reason, seen)
}

function answer(limits: Limits, state: WateringState, reason: WateringReason, seen: Looked): Step {
  const { valve, clock } = state
  const { level, doubt } = seen.zone
  return [
    { ...state, tally: addToTally(state.tally, givenInLongDay(state.water) - seen.before) },
    {
      open: valve.opened !== null,
      closeAfter: (valve.opened === null ? 0 : valve.duration - (clock.elapsed - valve.opened)) as Duration,
      opening: valve.openings,
      reason,
      waterContent:
        level === null
          ? { known: false, reason: doubt ?? 'reading-missing' }
          : { known: true, value: level as WaterContent },
      givenInDay: givenInDay(state.water) as Volume,
      findings: findingsOf(state, seen, limits.probes),
    },
  ]
}
