import { InputError } from 'porewater'
import { describe, expect, it } from 'vitest'
import { readable, readOr, readOrRefuse } from '../../src/quantity/attempt.js'
import { isList, isObject, optionOr, requireOption } from '../../src/quantity/guard.js'

const torn = {
  get part(): number {
    throw new Error('the store is closed')
  },
}
const revoked = () => {
  const { proxy, revoke } = Proxy.revocable({}, {})
  revoke()
  return proxy
}

describe('an argument of which a part throws when it is read', () => {
  it('is refused by its name', () => {
    expect(() => readOrRefuse('settings', () => torn.part)).toThrow(InputError)
    expect(() => readOrRefuse('settings', () => torn.part)).toThrow(/settings.*throws/)
  })
  it('keeps the refusal that names something inside of it', () => {
    const refuse = () => {
      throw new InputError('probes[0].name', 'is no name', 'give it one')
    }
    expect(() => readOrRefuse('settings', refuse)).toThrow(/probes\[0\]\.name/)
  })
  it('is read as nothing, or as what is done instead, where that is asked for', () => {
    expect(readable(() => torn.part)).toBeUndefined()
    expect(
      readOr(
        () => torn.part,
        () => 3,
      ),
    ).toBe(3)
    expect(
      readOr(
        () => 2,
        () => 3,
      ),
    ).toBe(2)
    expect(readOrRefuse('settings', () => 2)).toBe(2)
  })
  it('is neither a list nor an object to read in, where it is a proxy that was revoked', () => {
    expect(isList(revoked())).toBe(false)
    expect(isList([])).toBe(true)
    expect(isObject({})).toBe(true)
    expect(isObject(null)).toBe(false)
  })
  it('is no option where it is null, and the default where it is left out', () => {
    expect(optionOr(undefined, 5)).toBe(5)
    expect(optionOr(4, 5)).toBe(4)
    expect(() => requireOption(null as never, 'limits')).toThrow(InputError)
  })
})
