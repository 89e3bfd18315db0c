import { expect } from 'vitest'

/** Asserts that a call is refused with a `DomainError` that has at least the given fields and says what to do. */
export function expectDomainError(call: () => unknown, fields: Record<string, unknown> = {}): void {
  expect(thrownBy(call)).toMatchObject({
    code: 'outside-domain',
    hint: expect.stringMatching(/\w/),
    unit: expect.any(String),
    ...fields,
  })
}

/** Asserts that a call is refused with an `InputError` about the given argument. */
export function expectInputError(call: () => unknown, argument: string | RegExp): void {
  expect(thrownBy(call)).toMatchObject({
    code: 'bad-input',
    argument: expect.stringMatching(argument),
    hint: expect.stringMatching(/\w/),
  })
}

function thrownBy(call: () => unknown): unknown {
  try {
    call()
  } catch (error) {
    return error
  }
  throw new Error('nothing was thrown')
}
