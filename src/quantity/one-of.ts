import { InputError } from './errors.js'
import { requireObject } from './guard.js'

/** The word, if it is one of an option's words: a misspelt option must not choose another behaviour in silence. */
export function oneOf<const W extends string>(value: W, words: readonly W[], argument: string): W {
  if (words.includes(value)) return value
  const typed = typeof value === 'string' ? `'${value}'` : `a ${typeof value}`
  throw new InputError(argument, `${typed} is unknown`, `give one of ${words.join(', ')}`)
}

/** Every name that an object of settings may have; the compiler misses one that is left out. */
export type NamesOf<T> = { readonly [Name in keyof T]-?: unknown }

/**
 * Refuses what is no object, and settings with a name that is none of theirs: a limit that is misspelt would not be there, and nothing would
 * say so. Records, messages and stored states may carry more than is read.
 */
export function onlyNames<T>(settings: T, names: NamesOf<T>, argument: string): void {
  requireObject(settings, argument)
  // Pairs of letters that a name shares with what was typed, for each of its own: the nearest is told first.
  const near = (name: string, typed: string) =>
    [...typed].filter((letter, i) => name.includes(letter + typed[i + 1])).length / name.length
  const words = Object.keys(names)
  // What is inherited is read as well.
  for (const name in settings)
    if (!words.includes(name))
      oneOf<string>(
        name,
        words.sort((a, b) => near(b, name) - near(a, name)),
        argument,
      )
}

/** Whether a table has a row of this name. What is no text has none: a list of one name would be read as the name, and some of it throws. */
export function hasRow(table: object, name: unknown): boolean {
  return typeof name === 'string' && Object.hasOwn(table, name)
}

/** A name as it was given, or what stands in its place: a symbol cannot be written out. */
export function asName(name: unknown): string {
  return typeof name === 'string' ? name : `a ${typeof name}`
}
