import type { LatchedCode } from '../findings/latched-codes.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringState } from '../state/state.js'

/** Findings of a flow that may be well again before anybody has looked. */
const FLOWS: readonly LatchedCode[] = ['flow-while-closed', 'no-flow', 'flow-too-large']
/** Findings after which nothing would end a refill until somebody has looked. */
const ENDLESS: readonly LatchedCode[] = ['no-drain', 'drain-too-large', 'valve-does-not-close']

/**
 * Whether valve, meter and gauge would end a refill: where something was wrong with the flow, it is well again once an opening gave what it should and
 * nothing leaked behind it.
 */
export function canEnd({ counters, valve, clock }: WateringState, { lag }: Limits): boolean {
  const { latched, leaked, meteredSince, ordered } = counters
  if (latched.some((code) => ENDLESS.includes(code))) return false
  if (!latched.some((code) => FLOWS.includes(code))) return true
  const isOver = valve.opened === null && clock.elapsed >= valve.closed + lag
  return isOver && leaked === 0 && ordered > 0 && meteredSince >= 0.6 * ordered && meteredSince <= 1.25 * ordered
}
