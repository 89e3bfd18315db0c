import { requireObject } from '../../quantity/guard.js'
import { isMissing } from '../../quantity/missing.js'
import { watchShots } from '../shots/watch-shots.js'
import { type ForecastLevelSettings, levelSearch, searchFrom } from './level-search.js'
import {
  type LevelForecaster,
  type LevelPhase,
  type LevelState,
  newLevelState,
  restoredLevelState,
} from './level-state.js'

/**
 * Learns from readings of water content how a probe dries by the clock and how tonight differs, so that `forecastTimeToLevel` and `fallAhead`
 * foresee it with intervals that were measured to hold. Shots are found on the way. The state is plain data, does not grow with the
 * record, and can be kept as JSON at any step.
 *
 * The rate r of each half hour of the day is learnt from dry-downs that have ended, the newest weighing most, and drawn
 * half-way to its neighbours; the factor f of tonight is drawn to 1 by a usual fall. A dry-down begins when a shot has drained, ends at the next shot or gap, and is cut after a
 * day. Times may follow any clock that goes on evenly; a clock change is a night to get used to. An offset of the probe changes nothing.
 *
 * @equation `\hat F(t, t+h) = f \int_t^{t+h} r(s)\,ds, \qquad f = \frac{F_{tonight} + \bar F}{\int r + \bar F}`
 * @returns A reducer that takes readings and tells what the probe is doing: `no-reading`, `shot`, `draining` or `drying`. Its `restore`
 *   checks a state that was kept as JSON.
 * @throws `DomainError` outside the ranges, and for a time that cannot be seconds.
 * @validity Tried on nine months of nights of four probes in slabs; a medium that is watered more often than it settles teaches nothing.
 * @source The bands: gibbs-2021; the rest: common practice, no source
 * @example
 * const forecaster = forecastLevel({ minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(30) })
 * const night = (k: number) => 0.6 - 0.002 * (k % 96) + (k % 96 === 95 ? 0.1 : 0)
 * const inputs = Array.from({ length: 600 }, (_, k) => ({ time: 900 * k, waterContent: night(k) }))
 * const { state, outputs } = runReducer({ reducer: forecaster, inputs })
 * outputs.at(-1) // => 'drying'
 * state.dryDowns // => 6
 * forecastTimeToLevel({ state, level: waterContent(0.55) }).known // => true
 */
export function forecastLevel(settings: ForecastLevelSettings): LevelForecaster {
  requireObject(settings, 'settings')
  const watch = watchShots(settings)
  const advance = levelSearch(settings)
  return {
    start: newLevelState(watch.start),
    restore: restoredLevelState,
    step: (state, reading) => {
      if (isMissing(reading.time, 'time') || isMissing(reading.waterContent, 'waterContent'))
        return [state, phaseOf(state)]
      const search = searchFrom(state)
      advance(search, reading.time, reading.waterContent)
      return [search, phaseOf(search)]
    },
  }
}

function phaseOf({ shots, settled, dryDown }: LevelState): LevelPhase {
  if (shots.last === null || settled === null) return 'no-reading'
  if (shots.rise !== null) return 'shot'
  return dryDown === null ? 'draining' : 'drying'
}
