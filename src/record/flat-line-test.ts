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
  requireList(input.value, 'value')
  return flatFlags(input.value, checkedFlat(input))
}

/** The flags of a whole series: what `flatFlag` gives one by one, without keeping the readings once more. */
export function flatFlags(value: ArrayLike<number>, limits: FlatLimits): Uint8Array {
  const { tolerance, failAfter } = limits
  const flags = new Uint8Array(value.length)
  if (failAfter > MOST_REPEATS) return flagsInTurn(value, limits, flags)
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

/** A test that looks far back forgets as it would reading by reading, so that a stream gives the same. */
function flagsInTurn(value: ArrayLike<number>, limits: FlatLimits, flags: Uint8Array): Uint8Array {
  let repeats: Repeats = []
  for (let i = 0; i < value.length; i++) {
    flags[i] = flatFlag(repeats, value[i]!, limits)
    repeats = withRepeat(repeats, value[i]!, limits)
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

/** Values that are remembered, at most: some 3 kB of JSON. */
export const MOST_REPEATS = 96

/** What later readings can still repeat, oldest first: values with how many readings they stand for. */
export type Repeats = readonly (readonly [value: number, times: number])[]

/**
 * The repeats with one more reading. An older value between newer ones breaks no row that reaches it, so that it is counted with the newer
 * one beside it; one that is too far from a newer one for any reading to be near both is forgotten, as is what the test does not look back to.
 */
export function withRepeat(repeats: Repeats, x: number, { tolerance, failAfter }: FlatLimits): Repeats {
  if (Number.isNaN(x)) return repeats.length === 0 ? repeats : []
  const last = repeats[repeats.length - 1]
  if (last !== undefined && last[0] === x && last[1] >= failAfter) return repeats.length === 1 ? repeats : [last]
  const kept: [value: number, times: number][] = [[x, 1]]
  let [min, max, times] = [x, x, 1]
  for (let k = repeats.length - 1; k >= 0 && times < failAfter; k--) {
    const [value, more] = repeats[k]!
    times += more
    if (value >= min && value <= max) {
      kept[kept.length - 1]![1] += more
      continue
    }
    min = Math.min(min, value)
    max = Math.max(max, value)
    // A little more than twice the tolerance, so that rounding forgets nothing that counts.
    if (max - min > 2.000001 * tolerance) break
    kept.push([value, more])
  }
  if (kept.length > MOST_REPEATS) thin(kept)
  return kept.reverse()
}

/** Joins the two nearest of the values above the newest, or of those below it, in the place and with the value of the older. */
function thin(kept: [value: number, times: number][]): void {
  const newest = kept[0]![0]
  let [least, gone, into] = [Infinity, 0, 0]
  let [above, below] = [0, 0]
  for (let k = 1; k < kept.length; k++) {
    const up = kept[k]![0] > newest
    const nearer = up ? above : below
    const apart = Math.abs(kept[k]![0] - kept[nearer]![0])
    if (nearer > 0 && apart < least) [least, gone, into] = [apart, nearer, k]
    if (up) above = k
    else below = k
  }
  kept[into]![1] += kept[gone]![1]
  kept.splice(gone, 1)
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
