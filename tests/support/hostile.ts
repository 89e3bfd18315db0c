/** An object of which nothing can be read: each look at it throws, as a proxy of an observed store or a closed handle does. */
export function throwing(): never {
  const refuse = (): never => {
    throw new RangeError('nothing can be read')
  }
  return new Proxy({}, { get: refuse, has: refuse, ownKeys: refuse, getOwnPropertyDescriptor: refuse }) as never
}

/** A proxy that was revoked: the language's TypeError comes of every look at it. */
export function revoked(): never {
  const { proxy, revoke } = Proxy.revocable({}, {})
  revoke()
  return proxy as never
}

/** The object with one part that throws when it is read. */
export function withThrowing<T extends object>(plain: T, name: string): T {
  return Object.defineProperty({ ...plain }, name, {
    enumerable: true,
    get: () => {
      throw new RangeError(`${name} cannot be read`)
    },
  })
}

/** The object with one part that can be read once, as of a stream or a handle that is closed behind the first look. */
export function withThrowingLater<T extends object>(plain: T, name: string): T {
  let looks = 0
  return Object.defineProperty({ ...plain }, name, {
    enumerable: true,
    get: () => {
      if (looks++ > 0) throw new RangeError(`${name} cannot be read again`)
      return plain[name as keyof T]
    },
  })
}

/** What is no number, though the language would make one of it or throw an error of its own. */
export const NO_NUMBERS: readonly (readonly [string, never])[] = (
  [
    ['bigint', 1n],
    ['symbol', Symbol('2')],
    ['text', '2'],
    ['date', new Date(2)],
    ['list', [2]],
    ['sparse list', new Array(2)],
    ['object without a prototype', Object.create(null)],
    ['object whose valueOf throws', { valueOf: () => throwing() }],
    ['proxy that throws', throwing()],
    ['function', () => 2],
    ['null', null],
    ['nothing', undefined],
    ['true', true],
  ] as const
).map(([name, thing]) => [name, thing as never])
