import { entryNamed } from '../catalogue/entry-named.js'
import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'
import { kindAmong, unitOf } from './called.js'
import { cautionsOf } from './cautions.js'
import { hasName } from './number-with-unit.js'
import { headsOf, typedArguments } from './typed-arguments.js'

type Library = Readonly<Record<string, unknown>>

/** What goes out: the result in JSON, with the unit of a number or those of the numbers in an object. */
export interface OneShotResult {
  readonly result: unknown
  readonly unit?: string
  readonly units?: Readonly<Record<string, string>>
  /** What to know about inputs outside the span where a formula was measured. */
  readonly cautions?: readonly Finding[]
}

/** No call is nested deeper than this. */
const DEEPEST = 20

/** Calls a function with arguments from JSON; an object `{ "call": "name", "with": ... }` in them is called first. */
export function oneShot(name: string, input: unknown, library: Library): OneShotResult {
  const entry = entryNamed(name)
  const cautions: Finding[] = []
  const value = called(name, input, { library, cautions }, 0)
  const units = entry.result.fields
    .filter((field) => hasName(field.unit))
    .map((field) => [field.path, field.unit as string] as const)
  const given = typeof input === 'object' && input !== null ? Object.values(input) : []
  const unit = unitOf({ entry, value, kind: kindAmong(given) })
  return {
    result: value,
    ...(hasName(unit) ? { unit } : {}),
    ...(units.length === 0 ? {} : { units: Object.fromEntries(units) }),
    ...(cautions.length === 0 ? {} : { cautions }),
  }
}

/** What the calls of one run share. */
interface Run {
  readonly library: Library
  readonly cautions: Finding[]
}

function called(name: string, input: unknown, run: Run, depth: number): unknown {
  const entry = entryNamed(name)
  const heads = headsOf(entry)
  const names = heads.map((head) => head.path)
  const given = typedArguments(entry, positional(resolved(input, run, depth), names, heads[0]?.shape === 'number'))
  const value = (run.library[name] as (...given: unknown[]) => unknown)(...given)
  run.cautions.push(...cautionsOf(entry, given))
  return value
}

/** One argument is given as it is, several as a list in their order or as an object by their names; one number may stand in a list, too. */
function positional(given: unknown, names: readonly string[], oneNumber: boolean): unknown[] {
  if (given === undefined || names.length === 0) return []
  if (names.length === 1 && !(oneNumber && Array.isArray(given))) return [given]
  if (Array.isArray(given)) return given
  if (typeof given === 'object' && given !== null && Object.keys(given).every((key) => names.includes(key)))
    return names.map((name) => (given as Record<string, unknown>)[name])
  return [given]
}

function resolved(value: unknown, run: Run, depth: number): unknown {
  if (depth > DEEPEST) throw new InputError('input', 'is nested too deeply', `keep to ${DEEPEST} levels`)
  if (Array.isArray(value)) return value.map((one) => resolved(one, run, depth + 1))
  if (typeof value !== 'object' || value === null) return value
  const { call, with: input } = value as { call?: unknown; with?: unknown }
  if (typeof call === 'string' && Object.keys(value).every((key) => key === 'call' || key === 'with')) {
    return called(call, input, run, depth + 1)
  }
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => key !== '__proto__')
      .map(([key, one]) => [key, resolved(one, run, depth + 1)]),
  )
}

/** JSON in one line: typed arrays as lists, gaps as null, functions left out. */
export function jsonLine(value: unknown): string {
  return `${JSON.stringify(value, (_, one: unknown) => {
    if (ArrayBuffer.isView(one)) return Array.from(one as unknown as ArrayLike<number>)
    return one instanceof Error ? { ...one, name: one.name, message: one.message } : one
  })}\n`
}
