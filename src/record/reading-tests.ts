import { moreSerious, QUALITY } from './flags.js'
import { checkedFlat, type FlatLineInput, flatFlag } from './flat-line-test.js'
import { checkedRanges, type GrossRangeInput, rangeFlag } from './gross-range-test.js'
import { isMissing } from './missing.js'
import { checkedRate, type RateOfChangeLimits, rateFlag } from './rate-of-change-test.js'
import { NO_SPREAD, type RecentSpread, withSpread } from './recent-spread.js'
import { addRepeat, numbersOf, type RepeatNumbers, type Repeats } from './repeats.js'
import { checkedSpike, type SpikeInput, spikeFlag } from './spike-test.js'
import { isStuck, stuckFlag } from './stuck-at-end.js'
import type { ExpectedStep } from './terms.js'
import { gapFlag, maxGap } from './time-gap-test.js'

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

/** A state that is changed in place, so that a whole record makes none for each of its readings. What is missing is NaN. */
export interface ReadingSearch {
  /** How many readings are held: none, the one that waits, or that and the one before. */
  held: 0 | 1 | 2
  timeBefore: number
  before: number
  time: number
  value: number
  repeats: RepeatNumbers
  spread: RecentSpread
  stuck: boolean
}

export const NO_READINGS: ReadingWatchState = {
  count: 0,
  before: null,
  waiting: null,
  repeats: [],
  spread: NO_SPREAD,
  stuck: false,
}

/** A state, to be changed in place. */
export function readingSearch({ before, waiting, repeats, spread, stuck }: ReadingWatchState): ReadingSearch {
  return {
    held: waiting === null ? 0 : before === null ? 1 : 2,
    timeBefore: before?.time ?? Number.NaN,
    before: before?.value ?? Number.NaN,
    time: waiting?.time ?? Number.NaN,
    value: waiting?.value ?? Number.NaN,
    repeats: numbersOf(repeats),
    spread,
    stuck,
  }
}

/** The tests, with their limits found to make sense once and for all: one implementation for a series and for a stream. */
export interface ReadingTests {
  /** Names of the tests that are run. */
  readonly names: readonly string[]
  /** Takes in a reading; the flags of the one before it are written into `flags`, the last entry being the most serious. */
  readonly advance: (search: ReadingSearch, time: number, value: number, flags: Uint8Array) => void
}

export function readingTests(limits: QualityLimits): ReadingTests {
  const tests = checkedTests(limits)
  return {
    names: tests.names,
    advance: (search, time, value, flags) => {
      const after = isMissing(value) ? Number.NaN : value
      if (search.held > 0) judge(tests, search, after, flags)
      search.held = search.held > 0 ? 2 : 1
      search.timeBefore = search.time
      search.before = search.value
      search.time = isMissing(time) ? Number.NaN : time
      search.value = after
    },
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

/** Puts the waiting reading to each test, and keeps of it what the tests look back on. */
function judge(
  { longest, ranges, spike, rate, flat }: CheckedTests,
  search: ReadingSearch,
  after: number,
  flags: Uint8Array,
): void {
  const { time, value: x, before } = search
  const step = time - search.timeBefore
  let k = 0
  flags[k++] = search.held === 1 ? QUALITY.notEvaluated : gapFlag(step, longest)
  if (ranges) {
    search.stuck = isStuck(search.stuck, before, x, ranges)
    flags[k++] = rangeFlag(x, ranges)
    flags[k++] = stuckFlag(search.stuck, x)
  }
  if (spike) flags[k++] = spikeFlag(before, x, after, spike)
  if (rate) {
    flags[k++] = rateFlag(before, x, step, rate, search.spread)
    if (rate.over > 0) search.spread = withSpread(search.spread, time, x, rate.over)
  }
  if (flat) {
    flags[k++] = flatFlag(search.repeats, x, flat)
    addRepeat(search.repeats, x, flat)
  }
  // Missing is missing, also where no test looked at the value.
  let worst: number = Number.isNaN(x) ? QUALITY.missing : QUALITY.notEvaluated
  for (let j = 0; j < k; j++) if (flags[j] !== worst) worst = moreSerious(worst, flags[j]!)
  flags[k] = worst
}
