import { isPorewaterError } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'

/** What is read, or nothing where a part of it throws: a getter, or a proxy that was revoked. */
export function readable<T>(read: () => T): T | undefined {
  try {
    return read()
  } catch {
    return undefined
  }
}

/** What is worked out of an argument; a refusal names it where a part of it throws, for an error of the caller's own tells nobody what was wrong. */
export function readOrRefuse<T>(argument: string, read: () => T): T {
  try {
    return read()
  } catch (error) {
    if (isPorewaterError(error)) throw error
    throw new InputError(argument, 'cannot be read: a part of it throws', 'give plain objects, as JSON makes them')
  }
}
