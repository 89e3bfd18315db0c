import { InputError } from '../quantity/errors.js'
import { isObject } from '../quantity/guard.js'

/** The list, if it is one: a lone object or nothing must not pass for an empty list. */
export function listOf<T>(list: readonly T[], argument: string): readonly T[] {
  if (isObject(list) && Array.isArray(list)) return list
  throw new InputError(argument, 'is no list', 'give one')
}
