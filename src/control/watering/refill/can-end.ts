import type { LatchedCode } from '../findings/latched-codes.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringState } from '../state/state.js'
import { countsTooMuch, isDeadMeter } from '../state/wrong-meter.js'

/** Findings of a flow that may be well again before anybody has looked. */
const FLOWS: readonly LatchedCode[] = ['flow-while-closed', 'no-flow', 'flow-too-large']
/** Findings after which no gauge would end a refill until somebody has looked. */
export const GAUGES: readonly LatchedCode[] = ['no-drain', 'drain-too-large']

/**
 * Whether valve, meter and gauge would end a refill: where something was wrong with the flow, it is well again once an opening gave what it should and
 * nothing leaked behind it.
 */
export function canEnd({ counters, valve, clock }: WateringState, { lag, drain }: Limits): boolean {
  const { latched, leaked, meteredSince, ordered } = counters
  if (latched.includes('valve-does-not-close')) return false
  // Where a share should drain, probes end it as well.
  if (drain === 0 && latched.some((code) => GAUGES.includes(code))) return false
  // A meter that is dead, or counts twice what comes, would keep a zone unfilled for as long as nobody looks.
  const isMeter = (code: LatchedCode) =>
    (code === 'flow-too-large' && countsTooMuch(counters.delivery)) ||
    (code === 'no-flow' && isDeadMeter(counters.delivery))
  if (!latched.some((code) => FLOWS.includes(code) && !(leaked === 0 && isMeter(code)))) return true
  const isOver = valve.opened === null && clock.elapsed >= valve.closed + lag
  return isOver && leaked === 0 && ordered > 0 && meteredSince >= 0.6 * ordered && meteredSince <= 1.25 * ordered
}
