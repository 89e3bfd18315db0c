import type { Domain } from '../../quantity/domain.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { isMissing } from '../missing.js'
import {
  type FoundShot,
  type ShotLimits,
  type ShotWatchState,
  type WaterContentReading,
  watchShots,
} from '../watch-shots.js'
import { BIN, nextBorder } from './clock-rates.js'
import { learntFrom } from './learn-dry-down.js'
import {
  type DryDownSoFar,
  type LevelForecaster,
  type LevelPhase,
  type LevelState,
  MAX_LEVELS,
  newLevelState,
  restoredLevelState,
} from './level-state.js'
import { levelAt, withReading } from './recent-level.js'

const SETTLE: Domain = {
  quantity: 'time to drain',
  unit: 's',
  min: 0,
  max: 86400,
  ends: '[]',
  hint: 'give the time after the peak of a shot in which drain stops: half an hour to two hours',
}
const TIME: Domain = {
  quantity: 'time of a reading',
  unit: 's',
  min: -100000000000,
  max: 100000000000,
  ends: '[]',
  hint: 'give seconds, not milliseconds',
}

/** What counts as a shot, and when drain after it has stopped. */
export interface ForecastLevelSettings extends ShotLimits {
  /** Time after the peak of a shot until drain has stopped; an hour by default. Unit: s. Range: [0, 86400]. */
  readonly settle?: Duration
}

/** A level is known from readings to both sides: so long after a border between two half hours it is taken. Unit: s. */
const LATE = 900
/** From these moments of a dry-down its forecasts are tried when it has ended. Unit: s. */
const REPLAY: readonly number[] = [7200, 16200]

/**
 * Learns from readings of water content how a probe dries by the clock and how tonight differs, so that `timeUntilLevel` and `fallAhead`
 * foresee it with intervals that were measured to hold. Shots are found on the way. The state is plain data, does not grow with the
 * record, and can be kept as JSON at any step.
 *
 * ```math
 * \hat F(t, t+h) = f \int_t^{t+h} r(s)\,ds, \qquad f = \frac{F_{tonight} + \bar F}{\int r + \bar F}
 * ```
 *
 * The rate r of each half hour of the day is learnt from dry-downs that have ended, the newest weighing most, and drawn
 * half-way to its neighbours; the factor f of tonight is drawn to 1 by a usual fall. A dry-down begins when a shot has drained, ends at the next shot or gap, and is cut after a
 * day. Times may follow any clock that goes on evenly; a clock change is a night to get used to. An offset of the probe changes nothing.
 *
 * @param settings - What counts as a shot, and the time to drain.
 * @returns A reducer that takes readings and tells what the probe is doing: `no-reading`, `shot`, `draining` or `drying`. Its `restore`
 *   checks a state that was kept as JSON.
 * @throws `DomainError` outside the ranges, and for a time that cannot be seconds.
 * @validity Tried on nine months of nights of four probes in slabs; a medium that is watered more often than it settles teaches nothing.
 * @source The bands: gibbs-2021; the rest: common practice, no source
 * @example
 * ```ts
 * const forecaster = forecastLevel({ minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(30) })
 * const night = (k: number) => 0.6 - 0.002 * (k % 96) + (k % 96 === 95 ? 0.1 : 0)
 * const inputs = Array.from({ length: 600 }, (_, k) => ({ time: 900 * k, waterContent: night(k) }))
 * const { state, outputs } = runReducer({ reducer: forecaster, inputs })
 * outputs.at(-1) // => 'drying'
 * state.dryDowns // => 6
 * timeUntilLevel({ state, level: waterContent(0.55) }).known // => true
 * ```
 */
export function forecastLevel(settings: ForecastLevelSettings): LevelForecaster {
  requireObject(settings, 'settings')
  const watch = watchShots(settings)
  const settle = numberIn(settings.settle ?? 3600, SETTLE, 'settle')
  return {
    start: newLevelState(watch.start),
    restore: restoredLevelState,
    step: (state, reading) => {
      if (isMissing(reading.time) || isMissing(reading.waterContent)) return [state, phaseOf(state)]
      numberIn(reading.time, TIME, 'time')
      const [shots, ended] = watch.step(state.shots, reading)
      const before = ended.length === 0 ? state : afterShot(state, ended[ended.length - 1]!)
      const next = advanced(before, shots, reading)
      return [next, phaseOf(next)]
    },
  }

  function afterShot(state: LevelState, { start, peak }: FoundShot): LevelState {
    return { ...closed(state, start), settled: peak + settle }
  }

  function advanced(state: LevelState, shots: ShotWatchState, { time, waterContent }: WaterContentReading): LevelState {
    const { last } = state.shots
    // What happened in a gap nobody knows: there may have been a shot.
    const gap = last === null || !(time > last && time - last <= settings.maxStep)
    const now = gap ? { ...closed(state), settled: time + settle } : state
    if (shots.rise !== null || now.settled === null || time < now.settled) return withPart(now, shots, now.dryDown)
    const dryDown = now.dryDown === null ? begun(time, waterContent) : grown(now.dryDown, time, waterContent)
    if (dryDown.levels.length < MAX_LEVELS) return withPart(now, shots, dryDown)
    return withPart(learntFrom(now, dryDown), shots, begun(time, waterContent))
  }
}

/** The state with what changes at every reading; written out, because it is made for each of them. */
function withPart(state: LevelState, shots: ShotWatchState, dryDown: DryDownSoFar | null): LevelState {
  const { settled, falls, usualFall, dryDowns, rings } = state
  return { shots, settled, dryDown, falls, usualFall, dryDowns, rings }
}

function phaseOf({ shots, settled, dryDown }: LevelState): LevelPhase {
  if (shots.last === null || settled === null) return 'no-reading'
  if (shots.rise !== null) return 'shot'
  return dryDown === null ? 'draining' : 'drying'
}

/** The state after the dry-down under way has ended, at the foot of a shot or at its last reading. */
function closed(state: LevelState, foot = Infinity): LevelState {
  const { dryDown } = state
  if (dryDown === null) return state
  // Readings after the foot were taken in before the rise showed: what they touched is worked out again without them.
  const recent = dryDown.recent.filter(([time]) => time <= foot)
  const end = recent[recent.length - 1]?.[0] ?? Number.NEGATIVE_INFINITY
  const levels = dryDown.levels.filter((_, k) => dryDown.border + k * BIN + LATE <= foot)
  for (let border = dryDown.border + levels.length * BIN; border <= end; border += BIN)
    levels.push(levelAt(recent, border))
  return { ...learntFrom(state, { ...dryDown, levels }), dryDown: null }
}

function begun(time: number, waterContent: number): DryDownSoFar {
  const border = time % BIN === 0 ? time : nextBorder(time)
  return { start: time, from: waterContent, border, levels: [], recent: [[time, waterContent, 1]], replay: [] }
}

function grown(dryDown: DryDownSoFar, time: number, waterContent: number): DryDownSoFar {
  const recent = withReading(dryDown.recent, time, waterContent)
  const { start, from, border } = dryDown
  let { levels, replay } = dryDown
  for (let next = border + levels.length * BIN; time >= next + LATE && levels.length < MAX_LEVELS; next += BIN)
    levels = [...levels, levelAt(recent, next)]
  const wanted = REPLAY[replay.length]
  if (wanted !== undefined && time - start >= wanted) replay = [...replay, { time, level: levelAt(recent, time) }]
  return { start, from, border, levels, recent, replay }
}
