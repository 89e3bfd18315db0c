import { type Effects, noEffects } from './effects.js'
import type { CheckedFault } from './fault.js'

/** What is wrong at a moment, by all faults that last then. */
export function effectsAt(faults: readonly CheckedFault[], probes: number, time: number): Effects {
  const effects = noEffects(probes)
  for (const { row, size, from, until, place } of faults) {
    if (time < from || time >= until) continue
    row.act(effects, { size, from, place }, row.everywhere ? effects.probes : [effects.probes[place]!])
  }
  return effects
}

/** The moments at which a fault begins or ends, in order, and never again at the end. */
export function changesOf(faults: readonly CheckedFault[]): number[] {
  const times = faults.flatMap(({ from, until }) => [from, until])
  return [...new Set(times)].sort((a, b) => a - b).concat(Number.POSITIVE_INFINITY)
}
