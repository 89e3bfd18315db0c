import type { Duration, Volume, WaterContentChange } from '../../quantity/generated/kinds.js'
import type { DailyUseState } from '../../record/forecast/daily-use-state.js'
import { forecastDailyUse } from '../../record/forecast/forecast-daily-use.js'
import { forecastLevel } from '../../record/forecast/forecast-level.js'
import { levelSearch, searchFrom } from '../../record/forecast/level-search.js'
import type { LevelState } from '../../record/forecast/level-state.js'
import { type CheckedProbe, maxRiseTimeOf, maxStepOf } from '../probes/check-probe.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'
import type { WaterBalance } from '../water/water-balance.js'
import type { DayLight } from '../weather/light-of-day.js'
import type { Zone } from '../zone.js'

/** What the trusted readings of a day teach of how a probe dries. */
export function learnDrying(
  zone: Zone,
  { day, time }: ZoneWindow,
  { waterContent }: CheckedProbe,
  before: LevelState | undefined,
): LevelState {
  const settings = {
    minRise: zone.limits.minRise as WaterContentChange,
    maxRiseTime: maxRiseTimeOf(zone),
    maxStep: maxStepOf(zone),
    drainTime: 2400 as Duration,
  }
  const advance = levelSearch(settings)
  const search = searchFrom(before ?? forecastLevel(settings).start)
  for (let i = firstAt(time, day.from); i < time.length; i++) advance(search, time[i]!, waterContent[i]!)
  return search
}

/** What a day teaches of the use of water. A use that its drain gauge makes doubtful teaches nothing. */
export function learnUse(
  before: DailyUseState,
  balance: WaterBalance,
  light: DayLight,
  believed: boolean,
  expectedRadiation: number | undefined,
): DailyUseState {
  const use = balance.use.known && believed ? (balance.use.value as Volume) : null
  const mean = light.course.reduce((sum, x) => sum + x, 0) / light.course.length
  const radiation = light.source === 'assumed' ? null : mean
  return forecastDailyUse<Volume>().step(before, { use, radiation, expectedRadiation: expectedRadiation ?? null })[0]
}
