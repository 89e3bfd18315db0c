import type { DrainedShare } from '../watch/gauge-overcounts.js'
import type { ShotEvidence } from './judge-shot.js'

/** The newest shots that rose well, though nothing of them drained. */
export interface NothingDrained {
  /** Share that drained, and mean rise as a share of the usual. Unit: 1. */
  readonly drained: number
  readonly rise: number
  readonly since: number
}

/** Shots of which the usual share that drains is known, and that make sure. Chosen on rehearsals. */
export const KNOWN = 8
/** What each of them rises at least, and what drains of them at most as a share of the usual. Chosen on rehearsals. */
const ROSE = 0.75
const NOTHING = 0.15
/** So small a usual share is none of which the lack can be seen. Chosen. Unit: 1. */
const MIN_USUAL = 0.015

/**
 * Shots whose rise is not known, as where readings come in batches, are passed over. What usually drains of them must be two steps of the gauge: one
 * may be on its way.
 */
export function nothingDrained(
  shots: readonly ShotEvidence[],
  { drained: usual, drainedShots }: DrainedShare,
  step: number,
): NothingDrained | null {
  if (drainedShots < KNOWN || usual <= MIN_USUAL) return null
  let [count, volume, drained, rises] = [0, 0, 0, 0]
  for (let k = shots.length - 1; k >= 0; k--) {
    const shot = shots[k]!
    const rise = bestRise(shot)
    if (shot.drained === null || rise <= ROSE) continue
    count++
    volume += shot.volume
    drained += shot.drained * shot.volume
    rises += rise
    if (count < KNOWN || usual * volume < 2 * step) continue
    return drained < NOTHING * usual * volume
      ? { drained: drained / volume, rise: rises / count, since: shot.time }
      : null
  }
  return null
}

function bestRise({ rises }: ShotEvidence): number {
  return rises.reduce<number>((best, rise) => Math.max(best, rise ?? 0), 0)
}
