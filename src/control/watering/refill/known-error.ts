import type { ProbeView } from '../probes/probes.js'
import type { WateringFill } from '../state/state.js'

/** A probe is set up by no more than this: what drained may have run past the medium. Unit: m³/m³. */
export const MAX_UP = 0.02
/** From this error on a probe is told to read too high: calibrations for one medium are good to 0.02 or 0.03. Common practice, no source. Unit: m³/m³. */
const TOO_HIGH = 0.025

/** What a probe says too much by now: what a full zone showed of it last, and what it drifted by since. Unit: m³/m³. */
export function knownError({ bias, drift, full }: WateringFill, probe: number, elapsed: number): number {
  return bias[probe]! + drift[probe]! * (elapsed - (full ?? elapsed))
}

/** The same of every probe. */
export function knownErrors(fill: WateringFill, elapsed: number): readonly number[] {
  return fill.bias.map((_, i) => knownError(fill, i, elapsed))
}

/** What probes say, without what they were found to say too much when the zone was full, and what they drift by since. */
export function unbiased(views: readonly ProbeView[], fill: WateringFill, elapsed: number): readonly ProbeView[] {
  const error = knownErrors(fill, elapsed)
  if (error.every((change) => change === 0)) return views
  const less = (level: number | null, i: number) => (level === null ? null : level - error[i]!)
  return views.map((view, i) => ({ ...view, seen: less(view.seen, i), level: less(view.level, i) }))
}

/** By how much a probe was found to say too much, where that is more than probes of a zone differ by; null else. Unit: m³/m³. */
export function foundTooHigh(fill: WateringFill, probe: number, elapsed: number): number | null {
  const error = knownError(fill, probe, elapsed)
  return error >= TOO_HIGH ? error : null
}
