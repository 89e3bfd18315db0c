import type { WateringFill } from '../state/state.js'

/** What a probe says too much by now: what a full zone showed of it last, and what it drifted by since. Unit: m³/m³. */
export function knownError({ bias, drift, full }: WateringFill, probe: number, elapsed: number): number {
  return bias[probe]! + drift[probe]! * (elapsed - (full ?? elapsed))
}

/** The same of every probe. */
export function knownErrors(fill: WateringFill, elapsed: number): readonly number[] {
  return fill.bias.map((_, i) => knownError(fill, i, elapsed))
}
