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
  /** Drifts by the full times, for the times at which the probes were moved. */
  readonly drifts: WeakMap<object, { readonly moved: readonly number[]; readonly drifts: readonly (Drift | null)[] }>
}

/** How what a probe says of its full container changed. */
export interface Drift {
  /** Unit: m³/m³/d. */
  readonly slope: number
  /** From the first to the last full time. Unit: m³/m³. */
  readonly change: number
  readonly isStraight: boolean
  readonly since: number
  readonly last: number
}

/** What a list of shots says beside what is usual. */
export interface OfShots {
  readonly usual: UsualShares
  readonly jumped: readonly boolean[]
  /** Of meter and gauge. Unit: L. */
  readonly steps: readonly number[]
  readonly recent: RecentShots
  /** By whether the zone is full. */
  readonly water: Map<boolean | null, readonly Suspicion[]>
  readonly drain: readonly Suspicion[]
}

export function newMemo(): Memo {
  return { shots: new WeakMap(), nights: new WeakMap(), earlier: new WeakMap(), drifts: new WeakMap() }
}
