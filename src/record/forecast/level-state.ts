import { READING_TIME } from '../../quantity/domains.js'
import type { Reducer } from '../../quantity/reducer.js'
import { type StateReader, stateReader } from '../restore-state.js'
import { restoredShotWatch, type ShotWatchState, type WaterContentReading } from '../shots/watch-shots.js'
import { BIN, BINS, type ClockFalls, newFalls } from './clock-rates.js'
import { MAX_POINTS, type RecentPoint } from './recent-level.js'
import { newRing, restoredRing, type ScoreRing } from './score-ring.js'

/** What is known of a level. */
export interface LearntLevel {
  /** What was learnt, by the reducer of `forecastLevel`. */
  readonly state: LevelState
}

/** Where a probe stands: nothing to go by, in the rise of a shot, draining after one, or drying. */
export type LevelPhase = 'no-reading' | 'shot' | 'draining' | 'drying'

/** A moment of a dry-down from which the forecasts are tried afterwards. */
export interface ReplayPoint {
  /** Time of it. Unit: s. Range: any. */
  readonly time: number
  /** Level then. Unit: m³/m³. Range: any. */
  readonly level: number
}

/** The dry-down that is under way. */
export interface DryDownSoFar {
  /** Time of its first reading. Unit: s. Range: any. */
  readonly start: number
  /** Water content of its first reading. Unit: m³/m³. Range: any. */
  readonly from: number
  /** First border between two half hours in it. Unit: s. Range: any. */
  readonly border: number
  /** Levels at this border and those after it, each a quarter of an hour late. Unit: m³/m³. Range: any. */
  readonly levels: readonly number[]
  /** The newest readings, put together. */
  readonly recent: readonly RecentPoint[]
  /** Moments from which it is replayed when it has ended. */
  readonly replay: readonly ReplayPoint[]
}

/** What is remembered of a probe; plain data of at most about 7 kB, most of it for the shots of a quick record. */
export interface LevelState {
  /** What the search for shots remembers. */
  readonly shots: ShotWatchState
  /** Drain has stopped from this time on. Unit: s. Range: any. */
  readonly settled: number | null
  /** The dry-down that is under way. */
  readonly dryDown: DryDownSoFar | null
  /** Fall in each half hour of the day. Unit: m³/m³ in half an hour. Range: any. */
  readonly falls: ClockFalls
  /** Fall of a usual dry-down. Unit: m³/m³. Range: any. */
  readonly usualFall: number
  /** Dry-downs that were learnt from. Unit: 1. Range: any. */
  readonly dryDowns: number
  /** Misses of forecasts by how far ahead they looked: up to 1.5, 3 and 6 hours, and farther. */
  readonly rings: readonly ScoreRing[]
}

/** Learns how a probe dries and foresees it. */
export interface LevelForecaster extends Reducer<LevelState, WaterContentReading, LevelPhase> {
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => LevelState
}

const PRIOR_SPREAD = 0.12
/** A dry-down is learnt from, and the next one begun, after a day. */
export const MAX_LEVELS = 49

export function newLevelState(shots: ShotWatchState): LevelState {
  const ring = newRing(PRIOR_SPREAD, 'both')
  return {
    shots,
    settled: null,
    dryDown: null,
    falls: newFalls(),
    usualFall: 0,
    dryDowns: 0,
    rings: [ring, ring, ring, ring],
  }
}

/** No level and no fall that somebody read is larger, in per cent even; a kept number that is was changed. */
const MAX_KEPT = 100

/** A state that was kept as JSON, checked. */
export function restoredLevelState(stored: unknown): LevelState {
  const reader = stateReader(stored)
  const rings = reader.list('rings', 4, restoredRing)
  if (rings.length !== 4) reader.refuse('rings', `has ${rings.length} entries, not 4`)
  const shots = reader.inside('shots', restoredShotWatch)
  const dryDown = reader.insideOrNull('dryDown', restoredDryDown)
  if (dryDown !== null && !(shots.last !== null && shots.last >= dryDown.start && shots.last <= lastOf(dryDown.start)))
    reader.refuse('dryDown', 'is not the one of the last reading')
  return {
    shots,
    settled: reader.numberOrNull('settled'),
    dryDown,
    falls: fallsIn(reader),
    usualFall: reader.number('usualFall', 0, MAX_KEPT),
    dryDowns: reader.count('dryDowns'),
    rings,
  }
}

function fallsIn(reader: StateReader): ClockFalls {
  const falls = reader.numbersOrNulls('falls', BINS)
  const isOff = falls.some((fall) => fall !== null && Math.abs(fall) > MAX_KEPT)
  return isOff ? reader.refuse('falls', 'holds a fall that nothing falls by') : falls
}

/** A dry-down goes on for no longer: the next one has begun by then. */
function lastOf(start: number): number {
  return start + (MAX_LEVELS + 2) * BIN
}

function restoredDryDown(reader: StateReader): DryDownSoFar {
  const start = reader.number('start', READING_TIME.min, READING_TIME.max)
  const last = lastOf(start)
  const recent = reader.list(
    'recent',
    MAX_POINTS,
    (point): RecentPoint => [
      point.number('0', start, last),
      point.number('1', -MAX_KEPT, MAX_KEPT),
      point.number('2', 1),
    ],
  )
  if (recent.length === 0) reader.refuse('recent', 'is empty')
  const border = reader.number('border')
  if (border < start || border > start + 1800) reader.refuse('border', 'does not follow the start')
  return {
    start,
    from: reader.number('from', -MAX_KEPT, MAX_KEPT),
    border,
    levels: reader.numbers('levels', MAX_LEVELS, -MAX_KEPT, MAX_KEPT),
    recent,
    replay: reader.list('replay', 2, (point) => ({
      time: point.number('time', start, last),
      level: point.number('level', -MAX_KEPT, MAX_KEPT),
    })),
  }
}
