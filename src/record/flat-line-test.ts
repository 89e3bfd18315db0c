import { numberIn, requireList, requireObject, wholeNumberIn } from '../quantity/guard.js'
import { notAbove } from '../quantity/not-above.js'
import { FLAT_TOLERANCE, REPEATS } from './domains.js'
import { QUALITY } from './flags.js'
import type { Readings } from './terms.js'

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
 * @procedure Counts the readings directly before each one that differ from it by less than the tolerance, or equal it exactly.
 * @param input - Readings and limits.
 * @returns One flag for each reading.
 * @throws `DomainError` outside the ranges, `InputError` when the limits are swapped.
 * @source qartod-2016, Test 8
 * @example
 * ```ts
 * flatLineTest({ value: [5, 5, 5, 5, 5, 5, 6], tolerance: 0.01, suspectAfter: 3, failAfter: 5 }) // => [1, 1, 1, 3, 3, 4, 1]
 * ```
 */
export function flatLineTest(input: FlatLineInput): Uint8Array {
  requireObject(input, 'input')
  requireList(input.value, 'value')
  return flatFlags(input.value, checkedFlat(input))
}

/** The flags of a whole series: what `flatFlag` gives one by one, without keeping the readings once more. */
export function flatFlags(value: ArrayLike<number>, limits: FlatLimits): Uint8Array {
  const { tolerance, failAfter } = limits
  const flags = new Uint8Array(value.length)
  // How many equal readings in a row end at each one, so that a frozen probe is looked through in one step.
  const run = new Uint32Array(value.length)
  for (let i = 0; i < value.length; i++) {
    const x = value[i]!
    run[i] = i > 0 && value[i - 1] === x ? run[i - 1]! + 1 : 1
    let same = 0
    for (let k = i - 1; k >= 0 && same < failAfter; k -= run[k]!) {
      const before = value[k]!
      if (!(before === x || Math.abs(before - x) < tolerance)) break
      same += run[k]!
    }
    flags[i] = repeatFlag(same, x, limits)
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

/** The readings since the last missing one, equal ones put together, oldest first: no more than the test looks back. */
export type Repeats = readonly (readonly [value: number, times: number])[]

export function withRepeat(repeats: Repeats, x: number, memory: number): Repeats {
  if (Number.isNaN(x)) return repeats.length === 0 ? repeats : []
  const end = repeats.length - 1
  const last = repeats[end]
  if (last !== undefined && last[0] === x) {
    if (last[1] >= memory) return end === 0 ? repeats : [last]
    const kept = repeats.slice()
    kept[end] = [x, last[1] + 1]
    return kept
  }
  // What lies farther back than the test looks is forgotten.
  let first = repeats.length
  let times = 1
  while (first > 0 && times < memory) times += repeats[--first]![1]
  const kept = repeats.slice(first)
  kept.push([x, 1])
  return kept
}

/** The flag of a reading by those before it. */
export function flatFlag(repeats: Repeats, x: number, limits: FlatLimits): number {
  const { tolerance, failAfter } = limits
  let same = 0
  for (let k = repeats.length - 1; k >= 0 && same < failAfter; k--) {
    const [value, times] = repeats[k]!
    if (!(value === x || Math.abs(value - x) < tolerance)) break
    same += times
  }
  return repeatFlag(same, x, limits)
}

function repeatFlag(same: number, x: number, { suspectAfter, failAfter }: FlatLimits): number {
  if (Number.isNaN(x)) return QUALITY.missing
  if (same >= failAfter) return QUALITY.fail
  return same >= suspectAfter ? QUALITY.suspect : QUALITY.pass
}
