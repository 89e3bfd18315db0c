import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill } from '../state/state.js'

/**
 * What should have drained and has not, once so much was given and drained: neither a wet week nor a dry one is made good at a stroke. What drained beyond
 * it counts for a day only: containers part every day, and what a gauge counts may be rain. Unit: L.
 */
export function owed(fill: WateringFill, given: number, drained: number, { drain, usual }: Limits): number {
  if (drain === 0) return 0
  return Math.max(-drain * usual, Math.min(usual / 2, fill.owed + drain * given - drained))
}
