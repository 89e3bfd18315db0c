import { READING_TIME } from '../../quantity/domains.js'
import { numberIn } from '../../quantity/guard.js'
import { expectedFalls } from './clock-rates.js'
import { factorOf, MIN_DRY_DOWNS } from './learn-dry-down.js'
import type { LevelState } from './level-state.js'
import { levelAt, type RecentPoint } from './recent-level.js'

/** Why nothing is foreseen. */
export interface UnknownForecast {
  readonly known: false
  /**
   * `no-reading`: nothing came yet; `shot`: water is being given; `draining`: drain is not over, and its fall is no use;
   * `few-dry-downs`: fewer than three dry-downs of two hours were seen.
   */
  readonly reason: 'no-reading' | 'shot' | 'draining' | 'few-dry-downs'
}

/** Where the dry-down stands at its last reading, and how much quicker it goes than usual. */
export type PresentLevel =
  | { readonly known: true; readonly time: number; readonly level: number; readonly factor: number }
  | UnknownForecast

export function whereNow(state: LevelState): PresentLevel {
  const { shots, settled, dryDown, dryDowns } = state
  if (shots.last === null || settled === null) return { known: false, reason: 'no-reading' }
  if (shots.rise !== null) return { known: false, reason: 'shot' }
  if (dryDown === null) return { known: false, reason: 'draining' }
  if (dryDowns < MIN_DRY_DOWNS) return { known: false, reason: 'few-dry-downs' }
  const time = numberIn(shots.last, READING_TIME, 'state.shots.last')
  const level = levelAt(dryDown.recent as readonly RecentPoint[], time)
  return { known: true, time, level, factor: factorOf(state, expectedFalls(state.falls), dryDown, time, level) }
}
