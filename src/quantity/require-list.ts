import { InputError } from './errors.js'

/** Refuses what is no array and no typed array: a text has a length, too, and would pass as a series of its letters. */
export function requireList(list: unknown, argument: string): void {
  if (typeof list !== 'object' || typeof (list as ArrayLike<unknown> | null)?.length !== 'number')
    throw new InputError(
      argument,
      list === undefined || list === null ? 'is missing' : `a ${typeof list} is no list`,
      'give an array or a typed array',
    )
}
