import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill } from '../state/state.js'

/** What should have drained and has not, once so much was given and drained: neither a wet week nor a dry one is made good at a stroke. Unit: L. */
export function owed(fill: WateringFill, given: number, drained: number, { drain, usual }: Limits): number {
  return Math.max(-usual / 2, Math.min(usual / 2, fill.owed + drain * given - drained))
}
