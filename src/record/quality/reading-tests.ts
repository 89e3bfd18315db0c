import { requireObject } from '../../quantity/guard.js'
import { isMissing } from '../../quantity/missing.js'
import type { ExpectedStep } from '../terms.js'
import { moreSerious, QUALITY } from './flags.js'
import { checkedFlat, type FlatLineInput, flatFlag } from './flat-line-test.js'
import { checkedRanges, type GrossRangeInput, rangeFlag } from './gross-range-test.js'
import { checkedRate, type RateOfChangeLimits, rateFlag } from './rate-of-change-test.js'
import type { ReadingSearch } from './reading-state.js'
import { withSpread } from './recent-spread.js'
import { addRepeat } from './repeats.js'
import { checkedSpike, type SpikeInput, spikeFlag } from './spike-test.js'
import { isStuck, stuckFlag } from './stuck-at-end.js'
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
      const after = isMissing(value, 'value') ? Number.NaN : value
      if (search.held > 0) judge(tests, search, after, flags)
      search.held = search.held > 0 ? 2 : 1
      search.timeBefore = search.time
      search.before = search.value
      search.time = isMissing(time, 'time') ? Number.NaN : time
      search.value = after
    },
  }
}

type CheckedTests = ReturnType<typeof checkedTests>

function checkedTests(limits: QualityLimits) {
  for (const test of ['grossRange', 'spike', 'rateOfChange', 'flatLine'] as const)
    if (limits[test] !== undefined) requireObject(limits[test], test)
  const maxStep = maxGap(limits.expectedStep, limits.gapFactor, 'gapFactor')
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
  return { names, maxStep, ranges, spike, rate, flat }
}

/** Puts the waiting reading to each test, and keeps of it what the tests look back on. */
function judge(
  { maxStep, ranges, spike, rate, flat }: CheckedTests,
  search: ReadingSearch,
  after: number,
  flags: Uint8Array,
): void {
  const { time, value: x, before } = search
  const step = time - search.timeBefore
  let k = 0
  flags[k++] = search.held === 1 ? QUALITY.notEvaluated : gapFlag(step, maxStep)
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
