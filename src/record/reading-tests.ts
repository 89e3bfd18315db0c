import { combineFlags, moreSerious, QUALITY } from './flags.js'
import { checkedFlat, type FlatLineInput, flatFlag, flatFlags, type Repeats, withRepeat } from './flat-line-test.js'
import { checkedRanges, type GrossRangeInput, rangeFlag, rangeFlags } from './gross-range-test.js'
import { isMissing } from './missing.js'
import { checkedRate, type RateOfChangeLimits, rateFlag, rateFlags } from './rate-of-change-test.js'
import { newSpread, type RecentSpread, withSpread } from './recent-spread.js'
import { checkedSpike, type SpikeInput, spikeFlag, spikeFlags } from './spike-test.js'
import { isStuck, stuckFlag, stuckFlags } from './stuck-at-end.js'
import type { ExpectedStep } from './terms.js'
import { gapFlag, gapFlags, maxGap } from './time-gap-test.js'

/** Which tests a series of readings is put to. A test without limits is not run. */
export interface QualityLimits extends ExpectedStep {
  /** A step of more than so many times the expected one is a gap; 1.5 by default. Unit: 1. Range: [1, ∞). */
  readonly gapFactor?: number
  /** Limits of the gross range test, as `grossRangeTest` takes them. A jump right to an end of what the sensor can report is suspect until it leaves it. */
  readonly grossRange?: Omit<GrossRangeInput, 'value'>
  /** Limits of the spike test, as `spikeTest` takes them. */
  readonly spike?: Omit<SpikeInput, 'value'>
  /** Limits of the rate of change test, as `rateOfChangeTest` takes them. */
  readonly rateOfChange?: RateOfChangeLimits
  /** Limits of the flat line test, as `flatLineTest` takes them. */
  readonly flatLine?: Omit<FlatLineInput, 'value'>
}

/** A reading that is kept; null where its time or value was missing. */
export interface KeptReading {
  /** Its time. Unit: s. */
  readonly time: number | null
  /** The reading. Unit: that of the series. */
  readonly value: number | null
}

/** What is remembered between two readings: so many as the tests look back, and no more. */
export interface ReadingWatchState {
  /** Readings so far. Unit: 1. */
  readonly count: number
  /** The reading that was judged last. */
  readonly before: KeptReading | null
  /** The reading that waits for its later neighbour. */
  readonly waiting: KeptReading | null
  /** Readings before the waiting one since the last missing one, equal ones put together, as many as the flat line test looks back. */
  readonly repeats: Repeats
  /** Spread of the readings before the waiting one, for the rate of change by standard deviations. */
  readonly spread: RecentSpread
  /** Whether the reading before the waiting one stood at an end of the sensor's range after a jump. */
  readonly stuck: boolean
}

/** The tests, ready to run: one implementation for a series and for a stream. */
export interface ReadingTests {
  /** Names of the tests that are run. */
  readonly names: readonly string[]
  readonly start: ReadingWatchState
  /** Takes in a reading; the flags of the one before it are written into `flags`, the last entry being the most serious. */
  readonly next: (state: ReadingWatchState, reading: KeptReading, flags: Uint8Array) => ReadingWatchState
  /** The flags of a whole series by the names of the tests, as `next` gives them one by one, and the most serious of each reading. */
  readonly series: (time: ArrayLike<number>, value: ArrayLike<number>) => SeriesFlags
}

/** Flags of a series. */
export interface SeriesFlags {
  readonly flags: Uint8Array
  readonly tests: Readonly<Record<string, Uint8Array>>
}

const NOTHING: KeptReading = { time: null, value: null }

/** The tests, with their limits found to make sense once and for all. */
export function readingTests(limits: QualityLimits): ReadingTests {
  const tests = checkedTests(limits)
  return {
    names: tests.names,
    start: { count: 0, before: null, waiting: null, repeats: [], spread: newSpread(), stuck: false },
    next: (state, reading, flags) => nextState(tests, state, reading, flags),
    series: (time, value) => seriesFlags(tests, time, value),
  }
}

