/** Names of the types that nothing but the library makes: their parts are no options of a caller. */
const FUNCTIONS = /=>|unknown|Record<|State$|^Reducer</

/** Whether a type as the catalogue writes it, or the entries of a list of it, is one of these, or holds functions or anything at all. */
export function isMadeType(type: string, made: ReadonlySet<string>): boolean {
  const entry = /^readonly (\w+)\[\]$/.exec(type)?.[1]
  return made.has(type) || (entry !== undefined && made.has(entry)) || FUNCTIONS.test(type)
}

/** Plain data: what a caller writes down, or reads from JSON. */
function isPlain(value: unknown): value is Record<string, unknown> | unknown[] {
  if (typeof value !== 'object' || value === null) return false
  if (Array.isArray(value)) return true
  // What holds functions is a model or a reducer.
  return (
    Object.getPrototypeOf(value) === Object.prototype && !Object.values(value).some((one) => typeof one === 'function')
  )
}

/** Paths to everything inside plain data, of lists the first entry, to a depth. */
export function* partsOf(value: unknown, path: readonly string[], depth: number): Generator<readonly string[]> {
  yield path
  if (depth === 0 || !isPlain(value)) return
  const keys = Array.isArray(value) ? ['0'].slice(0, value.length) : Object.keys(value)
  for (const key of keys) yield* partsOf((value as Record<string, unknown>)[key], [...path, key], depth - 1)
}

export function partAt(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>((node, key) => (node as Record<string, unknown> | undefined)?.[key], value)
}

/** The value with one part replaced. */
export function withPart(value: unknown, [key, ...more]: readonly string[], part: unknown): unknown {
  if (key === undefined) return part
  const inside = withPart((value as Record<string, unknown> | undefined)?.[key], more, part)
  if (Array.isArray(value)) return value.map((one, i) => (String(i) === key ? inside : one))
  return { ...(value as object), [key]: inside }
}
