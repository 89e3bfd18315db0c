import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { notAbove } from '../../quantity/not-above.js'
import { RANGE_LIMIT } from '../domains.js'
import type { Readings } from '../terms.js'
import { QUALITY } from './flags.js'

/** A series with the range that its sensor can report and the range that its user expects. */
export interface GrossRangeInput extends Readings {
  /** Lowest value that the sensor can report. Unit: that of the series. Range: (-∞, ∞). */
  readonly sensorMin: number
  /** Highest value that the sensor can report. Unit: that of the series. Range: (-∞, ∞). */
  readonly sensorMax: number
  /** Lowest value that is expected. Unit: that of the series. Range: (-∞, ∞). */
  readonly expectedMin?: number
  /** Highest value that is expected. Unit: that of the series. Range: (-∞, ∞). */
  readonly expectedMax?: number
}

/**
 * Gross range test: readings outside what the sensor can report fail, readings outside what is expected are suspect.
 *
 * @procedure Compares each reading with both ranges, whose ends belong to them.
 * @returns One flag for each reading.
 * @throws `DomainError` for a limit that is not finite, `InputError` when a range has its ends swapped.
 * @source qartod-2016, Test 4
 * @example
 * grossRangeTest({ value: [0.5, 0.95, 1.2], sensorMin: 0, sensorMax: 1, expectedMin: 0.2, expectedMax: 0.9 }) // => [1, 3, 4]
 */
export function grossRangeTest(input: GrossRangeInput): Uint8Array {
  requireObject(input, 'input')
  const value = seriesOf(input.value, 'value')
  const ranges = checkedRanges(input)
  const flags = new Uint8Array(value.length)
  for (let i = 0; i < value.length; i++) flags[i] = rangeFlag(value[i]!, ranges)
  return flags
}

/** Both ranges as plain numbers. */
export interface Ranges {
  readonly low: number
  readonly high: number
  readonly expectedMin: number
  readonly expectedMax: number
}

export function checkedRanges(input: Omit<GrossRangeInput, 'value'>): Ranges {
  const low = numberIn(input.sensorMin, RANGE_LIMIT, 'sensorMin')
  const high = numberIn(input.sensorMax, RANGE_LIMIT, 'sensorMax')
  const expectedMin = numberIn(optionOr(input.expectedMin, low), RANGE_LIMIT, 'expectedMin')
  const expectedMax = numberIn(optionOr(input.expectedMax, high), RANGE_LIMIT, 'expectedMax')
  notAbove('sensorMin', low, 'sensorMax', high)
  notAbove('expectedMin', expectedMin, 'expectedMax', expectedMax)
  return { low, high, expectedMin, expectedMax }
}

export function rangeFlag(x: number, { low, high, expectedMin, expectedMax }: Ranges): number {
  if (Number.isNaN(x)) return QUALITY.missing
  if (x < low || x > high) return QUALITY.fail
  return x < expectedMin || x > expectedMax ? QUALITY.suspect : QUALITY.pass
}
