import type { WaterContent } from '../../quantity/generated/kinds.js'
import { waterUseAhead } from '../../record/forecast/fall-ahead.js'
import { forecastTimeToLevel } from '../../record/forecast/forecast-time-to-level.js'
import type { LevelState } from '../../record/forecast/level-state.js'
import type { ProbeDay } from '../day/zone-day.js'
import type { LevelLimits } from '../day/zone-levels.js'
import type { Zone } from '../zone.js'

/** What is foreseen of a probe: where its level leads only if it counts, what its container uses also while the day goes on. */
export function foreseen(
  { container }: Zone,
  state: LevelState,
  own: LevelLimits | undefined,
  doubted: boolean,
): Pick<ProbeDay, 'timeToRefill' | 'nextHour'> {
  const none = { known: false, reason: 'not-used' } as const
  return {
    timeToRefill: own === undefined ? none : forecastTimeToLevel({ state, level: own.refillPoint as WaterContent }),
    nextHour: doubted ? none : waterUseAhead({ state, substrateVolume: container.substrateVolume }),
  }
}