type CheckedTests = ReturnType<typeof checkedTests>

function checkedTests(limits: QualityLimits) {
  const longest = maxGap({
    expectedStep: limits.expectedStep,
    ...(limits.gapFactor === undefined ? {} : { factor: limits.gapFactor }),
  })
  const ranges = limits.grossRange && checkedRanges(limits.grossRange)
  const spike = limits.spike && checkedSpike(limits.spike)
  const rate = limits.rateOfChange && checkedRate(limits.rateOfChange)
  const flat = limits.flatLine && checkedFlat(limits.flatLine)
  const names = [
    'timeGap',
    ...(ranges ? ['grossRange', 'stuckAtEnd'] : []),
    ...(spike ? ['spike'] : []),
    ...(rate ? ['rateOfChange'] : []),
    ...(flat ? ['flatLine'] : []),
  ]
  return { names, longest, ranges, spike, rate, flat }
}

/** A year of readings is tested without an object for each: it is the same flags from the same functions. */
function seriesFlags(tests: CheckedTests, time: ArrayLike<number>, value: ArrayLike<number>): SeriesFlags {
  const { names, longest, ranges, spike, rate, flat } = tests
  const x = plainNumbers(value)
  const now = plainNumbers(time)
  const found = [
    gapFlags(now, longest),
    ...(ranges ? [rangeFlags(x, ranges), stuckFlags(x, ranges)] : []),
    ...(spike ? [spikeFlags(x, spike)] : []),
    ...(rate ? [rateFlags(now, x, rate)] : []),
    ...(flat ? [flatFlags(x, flat)] : []),
  ]
  // Missing is missing, also where no test looked at the value.
  const missing = new Uint8Array(x.length)
  for (let i = 0; i < x.length; i++) missing[i] = Number.isNaN(x[i]) ? QUALITY.missing : QUALITY.notEvaluated
  const flags = combineFlags([missing, ...found])
  return { flags, tests: Object.fromEntries(names.map((name, k) => [name, found[k]!])) }
}

function nextState(
  tests: CheckedTests,
  state: ReadingWatchState,
  reading: KeptReading,
  flags: Uint8Array,
): ReadingWatchState {
  const { longest, ranges, spike, rate, flat } = tests
  const { waiting } = state
  if (waiting === null) return { ...state, count: state.count + 1, waiting: reading }
  const x = waiting.value ?? Number.NaN
  const time = waiting.time ?? Number.NaN
  const before = state.before ?? NOTHING
  const last = before.value ?? Number.NaN
  const step = time - (before.time ?? Number.NaN)
  const stuck = ranges !== undefined && isStuck(state.stuck, last, x, ranges)
  let k = 0
  flags[k++] = state.before === null ? QUALITY.notEvaluated : gapFlag(step, longest)
  if (ranges) {
    flags[k++] = rangeFlag(x, ranges)
    flags[k++] = stuckFlag(stuck, x)
  }
  if (spike) flags[k++] = spikeFlag(last, x, reading.value ?? Number.NaN, spike)
  if (rate) flags[k++] = rateFlag(last, x, step, rate, state.spread)
  if (flat) flags[k++] = flatFlag(state.repeats, x, flat)
  // Missing is missing, also where no test looked at the value.
  let worst: number = waiting.value === null ? QUALITY.missing : QUALITY.notEvaluated
  for (let j = 0; j < k; j++) worst = moreSerious(worst, flags[j]!)
  flags[k] = worst
  return {
    count: state.count + 1,
    before: waiting,
    waiting: reading,
    repeats: flat ? withRepeat(state.repeats, x, flat) : state.repeats,
    spread: rate && rate.over > 0 ? withSpread(state.spread, time, x, rate.over) : state.spread,
    stuck,
  }
}

/** Numbers, NaN where one is missing. */
function plainNumbers(list: ArrayLike<number>): Float64Array {
  const numbers = new Float64Array(list.length)
  for (let i = 0; i < list.length; i++) numbers[i] = isMissing(list[i]!) ? Number.NaN : list[i]!
  return numbers
}
