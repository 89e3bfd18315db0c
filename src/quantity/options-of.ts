/**
 * The options object, or one in which everything is missing: a call without its argument is then refused by the guard of the first
 * number, by name, and not by a TypeError of the language.
 */
export function optionsOf<T>(input: T): T {
  return input ?? ({} as T)
}
