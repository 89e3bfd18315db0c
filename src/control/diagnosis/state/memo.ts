import type { Suspicion } from '../cause/cause.js'
import type { NightEvidence } from '../watch/watch-night.js'
import type { RecentShots } from './recent-shots.js'
import type { UsualShares } from './zone-state.js'

/** What was worked out of lists that change with a shot or a night only, though it is asked at every moment. */
export interface Memo {
  readonly shots: WeakMap<object, OfShots>
  /** Usual falls of the probes. */
  readonly nights: WeakMap<object, readonly (number | null)[]>
  /** The nights before the last one. */
  readonly earlier: WeakMap<object, readonly NightEvidence[]>
}

/** What a list of shots says beside what is usual. */
export interface OfShots {
  readonly usual: UsualShares
  readonly jumped: readonly boolean[]
  readonly recent: RecentShots
  /** By whether the zone is full. */
  readonly water: Map<boolean | null, readonly Suspicion[]>
  readonly drain: readonly Suspicion[]
}

export function newMemo(): Memo {
  return { shots: new WeakMap(), nights: new WeakMap(), earlier: new WeakMap() }
}
