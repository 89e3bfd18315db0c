import type { ShotEvidence } from '../shots/judge-shot.js'
import type { UsualShares } from '../state/zone-state.js'
import { tells } from '../watch/steps-of-counter.js'

/** Learns what the meter shows of a shot that rose as usual; what is far from it is not learnt. Spans chosen on rehearsals. */
export function withMeter(usual: UsualShares, shot: ShotEvidence, step: number): UsualShares {
  const { metered } = shot
  if (metered === null || !tells(step, shot.volume) || !roseWell(shot)) return usual
  if (usual.meteredShots < 4 ? metered < 0.5 || metered > 1.5 : !like(metered, usual.metered, 0.12)) return usual
  const meteredShots = usual.meteredShots + 1
  return {
    ...usual,
    meteredShots,
    metered: usual.metered + Math.max(1 / meteredShots, 0.02) * (metered - usual.metered),
  }
}

/** Learns what drains of a shot that rose as usual, and at which level; of one that drains less than a step of the gauge all and nothing alike. */
export function withShare(usual: UsualShares, shot: ShotEvidence, step: number): UsualShares {
  const { drained, level, volume } = shot
  if (drained === null || level === null || !roseWell(shot)) return usual
  const off = Math.abs(drained - usual.drained)
  if (usual.drainedShots >= 8 && off > 0.6 * usual.drained + step / volume) return usual
  const drainedShots = usual.drainedShots + 1
  const share = Math.max(1 / drainedShots, 0.02)
  return {
    ...usual,
    drainedShots,
    drained: usual.drained + share * (drained - usual.drained),
    drainedAt: usual.drainedAt + share * (level - usual.drainedAt),
  }
}

/** Between a quarter less than usual, five standard deviations of a shot of 0.02 m³/m³, and some more: chosen on rehearsals. */
function roseWell({ rises }: ShotEvidence): boolean {
  const told = rises.filter((rise) => rise !== null)
  return told.length > 0 && told.every((rise) => rise > 0.75 && rise < 1.4)
}

function like(value: number, usual: number, tolerance: number): boolean {
  return Math.abs(value - usual) <= tolerance * usual
}
