import type { QualityLimits } from './check-readings.js'
import { moreSerious, QUALITY } from './flags.js'
import { checkedFlat, flatFlag } from './flat-line-test.js'
import { checkedRanges, rangeFlag } from './gross-range-test.js'
import { checkedRate, rateFlag } from './rate-of-change-test.js'
import type { Reducer } from './reducer.js'
import { checkedSpike, spikeFlag } from './spike-test.js'
import { gapFlag, maxGap } from './time-gap-test.js'

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

/** A reading that is kept; null where its value was missing. */
interface Kept {
  /** Its time. Unit: s. */
  readonly time: number
  /** The reading. Unit: that of the series. */
  readonly value: number | null
}

/** What is remembered between two readings: so many as the tests look back, and no more. */
export interface ReadingWatchState {
  /** Readings so far. Unit: 1. */
  readonly count: number
  /** The reading that was judged last. */
  readonly before: Kept | null
  /** The reading that waits for its later neighbour. */
  readonly waiting: Kept | null
  /** Readings before the waiting one since the last missing one, as many as the flat line test looks back. Unit: that of the series. */
  readonly history: readonly number[]
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
 * @procedure Keeps the reading that waits, the one before it, and as many more as the flat line test looks back.
 * @param limits - The tests.
 * @returns A reducer that takes readings and gives the verdict on the one before.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other.
 * @source Integrated Ocean Observing System (2016), Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data (QARTOD), version 2.0
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
  const judge = judgeOf(limits)
  const memory = limits.flatLine?.failAfter ?? 0
  return {
    start: { count: 0, before: null, waiting: null, history: [] },
    step: (state, reading) => {
      const { waiting, history } = state
      const here: Kept = { time: reading.time, value: Number.isNaN(reading.value) ? null : reading.value }
      const next: ReadingWatchState = {
        count: state.count + 1,
        before: waiting,
        waiting: here,
        history: memory === 0 || waiting === null ? [] : remembered(history, waiting.value, memory),
      }
      return [next, waiting === null ? [] : [judge(state, waiting, reading.value)]]
    },
    finish: (state) => (state.waiting === null ? [] : [judge(state, state.waiting, Number.NaN)]),
  }
}

function remembered(history: readonly number[], value: number | null, memory: number): readonly number[] {
  if (value === null) return []
  const kept = history.length < memory ? history.slice() : history.slice(history.length - memory + 1)
  kept.push(value)
  return kept
}

/** The tests, with their limits found to make sense once and for all. */
function judgeOf(limits: QualityLimits) {
  const longest = maxGap({
    expectedStep: limits.expectedStep,
    ...(limits.gapFactor === undefined ? {} : { factor: limits.gapFactor }),
  })
  const ranges = limits.grossRange && checkedRanges(limits.grossRange)
  const spike = limits.spike && checkedSpike(limits.spike)
  const rate = limits.rateOfChange && checkedRate(limits.rateOfChange)
  const flat = limits.flatLine && checkedFlat(limits.flatLine)
  return ({ count, before, history }: ReadingWatchState, { time, value }: Kept, after: number): ReadingVerdict => {
    const x = value ?? Number.NaN
    const last = before?.value ?? Number.NaN
    const step = before === null ? Number.NaN : time - before.time
    const tests: Record<string, number> = { timeGap: before === null ? QUALITY.notEvaluated : gapFlag(step, longest) }
    if (ranges) tests.grossRange = rangeFlag(x, ranges)
    if (spike) tests.spike = spikeFlag(last, x, after, spike)
    if (rate) tests.rateOfChange = rateFlag(last, x, step, rate)
    if (flat) tests.flatLine = flatFlag([...history, x], history.length, flat)
    let flag: number = value === null ? QUALITY.missing : QUALITY.notEvaluated
    for (const name in tests) flag = moreSerious(flag, tests[name] as number)
    return { index: count - 1, time, flag, tests }
  }
}
