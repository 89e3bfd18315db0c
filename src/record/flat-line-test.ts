import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import { numberIn, wholeNumberIn } from '../quantity/guard.js'
import { QUALITY } from './flags.js'

const TOLERANCE: Domain = {
  quantity: 'tolerance of the flat line test',
  unit: 'unit of the series',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give less than the noise of the sensor, zero or more',
}
const SUSPECT: Domain = {
  quantity: 'repeats that are suspect',
  unit: '1',
  min: 1,
  max: 1000000,
  ends: '[]',
  hint: 'give a whole number of readings',
}
const FAIL: Domain = {
  quantity: 'repeats that fail',
  unit: '1',
  min: 1,
  max: 1000000,
  ends: '[]',
  hint: 'give a whole number of readings',
}

/** A series with the number of repeats that are not believed. */
export interface FlatLineInput {
  /** Readings; NaN is a missing one. Unit: any. Range: any. */
  readonly value: ArrayLike<number>
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
 * @procedure Counts the readings directly before each one that differ from it by less than the tolerance, or equal it exactly.
 * @param input - Readings and limits.
 * @returns One flag for each reading.
 * @throws `DomainError` outside the ranges, `InputError` when the limits are swapped.
 * @source Integrated Ocean Observing System (2016), Manual for Real-Time Quality Control of In-situ Temperature and Salinity Data (QARTOD), version 2.0, Test 8
 * @example
 * ```ts
 * flatLineTest({ value: [5, 5, 5, 5, 5, 5, 6], tolerance: 0.01, suspectAfter: 3, failAfter: 5 }) // => [1, 1, 1, 3, 3, 4, 1]
 * ```
 */
export function flatLineTest(input: FlatLineInput): Uint8Array {
  const { value } = input
  const limits = checkedFlat(input)
  const flags = new Uint8Array(value.length)
  for (let i = 0; i < value.length; i++) flags[i] = flatFlag(value, i, limits)
  return flags
}

type FlatLimits = Omit<FlatLineInput, 'value'>

export function checkedFlat(input: FlatLimits): FlatLimits {
  const tolerance = numberIn(input.tolerance, TOLERANCE, 'tolerance')
  const suspectAfter = wholeNumberIn(input.suspectAfter, SUSPECT, 'suspectAfter')
  const failAfter = wholeNumberIn(input.failAfter, FAIL, 'failAfter')
  if (failAfter < suspectAfter)
    throw new InputError('failAfter', `${failAfter} is below the ${suspectAfter} for suspect readings`, 'swap them')
  return { tolerance, suspectAfter, failAfter }
}

/** The flag of reading i by those before it. */
export function flatFlag(
  value: ArrayLike<number>,
  i: number,
  { tolerance, suspectAfter, failAfter }: FlatLimits,
): number {
  const x = value[i] as number
  if (Number.isNaN(x)) return QUALITY.missing
  const most = Math.min(i, failAfter)
  let same = 0
  while (same < most && isSame(x, value[i - 1 - same] as number, tolerance)) same++
  if (same >= failAfter) return QUALITY.fail
  return same >= suspectAfter ? QUALITY.suspect : QUALITY.pass
}

function isSame(a: number, b: number, tolerance: number): boolean {
  return a === b || Math.abs(a - b) < tolerance
}
