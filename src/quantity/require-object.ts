import { InputError } from './errors.js'

/** Refuses a missing options object, for functions whose first need is a list or a model and not a number. */
export function requireObject(input: unknown, argument: string): void {
  if (typeof input !== 'object' || input === null)
    throw new InputError(
      argument,
      input === undefined || input === null ? 'is missing' : `a ${typeof input} is no object`,
      'give an object with the properties that the documentation names',
    )
}
