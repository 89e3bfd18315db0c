import { InputError } from './errors.js'
import { requireList } from './guard.js'

/** Numbers that loggers write where they have no reading. Common practice, no source. */
export const SENTINELS: readonly number[] = [-999, -9999, -99999, 65535]

/**
 * Whether a time or a reading is not there: NaN, null from JSON, or infinite. Text and other things that are no number are refused,
 * lest a record of text passes as one of gaps.
 */
export function isMissing(value: number, argument: string): boolean {
  if (typeof value === 'number') return !(value > -Infinity && value < Infinity)
  if (value === null || value === undefined) return true
  throw new InputError(argument, `is a ${typeof value}`, 'give NaN for none')
}

/** The list with NaN where a number is missing: null counts as zero in sums and comparisons. One without such gaps comes back as it is. */
export function seriesOf(list: ArrayLike<number>, argument: string): ArrayLike<number> {
  requireList(list, argument)
  for (let i = 0; i < list.length; i++)
    if (isMissing(list[i]!, argument) && !Number.isNaN(list[i]))
      return Float64Array.from(list, (one) => (isMissing(one, argument) ? Number.NaN : one))
  return list
}

/** The same for what is converted in bulk: a typed array holds numbers only, and need not be looked through. */
export function columnOf(column: Float64Array, argument: string): Float64Array {
  return ArrayBuffer.isView(column) ? column : Float64Array.from(seriesOf(column, argument))
}
