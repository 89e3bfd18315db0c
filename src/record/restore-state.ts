import { InputError } from '../quantity/errors.js'

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

/** A reader of a kept state; lists are read by position, and an entry that was deleted is not passed over. */
export function stateReader(stored: unknown, path = 'state', hint = HINT): StateReader {
  const object = objectOf(stored, path, hint)
  const refuse = (field: string, problem: string): never => refused(`${path}.${field}`, problem, hint)
  const check = (field: string, value: unknown, min = -Number.MAX_VALUE, max = Number.MAX_VALUE): number =>
    typeof value === 'number' && value >= min && value <= max ? value : refuse(field, `is ${shown(value)}`)
  const listOf = (field: string, maxLength: number): unknown[] => {
    const list = object[field]
    if (!Array.isArray(list)) return refuse(field, 'is not a list')
    if (list.length <= maxLength) return Array.from(list)
    return refuse(field, `has ${list.length} entries, more than ${maxLength}`)
  }
  const deeper = (value: unknown, field: string) => stateReader(value, `${path}.${field}`, hint)
  const inside = <T>(field: string, read: (entry: StateReader) => T): T => read(deeper(object[field], field))
  const count = (field: string, max = Number.MAX_SAFE_INTEGER): number => {
    const value = check(field, object[field], 0, max)
    return Number.isInteger(value) ? value : refuse(field, `is ${value}, no whole number`)
  }
  return {
    number: (field, min, max) => check(field, object[field], min, max),
    count,
    numberOrNull: (field) => (object[field] === null ? null : check(field, object[field])),
    numbers: (field, maxLength, min, max) =>
      listOf(field, maxLength).map((value, k) => check(`${field}[${k}]`, value, min, max)),
    numbersOrNulls: (field, length) => {
      const list = listOf(field, length)
      if (list.length !== length) return refuse(field, `has ${list.length} entries, not ${length}`)
      return list.map((value, k) => (value === null ? null : check(`${field}[${k}]`, value)))
    },
    list: (field, maxLength, read) => listOf(field, maxLength).map((entry, k) => read(deeper(entry, `${field}[${k}]`))),
    inside,
    insideOrNull: (field, read) => (object[field] === null ? null : inside(field, read)),
    word: (field, words) =>
      words.includes(object[field] as never)
        ? (object[field] as (typeof words)[number])
        : refuse(field, `is ${shown(object[field])}, none of its words`),
    stored: object,
    refuse,
  }
}

function refused(argument: string, problem: string, hint: string): never {
  throw new InputError(argument, problem, hint)
}

function objectOf(stored: unknown, path: string, hint: string): Record<string, unknown> {
  if (typeof stored !== 'object' || stored === null) throw new InputError(path, 'is not an object', hint)
  return stored as Record<string, unknown>
}

function shown(value: unknown): string {
  return typeof value === 'number' || typeof value === 'string' ? `'${value}'` : value === null ? 'null' : typeof value
}
