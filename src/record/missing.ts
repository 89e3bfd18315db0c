import { InputError } from '../quantity/errors.js'

/**
 * Whether a time or a reading is not there: NaN, null from JSON, or infinite. Text and other things that are no number are refused,
 * lest a record of text passes as one of gaps.
 */
export function isMissing(value: number, argument: string): boolean {
  if (typeof value === 'number') return !(value > -Infinity && value < Infinity)
  if (value === null || value === undefined) return true
  throw new InputError(argument, `is a ${typeof value}`, 'give numbers; NaN or null where one is missing')
}
