import { InputError, type PorewaterError } from './errors.js'

/** What `attempt` gives: the value, or the error as a value. */
export type Attempt<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: PorewaterError }

const CODES: readonly unknown[] = ['outside-domain', 'bad-input', 'no-convergence']

/**
 * Runs a calculation and gives a refusal back as a value, for control loops that must not be interrupted.
 * Only this package's own errors are caught; any other error is a programming fault and passes through.
 *
 * @param calculation - What to run.
 * @procedure Calls it once; a refusal of this package becomes `{ ok: false, error }`.
 * @returns `{ ok: true, value }` or `{ ok: false, error }`.
 * @throws `InputError` for what is no function; whatever the calculation throws that is not a refusal of this package.
 * @source definition
 * @example
 * attempt(() => litres(-1)).ok // => false
 */
export function attempt<T>(calculation: () => T): Attempt<T> {
  if (typeof calculation !== 'function')
    throw new InputError(
      'calculation',
      'is no function',
      'give the calculation, not its result: attempt(() => litres(-1))',
    )
  try {
    return { ok: true, value: calculation() }
  } catch (error) {
    if (isPorewaterError(error)) return { ok: false, error }
    throw error
  }
}

/**
 * Whether something thrown is one of this package's refusals, from whichever copy of the package.
 *
 * @param error - Anything that was thrown.
 * @procedure Looks at the `code` of the error, not at its class.
 * @returns True for a `DomainError`, an `InputError` or a `ConvergenceError`.
 * @source definition
 * @example
 * isPorewaterError(new Error('something else')) // => false
 */
export function isPorewaterError(error: unknown): error is PorewaterError {
  // A thrown proxy that was revoked, or one whose code throws, is none of ours, and asking must not throw in its place.
  try {
    return error instanceof Error && CODES.includes((error as { code?: unknown }).code)
  } catch {
    return false
  }
}

/** What is read, or what is done instead where a part of it throws: a getter, or a proxy that was revoked. */
export function readOr<T, U>(read: () => T, instead: () => U): T | U {
  try {
    return read()
  } catch {
    return instead()
  }
}

/** What is read, or nothing where a part of it throws. */
export function readable<T>(read: () => T): T | undefined {
  return readOr(read, () => undefined)
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
