import { numberIn, requireObject, wholeNumberIn } from '../../quantity/guard.js'
import { seriesOf } from '../../quantity/missing.js'
import { notAbove } from '../../quantity/not-above.js'
import { FLAT_TOLERANCE, REPEATS } from '../domains.js'
import type { Readings } from '../terms.js'
import { QUALITY } from './flags.js'
import { addRepeat, type RepeatNumbers } from './repeats.js'

/** A series with the number of repeats that are not believed. */
export interface FlatLineInput extends Readings {
  /** Readings that differ by less are the same. Unit: that of the series. Range: [0, ∞). */
  readonly tolerance: number
  /** With so many equal readings before it, a reading is suspect. Unit: 1. Range: integers [1, 1000000]. */
  readonly suspectAfter: number
  /** With so many equal readings before it, a reading fails. Unit: 1. Range: integers [1, 1000000]. */
  readonly failAfter: number
}

/**
 * Flat line test: a reading that repeats those before it for longer than noise allows. A wet container at night is naturally
 * flat, so the tolerance must lie below the noise of the sensor.
 *
 * @procedure Counts the readings directly before each one that differ from it by less than the tolerance, or equal it exactly. Where it would
 * have to look back on more than 96 values within twice the tolerance, the two nearest count as the one farther out, so that a stream of
 * unrounded readings needs no more room; a row is then never counted longer than it is.
 * @param input - Readings and limits.
 * @returns One flag for each reading.
 * @throws `DomainError` outside the ranges, `InputError` when the limits are swapped.
 * @source qartod-2016, Test 8
 * @example
 * flatLineTest({ value: [5, 5, 5, 5, 5, 5, 6], tolerance: 0.01, suspectAfter: 3, failAfter: 5 }) // => [1, 1, 1, 3, 3, 4, 1]
 */
export function flatLineTest(input: FlatLineInput): Uint8Array {
  requireObject(input, 'input')
  const value = seriesOf(input.value, 'value')
  const limits = checkedFlat(input)
  const flags = new Uint8Array(value.length)
  const repeats: RepeatNumbers = []
  for (let i = 0; i < value.length; i++) {
    flags[i] = flatFlag(repeats, value[i]!, limits)
    addRepeat(repeats, value[i]!, limits)
  }
  return flags
}

/** Limits of the flat line test. */
export type FlatLimits = Omit<FlatLineInput, 'value'>

export function checkedFlat(input: FlatLimits): FlatLimits {
  const tolerance = numberIn(input.tolerance, FLAT_TOLERANCE, 'tolerance')
  const suspectAfter = wholeNumberIn(input.suspectAfter, REPEATS, 'suspectAfter')
  const failAfter = wholeNumberIn(input.failAfter, REPEATS, 'failAfter')
  notAbove('suspectAfter', suspectAfter, 'failAfter', failAfter)
  return { tolerance, suspectAfter, failAfter }
}

/** The flag of a reading by those before it. */
export function flatFlag(repeats: RepeatNumbers, x: number, limits: FlatLimits): number {
  const { tolerance } = limits
  let same = 0
  for (let k = repeats.length - 2; k >= 0; k -= 2) {
    const value = repeats[k]!
    if (!(value === x || Math.abs(value - x) < tolerance)) break
    same += repeats[k + 1]!
  }
  return repeatFlag(same, x, limits)
}

function repeatFlag(same: number, x: number, { suspectAfter, failAfter }: FlatLimits): number {
  if (Number.isNaN(x)) return QUALITY.missing
  if (same >= failAfter) return QUALITY.fail
  return same >= suspectAfter ? QUALITY.suspect : QUALITY.pass
}
