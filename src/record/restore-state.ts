import { readOr } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import { isObject } from '../quantity/guard.js'

/** Reads the fields of a state that was kept as JSON, one by one: what was changed by hand or cut short must not go on deciding. */
export interface StateReader {
  /** A number between two ends that belong to it. */
  readonly number: (field: string, min?: number, max?: number) => number
  /** A whole number from zero on. */
  readonly count: (field: string, max?: number) => number
  /** A number, or null for "not yet". */
  readonly numberOrNull: (field: string) => number | null
  /** A list of numbers, each between two ends; of a given length or shorter. */
  readonly numbers: (field: string, maxLength: number, min?: number, max?: number) => number[]
  /** A list of numbers or nulls of exactly this length. */
  readonly numbersOrNulls: (field: string, length: number) => (number | null)[]
  /** A list, each entry read by a reader of its own. */
  readonly list: <T>(field: string, maxLength: number, read: (entry: StateReader) => T) => T[]
  /** An object inside, read by a reader of its own. */
  readonly inside: <T>(field: string, read: (entry: StateReader) => T) => T
  /** The same, or null. */
  readonly insideOrNull: <T>(field: string, read: (entry: StateReader) => T) => T | null
  /** One of a few words. */
  readonly word: <const W extends string | boolean>(field: string, words: readonly W[]) => W
  /** What was stored, unchecked. */
  readonly stored: Readonly<Record<string, unknown>>
  /** Refuses the state because fields contradict each other. */
  readonly refuse: (field: string, problem: string) => never
}

const HINT = 'start anew, or give the state as it was stored'

/** A reader of a kept state; lists are read by position, and an entry that was deleted is not passed over. Each part is read once: a getter may throw the next time. */
export function stateReader(stored: unknown, path = 'state', hint = HINT): StateReader {
  const object = objectOf(stored, path, hint)
  const refuse: Refuse = (field, problem) => refused(`${path}.${field}`, problem, hint)
  const at = (field: string) => partOf(object, field, refuse)
  const check = (field: string, value: unknown, min?: number, max?: number) => numberOf(field, value, refuse, min, max)
  const listOf = (field: string, maxLength: number) => entriesOf(at(field), field, maxLength, refuse)
  const deeper = (value: unknown, field: string) => stateReader(value, `${path}.${field}`, hint)
  return {
    number: (field, min, max) => check(field, at(field), min, max),
    count: (field, max = Number.MAX_SAFE_INTEGER) => {
      const value = check(field, at(field), 0, max)
      return Number.isInteger(value) ? value : refuse(field, `is ${value}, no whole number`)
    },
    numberOrNull: (field) => orNull(at(field), (value) => check(field, value)),
    numbers: (field, maxLength, min, max) =>
      listOf(field, maxLength).map((value, k) => check(`${field}[${k}]`, value, min, max)),
    numbersOrNulls: (field, length) => {
      const list = listOf(field, length)
      if (list.length !== length) return refuse(field, `has ${list.length} entries, not ${length}`)
      return list.map((entry, k) => orNull(entry, (value) => check(`${field}[${k}]`, value)))
    },
    list: (field, maxLength, read) => listOf(field, maxLength).map((entry, k) => read(deeper(entry, `${field}[${k}]`))),
    inside: (field, read) => read(deeper(at(field), field)),
    insideOrNull: (field, read) => orNull(at(field), (value) => read(deeper(value, field))),
    word: (field, words) => {
      const value = at(field)
      return words.find((word) => word === value) ?? refuse(field, `is ${shown(value)}, none of its words`)
    },
    stored: object,
    refuse,
  }
}

type Refuse = (field: string, problem: string) => never

function partOf(object: Readonly<Record<string, unknown>>, field: string, refuse: Refuse): unknown {
  return readOr(
    () => object[field],
    () => refuse(field, 'cannot be read: it throws'),
  )
}

function numberOf(
  field: string,
  value: unknown,
  refuse: Refuse,
  min = -Number.MAX_VALUE,
  max = Number.MAX_VALUE,
): number {
  return typeof value === 'number' && value >= min && value <= max ? value : refuse(field, `is ${shown(value)}`)
}

function orNull<T>(value: unknown, read: (value: unknown) => T): T | null {
  return value === null ? null : read(value)
}

/** The entries of a list, of which none may throw when it is taken out. */
function entriesOf(list: unknown, field: string, maxLength: number, refuse: Refuse): unknown[] {
  const entries = readOr(
    () => Array.isArray(list) && (list.length > maxLength ? list.length : Array.from(list as unknown[])),
    () => refuse(field, 'cannot be read: a part of it throws'),
  )
  if (typeof entries === 'object') return entries
  return refuse(field, entries === false ? 'is not a list' : `has ${entries} entries, more than ${maxLength}`)
}

function refused(argument: string, problem: string, hint: string): never {
  throw new InputError(argument, problem, hint)
}

function objectOf(stored: unknown, path: string, hint: string): Record<string, unknown> {
  if (!isObject(stored)) throw new InputError(path, 'is not an object', hint)
  return stored as Record<string, unknown>
}

function shown(value: unknown): string {
  return typeof value === 'number' || typeof value === 'string' ? `'${value}'` : value === null ? 'null' : typeof value
}
