import type { Duration, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { isMissing } from '../../quantity/missing.js'
import type { Reducer } from '../../quantity/reducer.js'
import { MAX_RISE_TIME, MAX_STEP, MIN_RISE } from '../domains.js'
import { type StateReader, stateReader } from '../restore-state.js'
import type { FollowedStep, ReadingTime } from '../terms.js'

/** Shots of a series. */
export interface KnownShots {
  /** The shots in the series, made by `findShots`. */
  readonly shots: readonly FoundShot[]
}

/** Shots of a series, and when each has drained. */
export interface DrainedShots extends KnownShots {
  /** Time after the peak at which drain has stopped. Unit: s. Range: (0, 86400]. */
  readonly drainTime: Duration
}

/** What counts as a shot. */
export interface ShotLimits extends FollowedStep {
  /** Smaller rises are noise. Unit: m³/m³. Range: (0, 1]. */
  readonly minRise: WaterContentChange
  /** The rise of one shot takes no longer. Unit: s. Range: (0, 86400]. */
  readonly maxRiseTime: Duration
}

/** A rise of the water content that a shot made. */
export interface FoundShot {
  /** Position of the last reading before the rise. Unit: 1. */
  readonly startIndex: number
  /** Position of the highest reading. Unit: 1. */
  readonly peakIndex: number
  /** Time of the last reading before the rise. Unit: s. */
  readonly start: number
  /** Time of the highest reading. Unit: s. */
  readonly peak: number
  /** Water content before. Unit: m³/m³. */
  readonly before: WaterContent
  /** Highest water content. Unit: m³/m³. */
  readonly top: WaterContent
  /** By how much it rose. Unit: m³/m³. */
  readonly rise: WaterContentChange
}

/** One reading of a record as it comes in. */
export interface WaterContentReading extends ReadingTime {
  /** Water content; NaN, or null from JSON, where the reading is missing or not to be trusted. Unit: m³/m³. */
  readonly waterContent: number
}

/** A reading that may be the foot of a rise: its position, time and water content. */
type Foot = readonly [index: number, time: number, waterContent: number]

/** What is remembered between two readings: 64 of them at most. */
export interface ShotWatchState {
  /** Readings so far. Unit: 1. Range: any. */
  readonly count: number
  /** Time of the last good reading. Unit: s. */
  readonly last: number | null
  /** Lowest readings of the time that a rise may take, oldest and lowest first. */
  readonly feet: readonly Foot[]
  /** The rise that is under way. */
  readonly rise: { readonly foot: Foot; readonly top: Foot; readonly above: number } | null
}

/** `findShots` for readings that come in one by one. */
export interface ShotWatch extends Reducer<ShotWatchState, WaterContentReading, readonly FoundShot[]> {
  /** The shot that was under way when the record ended, if there was one. */
  readonly finish: (state: ShotWatchState) => readonly FoundShot[]
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => ShotWatchState
}

/**
 * Finds shots in readings that come in one by one, as `findShots` finds them in a whole record. The state can be kept as JSON at any
 * step; it does not grow with the record.
 *
 * @procedure Keeps the lowest readings of the longest rise and the rise that is under way; a shot is told when it has ended.
 * @returns A reducer that takes readings and gives the shots that ended with each.
 * @source common practice, no source
 * @example
 * const watch = watchShots({ minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) })
 * const readings = [0.5, 0.499, 0.52, 0.53, 0.528, 0.527, 0.52].map((level, i) => ({ time: 300 * i, waterContent: level }))
 * runReducer({ reducer: watch, inputs: readings }).outputs.flat() // => [{ start: 300, peak: 900, rise: 0.031 }]
 */
export function watchShots(limits: ShotLimits): ShotWatch {
  requireObject(limits, 'limits')
  const advance = shotSearch(limits)
  return {
    start: newShotSearch(),
    finish: ended,
    restore: (stored) => restoredShotWatch(stateReader(stored)),
    step: ({ count, last, feet, rise }, reading) => {
      const state = { count, last, feet: feet.slice(), rise }
      const shots = advance(state, reading.time, reading.waterContent)
      return [state, shots]
    },
  }
}

/** A search that is changed in place, so that a whole record makes no object for each of its readings. */
export interface ShotSearch {
  count: number
  last: number | null
  feet: Foot[]
  rise: ShotWatchState['rise']
}

export function newShotSearch(): ShotSearch {
  return { count: 0, last: null, feet: [], rise: null }
}

/** Takes a reading into a search and gives the shot that ended with it, for these limits. */
export function shotSearch(
  limits: ShotLimits,
): (search: ShotSearch, time: number, waterContent: number) => readonly FoundShot[] {
  const minRise = numberIn(limits.minRise, MIN_RISE, 'minRise')
  const maxRiseTime = numberIn(limits.maxRiseTime, MAX_RISE_TIME, 'maxRiseTime')
  const maxStep = numberIn(limits.maxStep, MAX_STEP, 'maxStep')
  return (search, time, waterContent) => {
    const index = search.count++
    if (isMissing(time, 'time') || isMissing(waterContent, 'waterContent')) return NONE
    const here: Foot = [index, time, waterContent]
    const { last, rise, feet } = search
    search.last = time
    if (last !== null && !(time > last && time - last <= maxStep)) return startAgain(search, here, rise)
    if (rise === null) {
      addFoot(feet, here, maxRiseTime)
      if (waterContent - feet[0]![2] > minRise - TINY)
        search.rise = { foot: lastFoot(feet, minRise), top: here, above: 1 }
      return NONE
    }
    const { foot, top } = rise
    const above = rise.above + (waterContent - foot[2] > minRise / 2 - TINY ? 1 : 0)
    if (waterContent > top[2] + TINY && time - foot[1] <= maxRiseTime) {
      search.rise = { foot, top: here, above }
      return NONE
    }
    const next = { foot, top, above }
    if (time - top[1] > maxRiseTime / 3 || top[2] - waterContent > minRise / 2 + TINY)
      return startAgain(search, here, next)
    search.rise = next
    return NONE
  }
}

/** The search goes on from a reading; what rise there was has ended. */
function startAgain(search: ShotSearch, here: Foot, rise: ShotWatchState['rise']): readonly FoundShot[] {
  search.feet = [here]
  search.rise = null
  return ended({ rise })
}

/** Differences below this are rounding: an offset of the probe must not make or hide a shot. Unit: m³/m³. */
const TINY = 1e-9
/** Feet that are remembered. */
const MAX_FEET = 64
const NONE: readonly FoundShot[] = []

/** A rise that one reading alone shows is a spike. */
export function ended({ rise }: Pick<ShotWatchState, 'rise'>): readonly FoundShot[] {
  return rise !== null && rise.above > 1 ? [shotOf(rise.foot, rise.top)] : NONE
}

/** Readings too old to be the foot of a rise leave at the front, those that are not lower than the new one at the back. */
function addFoot(feet: Foot[], here: Foot, maxRiseTime: number): void {
  let old = 0
  while (old < feet.length && here[1] - feet[old]![1] > maxRiseTime) old++
  let end = feet.length
  while (end > old && feet[end - 1]![2] > here[2] - TINY) end--
  while (feet.length > end) feet.pop()
  if (old > 0) feet.splice(0, old)
  feet.push(here)
  if (feet.length <= MAX_FEET) return
  // In a record by the second every other foot is enough; the lowest and the newest stay.
  let kept = 0
  for (let k = 0; k < feet.length; k++) if (k % 2 === 0 || k === feet.length - 1) feet[kept++] = feet[k]!
  feet.length = kept
}

/** The last reading that was as low as the lowest, to a quarter of the least rise. */
function lastFoot(feet: readonly Foot[], minRise: number): Foot {
  const low = feet[0]![2]
  let k = feet.length - 2
  while (k > 0 && feet[k]![2] - low > minRise / 4 + TINY) k--
  return feet[Math.max(0, k)]!
}

function shotOf(foot: Foot, top: Foot): FoundShot {
  return {
    startIndex: foot[0],
    peakIndex: top[0],
    start: foot[1],
    peak: top[1],
    before: foot[2] as WaterContent,
    top: top[2] as WaterContent,
    rise: (top[2] - foot[2]) as WaterContentChange,
  }
}

/** A state that was kept as JSON, checked. */
export function restoredShotWatch(reader: StateReader): ShotWatchState {
  const foot = (entry: StateReader): Foot => [entry.count('0'), entry.number('1'), entry.number('2')]
  return {
    count: reader.count('count'),
    last: reader.numberOrNull('last'),
    feet: reader.list('feet', MAX_FEET, foot),
    rise: reader.insideOrNull('rise', (rise) => ({
      foot: rise.inside('foot', foot),
      top: rise.inside('top', foot),
      above: rise.count('above'),
    })),
  }
}
