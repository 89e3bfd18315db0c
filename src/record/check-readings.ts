import type { Duration } from '../quantity/generated/duration.js'
import { equalLengths } from './equal-lengths.js'
import { combineFlags, countFlags, type FlagCounts } from './flags.js'
import { type FlatLineInput, flatLineTest } from './flat-line-test.js'
import { type GrossRangeInput, grossRangeTest } from './gross-range-test.js'
import { type RateOfChangeInput, rateOfChangeTest } from './rate-of-change-test.js'
import { type SpikeInput, spikeTest } from './spike-test.js'
import { timeGapTest } from './time-gap-test.js'

/** Which tests a series of readings is put to. A test without limits is not run. */
export interface QualityLimits {
  /** Time that should lie between two readings. Unit: s. Range: (0, ∞). */
  readonly expectedStep: Duration
  /** A step of more than so many times the expected one is a gap; 1.5 by default. Unit: 1. Range: [1, ∞). */
  readonly gapFactor?: number
  /** Limits of the gross range test, as `grossRangeTest` takes them. */
  readonly grossRange?: Omit<GrossRangeInput, 'value'>
  /** Limits of the spike test, as `spikeTest` takes them. */
  readonly spike?: Omit<SpikeInput, 'value'>
  /** Limits of the rate of change test, as `rateOfChangeTest` takes them. */
  readonly rateOfChange?: Omit<RateOfChangeInput, 'time' | 'value'>
  /** Limits of the flat line test, as `flatLineTest` takes them. */
  readonly flatLine?: Omit<FlatLineInput, 'value'>
}

/** A series with the tests that it is put to. */
export interface CheckReadingsInput extends QualityLimits {
  /** Times of the readings, in the order in which they arrived. Unit: s. Range: any. */
  readonly time: ArrayLike<number>
  /** Readings; NaN is a missing one. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
}

/** Flags of each test that was run, and the most serious of each reading. */
export interface CheckedReadings {
  /** The most serious flag of each reading. */
  readonly flags: Uint8Array
  readonly counts: FlagCounts
  readonly tests: Readonly<Record<string, Uint8Array>>
}

/**
 * Puts a series to the quality tests of QARTOD: time gap, gross range, spike, rate of change and flat line.
 *
 * @procedure Runs each test that has limits and keeps the most serious flag of each reading.
 * @param input - Series and limits.
 * @returns Flags with their counts, also by test. No reading is removed.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other or lists of different lengths.
 * @source Integrated Ocean Observing System (2016), Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data (QARTOD), version 2.0, tests 1, 4, 6, 7 and 8
 * @example
 * ```ts
 * const checked = checkReadings({
 *   time: [0, 300, 600, 900, 4500], value: [0.54, 0.541, NaN, 0.54, 1.2], expectedStep: minutes(5),
 *   grossRange: { sensorMin: 0, sensorMax: 1 },
 * })
 * checked.flags // => [1, 1, 9, 1, 4]
 * checked.counts // => { pass: 3, fail: 1, missing: 1 }
 * ```
 */
export function checkReadings(input: CheckReadingsInput): CheckedReadings {
  const { time, value, grossRange, spike, rateOfChange, flatLine } = input
  equalLengths(time, value)
  const gaps = timeGapTest({
    time,
    expectedStep: input.expectedStep,
    ...(input.gapFactor === undefined ? {} : { factor: input.gapFactor }),
  })
  const tests: Record<string, Uint8Array> = {
    timeGap: gaps,
    ...(grossRange && { grossRange: grossRangeTest({ ...grossRange, value }) }),
    ...(spike && { spike: spikeTest({ ...spike, value }) }),
    ...(rateOfChange && { rateOfChange: rateOfChangeTest({ ...rateOfChange, time, value }) }),
    ...(flatLine && { flatLine: flatLineTest({ ...flatLine, value }) }),
  }
  const flags = combineFlags(Object.values(tests))
  // Missing is missing, also where no test looked at the value.
  for (let i = 0; i < flags.length; i++) if (Number.isNaN(value[i])) flags[i] = 9
  return { flags, counts: countFlags(flags), tests }
}
