import { tells } from '../watch/steps-of-counter.js'
import type { ShotEvidence } from './judge-shot.js'

/** What a counter told of shots that it counts in steps. */
interface OfCounter {
  readonly share: (shot: ShotEvidence) => number | null
  /** Unit: L. */
  readonly step: number
  /** Unit: 1. */
  readonly usual: number
}

/**
 * Share of the water of shots that a counter told, as near to the usual as one step of it allows: what a sum of them leaves open is less than one.
 * Null where it did not tell of each.
 */
export function shareOf(shots: readonly ShotEvidence[], { share: of, step, usual }: OfCounter): number | null {
  let told = 0
  for (const shot of shots) {
    const share = of(shot)
    if (share === null) return null
    told += share * shot.volume
  }
  const volume = volumeOf(shots)
  if (!(volume > 0)) return null
  const [share, error] = [told / volume, step / volume]
  return Math.min(share + error, Math.max(share - error, usual))
}

/** Water of shots together. Unit: L. */
export function volumeOf(shots: readonly Pick<ShotEvidence, 'volume'>[]): number {
  return shots.reduce((sum, { volume }) => sum + volume, 0)
}

/** How many of the last shots, and at least so many, a counter can tell of; null where all of them are too little water. */
export function shotsToldBy(shots: readonly ShotEvidence[], step: number, min: number): number | null {
  let volume = 0
  for (let k = 1; k <= shots.length; k++) {
    volume += shots[shots.length - k]!.volume
    if (k >= min && tells(step, volume)) return k
  }
  return null
}
