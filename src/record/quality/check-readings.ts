import { requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import type { ArrivalTimes, Readings } from '../terms.js'
import { countFlags, type FlagCounts } from './flags.js'
import { NO_READINGS, readingSearch } from './reading-state.js'
import { type QualityLimits, readingTests } from './reading-tests.js'

/** A series with the tests that it is put to. */
export interface CheckReadingsInput extends ArrivalTimes, Readings, QualityLimits {}

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
 * @procedure Runs each test that has limits and keeps the most serious flag of each reading, as `watchReadings` does one by one.
 * @returns Flags with their counts, also by test. No reading is removed.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other or lists of different lengths.
 * @source qartod-2016, tests 1, 4, 6, 7 and 8
 * @example
 * const checked = checkReadings({
 *   time: [0, 300, 600, 900, 4500], value: [0.54, 0.541, NaN, 0.54, 1.2], expectedStep: minutes(5),
 *   grossRange: { sensorMin: 0, sensorMax: 1 },
 * })
 * checked.flags // => [1, 1, 9, 1, 4]
 * checked.counts // => { pass: 3, fail: 1, missing: 1 }
 */
export function checkReadings(input: CheckReadingsInput): CheckedReadings {
  requireObject(input, 'input')
  const { names, advance } = readingTests(input)
  const [time, value] = alignedSeries(input.time, input.value, 'value')
  const count = time.length
  const flags = new Uint8Array(count)
  const tests = names.map(() => new Uint8Array(count))
  const search = readingSearch(NO_READINGS)
  const found = new Uint8Array(names.length + 1)
  for (let i = 0; i <= count; i++) {
    // The last reading has no later neighbour.
    advance(search, time[i] ?? Number.NaN, value[i] ?? Number.NaN, found)
    if (i === 0) continue
    for (let k = 0; k < tests.length; k++) tests[k]![i - 1] = found[k]!
    flags[i - 1] = found[tests.length]!
  }
  return { flags, counts: countFlags(flags), tests: Object.fromEntries(names.map((name, k) => [name, tests[k]!])) }
}
