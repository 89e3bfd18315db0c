import { READING_TIME } from '../../quantity/domains.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr } from '../../quantity/guard.js'
import { isMissing } from '../../quantity/missing.js'
import { SETTLE_TIME } from '../domains.js'
import { type ShotLimits, type ShotSearch, shotSearch } from '../shots/watch-shots.js'
import { BIN, type ClockFalls, nextBorder } from './clock-rates.js'
import { learntFrom } from './learn-dry-down.js'
import { type DryDownSoFar, type LevelState, MAX_LEVELS } from './level-state.js'
import { addReading, levelAt, type RecentPoint } from './recent-level.js'
import type { ScoreRing } from './score-ring.js'

/** What counts as a shot, and when drain after it has stopped. */
export interface ForecastLevelSettings extends ShotLimits {
  /** Time after the peak of a shot until drain has stopped; an hour by default. Unit: s. Range: [0, 86400]. */
  readonly drainTime?: Duration
}

/** A level is known from readings to both sides: so long after a border between two half hours it is taken. Unit: s. */
const LATE = 900
/** From these moments of a dry-down its forecasts are tried when it has ended. Unit: s. */
const REPLAY: readonly number[] = [7200, 16200]

/** A dry-down that is changed in place. */
interface DryDownSearch extends DryDownSoFar {
  levels: readonly number[]
  readonly recent: RecentPoint[]
  replay: DryDownSoFar['replay']
}

/** A state that is changed in place, so that a whole record makes no state for each of its readings. */
export interface LevelSearch extends LevelState {
  readonly shots: ShotSearch
  settled: number | null
  dryDown: DryDownSearch | null
  falls: ClockFalls
  usualFall: number
  dryDowns: number
  rings: readonly ScoreRing[]
}

/** A search that goes on from a state and leaves it as it is. Written out, because it is made for each reading of a stream. */
export function searchFrom({ shots, settled, dryDown, falls, usualFall, dryDowns, rings }: LevelState): LevelSearch {
  const { count, last, feet, rise } = shots
  return {
    shots: { count, last, feet: feet.slice(), rise },
    settled,
    dryDown: dryDown === null ? null : goingOn(dryDown),
    falls,
    usualFall,
    dryDowns,
    rings,
  }
}

function goingOn({ start, from, border, levels, recent, replay }: DryDownSoFar): DryDownSearch {
  return { start, from, border, levels, recent: recent.slice(), replay }
}

/** Takes readings into a search, for these settings. */
export function levelSearch(
  settings: ForecastLevelSettings,
): (search: LevelSearch, time: number, waterContent: number) => void {
  const drainTime = numberIn(optionOr(settings.drainTime, 3600), SETTLE_TIME, 'drainTime')
  const { maxStep } = settings
  const advance = shotSearch(settings)
  return (search, time, waterContent) => {
    if (isMissing(time, 'time') || isMissing(waterContent, 'waterContent')) return
    numberIn(time, READING_TIME, 'time')
    const { last } = search.shots
    const ended = advance(search.shots, time, waterContent)
    if (ended.length > 0) {
      const { start, peak } = ended[ended.length - 1]!
      close(search, start)
      search.settled = peak + drainTime
    }
    // What happened in a gap nobody knows: there may have been a shot.
    if (last === null || !(time > last && time - last <= maxStep)) {
      close(search, Infinity)
      search.settled = time + drainTime
    }
    if (search.shots.rise !== null || search.settled === null || time < search.settled) return
    dry(search, time, waterContent)
  }
}

function dry(search: LevelSearch, time: number, waterContent: number): void {
  const { dryDown } = search
  if (dryDown === null) {
    search.dryDown = begun(time, waterContent)
    return
  }
  grow(dryDown, time, waterContent)
  if (dryDown.levels.length < MAX_LEVELS) return
  learn(search, dryDown)
  search.dryDown = begun(time, waterContent)
}

/** Ends the dry-down under way, at the foot of a shot or at its last reading. */
function close(search: LevelSearch, foot: number): void {
  const { dryDown } = search
  if (dryDown === null) return
  // Readings after the foot were taken in before the rise showed: what they touched is worked out again without them.
  const recent = dryDown.recent.filter(([time]) => time <= foot)
  const end = recent[recent.length - 1]?.[0] ?? Number.NEGATIVE_INFINITY
  const levels = dryDown.levels.filter((_, k) => dryDown.border + k * BIN + LATE <= foot)
  for (let border = dryDown.border + levels.length * BIN; border <= end; border += BIN)
    levels.push(levelAt(recent, border))
  learn(search, { ...dryDown, levels })
  search.dryDown = null
}

function learn(search: LevelSearch, dryDown: DryDownSoFar): void {
  const { falls, usualFall, dryDowns, rings } = learntFrom(search, dryDown)
  search.falls = falls
  search.usualFall = usualFall
  search.dryDowns = dryDowns
  search.rings = rings
}

function begun(time: number, waterContent: number): DryDownSearch {
  const border = time % BIN === 0 ? time : nextBorder(time)
  return { start: time, from: waterContent, border, levels: [], recent: [[time, waterContent, 1]], replay: [] }
}

function grow(dryDown: DryDownSearch, time: number, waterContent: number): void {
  const { start, border, recent } = dryDown
  addReading(recent, time, waterContent)
  for (let next = border + dryDown.levels.length * BIN; time >= next + LATE; next += BIN) {
    if (dryDown.levels.length >= MAX_LEVELS) break
    dryDown.levels = [...dryDown.levels, levelAt(recent, next)]
  }
  const wanted = REPLAY[dryDown.replay.length]
  if (wanted !== undefined && time - start >= wanted)
    dryDown.replay = [...dryDown.replay, { time, level: levelAt(recent, time) }]
}
