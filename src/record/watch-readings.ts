import { checkReadings, type QualityLimits } from './check-readings.js'
import type { Reducer } from './reducer.js'

/** One reading as it comes in. */
export interface TimedReading {
  /** Time of the reading. Unit: s. */
  readonly time: number
  /** The reading; NaN where it is missing. Unit: that of the series. */
  readonly value: number
}

/** What the tests say of a reading. */
export interface ReadingVerdict {
  /** Its position among all readings. Unit: 1. */
  readonly index: number
  /** Its time. Unit: s. */
  readonly time: number
  /** Most serious flag. Unit: 1. */
  readonly flag: number
  /** Flag of each test that was run. */
  readonly tests: Readonly<Record<string, number>>
}

/** What is remembered between two readings: so many as the tests look back, and no more. A missing reading is null. */
export interface ReadingWatchState {
  /** Readings so far. Unit: 1. */
  readonly count: number
  /** Times of the last readings. Unit: s. */
  readonly time: readonly number[]
  readonly value: readonly (number | null)[]
}

/** `checkReadings` for readings that come in one by one. */
export interface ReadingWatch extends Reducer<ReadingWatchState, TimedReading, readonly ReadingVerdict[]> {
  /** The verdict on the last reading, which has no later neighbour. */
  readonly finish: (state: ReadingWatchState) => readonly ReadingVerdict[]
}

/**
 * Puts readings that come in one by one to the tests of `checkReadings`. Each is judged when the next one has come, because the spike
 * test looks at both neighbours. The state can be kept as JSON at any step; it does not grow with the record.
 *
 * @procedure Keeps the last readings, as many as the flat line test looks back and two more, and tests the last but one among them.
 * @param limits - The tests.
 * @returns A reducer that takes readings and gives the verdict on the one before.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other.
 * @source Integrated Ocean Observing System (2020), Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data (QARTOD), version 2.1 [from memory]
 * @example
 * ```ts
 * const watch = watchReadings({ expectedStep: minutes(5), spike: { suspect: 0.02, fail: 0.05 } })
 * const inputs = [0.54, 0.612, 0.538].map((value, i) => ({ time: 300 * i, value }))
 * const { state, outputs } = runReducer({ reducer: watch, inputs })
 * outputs.flat().map((verdict) => verdict.flag) // => [2, 4]
 * watch.finish(state).map((verdict) => verdict.flag) // => [1]
 * ```
 */
export function watchReadings(limits: QualityLimits): ReadingWatch {
  // Refuses limits that make no sense before the first reading comes.
  checkReadings({ ...limits, time: [], value: [] })
  const memory = (limits.flatLine?.failAfter ?? 0) + 2
  return {
    start: { count: 0, time: [], value: [] },
    step: (state, reading) => {
      const value = Number.isNaN(reading.value) ? null : reading.value
      const next: ReadingWatchState = {
        count: state.count + 1,
        time: [...state.time.slice(-memory), reading.time],
        value: [...state.value.slice(-memory), value],
      }
      return [next, state.count === 0 ? [] : [verdict(limits, next, next.time.length - 2)]]
    },
    finish: (state) => (state.count === 0 ? [] : [verdict(limits, state, state.time.length - 1)]),
  }
}

function verdict(limits: QualityLimits, { count, time, value }: ReadingWatchState, at: number): ReadingVerdict {
  const { flags, tests } = checkReadings({ ...limits, time, value: value.map((x) => x ?? Number.NaN) })
  return {
    index: count - time.length + at,
    time: time[at] as number,
    flag: flags[at] as number,
    tests: Object.fromEntries(Object.entries(tests).map(([name, test]) => [name, test[at] as number])),
  }
}
