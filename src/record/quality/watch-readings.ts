import { requireObject } from '../../quantity/guard.js'
import type { Reducer } from '../../quantity/reducer.js'
import { type StateReader, stateReader } from '../restore-state.js'
import type { ReadingTime } from '../terms.js'
import { keptReading } from './kept-reading.js'
import { type KeptReading, NO_READINGS, type ReadingWatchState, readingSearch } from './reading-state.js'
import { type QualityLimits, readingTests } from './reading-tests.js'
import { restoredSpread } from './recent-spread.js'
import { MAX_REPEATS, pairsOf } from './repeats.js'

/** One reading as it comes in. */
export interface TimedReading extends ReadingTime {
  /** The reading; NaN, or null from JSON, where it is missing. Unit: that of the series. */
  readonly value: number
}

/** What the tests say of a reading. */
export interface ReadingVerdict extends ReadingTime {
  /** Its position among all readings. Unit: 1. */
  readonly index: number
  /** Most serious flag. Unit: 1. */
  readonly flag: number
  /** Flag of each test that was run. */
  readonly tests: Readonly<Record<string, number>>
}

/** `checkReadings` for readings that come in one by one. */
export interface ReadingWatch extends Reducer<ReadingWatchState, TimedReading, readonly ReadingVerdict[]> {
  /** The verdict on the last reading, which has no later neighbour. */
  readonly finish: (state: ReadingWatchState) => readonly ReadingVerdict[]
  /** A state that was kept as JSON, checked field by field. */
  readonly restore: (stored: unknown) => ReadingWatchState
}

/**
 * Puts readings that come in one by one to the tests of `checkReadings`. Each is judged when the next one has come, because the spike
 * test looks at both neighbours. The state can be kept as JSON at any step; it does not grow with the record.
 *
 * @procedure Keeps the reading that waits, the one before it, and of those before as much as the tests look back on.
 * @returns A reducer that takes readings and gives the verdict on the one before.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other.
 * @source qartod-2016
 * @example
 * const watch = watchReadings({ expectedStep: minutes(5), spike: { suspect: 0.02, fail: 0.05 } })
 * const inputs = [0.54, 0.612, 0.538].map((value, i) => ({ time: 300 * i, value }))
 * const { state, outputs } = runReducer({ reducer: watch, inputs })
 * outputs.flat().map((verdict) => verdict.flag) // => [2, 4]
 * watch.finish(state).map((verdict) => verdict.flag) // => [1]
 */
export function watchReadings(limits: QualityLimits): ReadingWatch {
  requireObject(limits, 'limits')
  const { names, advance } = readingTests(limits)
  const judged = (state: ReadingWatchState, { time, value }: TimedReading) => {
    const flags = new Uint8Array(names.length + 1)
    const search = readingSearch(state)
    advance(search, time, value, flags)
    const { spread, stuck } = search
    const repeats = pairsOf(search.repeats)
    const { count, waiting } = state
    const after = { count: count + 1, before: waiting, waiting: keptReading(time, value), repeats, spread, stuck }
    if (waiting === null) return [after, []] as const
    const tests: Record<string, number> = {}
    for (let k = 0; k < names.length; k++) tests[names[k]!] = flags[k]!
    const verdict = {
      index: count - 1,
      time: waiting.time ?? Number.NaN,
      flag: flags[names.length]!,
      tests,
    }
    return [after, [verdict]] as const
  }
  return {
    start: NO_READINGS,
    step: judged,
    finish: (state) => judged(state, { time: Number.NaN, value: Number.NaN })[1],
    restore: restoredReadingWatch,
  }
}

/** A state that was kept as JSON, checked. */
function restoredReadingWatch(stored: unknown): ReadingWatchState {
  const reader = stateReader(stored)
  const reading = (entry: StateReader): KeptReading => ({
    time: entry.numberOrNull('time'),
    value: entry.numberOrNull('value'),
  })
  return {
    count: reader.count('count'),
    before: reader.insideOrNull('before', reading),
    waiting: reader.insideOrNull('waiting', reading),
    repeats: reader.list('repeats', MAX_REPEATS, (entry) => [entry.number('0'), entry.count('1')] as const),
    spread: reader.inside('spread', restoredSpread),
    stuck: reader.word('stuck', [true, false]),
  }
}
