import type { WaterContent, WaterContentChange } from '../quantity/generated/water-content.js'
import { checkedLimits, type FoundShot, type ShotLimits } from './find-shots.js'
import type { Reducer } from './reducer.js'
import type { StateReader } from './restore-state.js'

/** One reading of a record as it comes in. */
export interface ContentReading {
  /** Time of the reading. Unit: s. */
  readonly time: number
  /** Water content; NaN where the reading is missing or not to be trusted. Unit: m³/m³. */
  readonly content: number
}

/** A reading that may be the foot of a rise: its position, time and water content. */
type Foot = readonly [index: number, time: number, content: number]

/** What is remembered between two readings. It holds no more than the readings of one longest rise. */
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
export interface ShotWatch extends Reducer<ShotWatchState, ContentReading, readonly FoundShot[]> {
  /** The shot that was under way when the record ended, if there was one. */
  readonly finish: (state: ShotWatchState) => readonly FoundShot[]
}

/**
 * Finds shots in readings that come in one by one, as `findShots` finds them in a whole record. The state can be kept as JSON at any
 * step; it does not grow with the record.
 *
 * @procedure Keeps the lowest readings of the longest rise and the rise that is under way; a shot is told when it has ended.
 * @param limits - What counts as a shot.
 * @returns A reducer that takes readings and gives the shots that ended with each.
 * @throws `DomainError` outside the ranges.
 * @source common practice, no source
 * @example
 * ```ts
 * const watch = watchShots({ minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) })
 * const readings = [0.5, 0.499, 0.52, 0.53, 0.528, 0.527, 0.52].map((content, i) => ({ time: 300 * i, content }))
 * runReducer({ reducer: watch, inputs: readings }).outputs.flat() // => [{ start: 300, peak: 900, rise: 0.031 }]
 * ```
 */
export function watchShots(limits: ShotLimits): ShotWatch {
  const { least, longest, step } = checkedLimits(limits)
  const close = (state: ShotWatchState): FoundShot[] =>
    state.rise !== null && state.rise.above > 1 ? [shotOf(state.rise.foot, state.rise.top)] : []
  return {
    start: { count: 0, last: null, feet: [], rise: null },
    finish: close,
    step: (state, { time, content }) => {
      const count = state.count + 1
      if (Number.isNaN(content)) return [{ ...state, count }, []]
      const here: Foot = [state.count, time, content]
      const passed = state.last === null ? 0 : time - state.last
      if (state.last !== null && !(passed > 0 && passed <= step))
        return [{ count, last: time, feet: [here], rise: null }, close(state)]
      if (state.rise === null) {
        const feet = withFoot(state.feet, here, longest)
        const foot = feet[0] as Foot
        const rise = content - foot[2] >= least ? { foot: lastFoot(feet, least), top: here, above: 1 } : null
        return [{ count, last: time, feet, rise }, []]
      }
      const { foot, top } = state.rise
      const rise = { ...state.rise, above: state.rise.above + (content >= foot[2] + least / 2 ? 1 : 0) }
      if (content > top[2] && time - foot[1] <= longest)
        return [{ ...state, count, last: time, rise: { ...rise, top: here } }, []]
      const ended = time - top[1] > longest / 3 || content < top[2] - least / 2
      return ended
        ? [{ count, last: time, feet: [here], rise: null }, close({ ...state, rise })]
        : [{ ...state, count, last: time, rise }, []]
    },
  }
}

/** Readings too old to be the foot of a rise leave at the front, those that are not lower than the new one at the back. */
function withFoot(feet: readonly Foot[], here: Foot, longest: number): Foot[] {
  let first = 0
  while (first < feet.length && here[1] - (feet[first] as Foot)[1] > longest) first++
  let end = feet.length
  while (end > first && (feet[end - 1] as Foot)[2] >= here[2]) end--
  const kept = feet.slice(first, end)
  kept.push(here)
  return kept
}

/** The last reading that was as low as the lowest, to a quarter of the least rise. */
function lastFoot(feet: readonly Foot[], least: number): Foot {
  let k = feet.length - 2
  while (k > 0 && !((feet[k] as Foot)[2] <= (feet[0] as Foot)[2] + least / 4)) k--
  return feet[Math.max(0, k)] as Foot
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

/** A rise takes a day at most; with a reading each second its feet are that many. */
const MAX_FEET = 86401

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
