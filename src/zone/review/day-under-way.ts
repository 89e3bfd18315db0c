import { waterUseOfNextDay } from '../../record/forecast/forecast-daily-use.js'
import type { DayUnderWay } from '../day/zone-day.js'
import type { ZoneMemory } from '../day/zone-memory.js'
import type { Known } from '../findings/known.js'
import type { CheckedProbe } from '../probes/check-probe.js'
import type { LocalDay } from '../record/local-day.js'
import type { ZoneWindow } from '../record/zone-window.js'
import { waterBalance } from '../water/water-balance.js'
import type { Zone } from '../zone.js'

/** What is known of a day that is not over yet, from the days before it; nothing of one that is over. */
export function dayUnderWay(
  zone: Zone,
  window: ZoneWindow,
  probes: readonly CheckedProbe[],
  memory: ZoneMemory,
  expectedRadiation: number | undefined,
): DayUnderWay | undefined {
  const { now } = window
  if (now === undefined) return undefined
  const light = expectedRadiation !== undefined && { expectedRadiation }
  const use = waterUseOfNextDay({ state: memory.use, ...light })
  return { at: now, ...light, use, usedLately: usedLately(zone, window, probes) }
}

/** The 24 hours before the last reading of a day that is under way; a day that is over by itself. */
export function demandTime({ day, now }: ZoneWindow): LocalDay {
  return now === undefined ? day : { date: day.date, from: now - 86400, to: now }
}

/** What a container used in the 24 hours before the last reading of a day that is under way. */
function usedLately(zone: Zone, window: ZoneWindow, probes: readonly CheckedProbe[]): Known<number> {
  const near = Math.max(1800, zone.readingStep)
  // Both levels are taken before their moment, so that shots which come at the same time every day change neither.
  return waterBalance(zone, { ...window, day: demandTime(window), now: undefined }, probes, [-2 * near, 0]).use
}
