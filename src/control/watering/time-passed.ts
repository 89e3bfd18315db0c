import { isBack, isJustBack } from './clock/back-from-leap.js'
import { clockMode, tick } from './clock/clock.js'
import { readFeedback } from './delivery/feedback.js'
import { stalled } from './delivery/late-water.js'
import { closeValve } from './delivery/move-valve.js'
import { afterGap } from './delivery/pace.js'
import { gapBefore, missedWater, passUneven, pausedUntil } from './delivery/unknown-time.js'
import { newestTime } from './probes/probes.js'
import type { Limits } from './settings/checked-settings.js'
import { addWater, passTime } from './state/given-water.js'
import type { WateringInput } from './state/input.js'
import type { WateringState } from './state/state.js'

/** The state after the time since the decision before: clock, meters, and the valve, which may have closed by itself. */
export function timePassed(limits: Limits, state: WateringState, input: Partial<WateringInput>): WateringState {
  const ticked = tick(state.clock, input.now, newestTime(input.readings), limits.hours)
  const { uneven, unproven } = passUneven(state, ticked, limits)
  const clock = { ...ticked, uneven, unproven }
  const isSlip = isJustBack(state.clock, clock)
  const back = isSlip || isBack(state.clock, clock)
  const missed = isSlip ? 0 : missedWater(state, clock, limits)
  const { valve: held, again } = stalled(state.valve, clock, limits)
  const valve = isSlip ? { ...held, closed: held.rested } : held
  const gap = back ? 0 : gapBefore(state, clock)
  const counters = readFeedback(
    state.counters,
    input,
    state.valve,
    { from: state.clock.elapsed, to: clock.elapsed, gap },
    limits,
  )
  const more = again * limits.litresPerSecond
  const ring = passTime(state.water, clock.elapsed)
  const water = addWater(afterGap(ring, { gap, missed, back }, clock, limits), more)
  const ran = { ...state, clock, valve: { ...valve, counted: valve.counted + more }, water, spare: water, counters }
  // However seldom decisions come, what follows an opening is judged from its end.
  const isOver = limits.closesByItself && valve.opened !== null && clock.elapsed - valve.opened >= valve.duration
  const closed = isOver && clockMode(clock) === 'runs' ? closeValve(limits, ran) : ran
  if (missed === 0 || closed.valve.opened !== null) return closed
  return { ...closed, valve: { ...closed.valve, closed: pausedUntil(closed.valve, clock, limits) } }
}
