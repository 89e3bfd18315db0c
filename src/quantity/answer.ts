import { InputError } from './errors.js'

/**
 * An answer, if it is a number: next to zero and at the end of all numbers arguments inside their ranges may have none, and the answer
 * would be endless in silence. The refusal names the argument that most likely has another unit.
 */
export function answerOf<N extends number>(value: N, argument: string): N {
  if (Number.isFinite(value)) return value
  throw new InputError(argument, 'has no answer: it is too near to zero, or too large', 'check the unit')
}

/** An answer of several numbers, if each of them is one. */
export function answersOf<T extends object>(result: T, argument: string): T {
  for (const value of Object.values(result)) if (typeof value === 'number') answerOf(value, argument)
  return result
}
