import type { Domain } from './domain.js'
import { DomainError, InputError } from './errors.js'

/**
 * The value, if it is a number in the domain; a refusal names the argument. One test of the type and two strict comparisons are
 * the whole cost of the normal case: `'12' > 0` is true in JavaScript, so that comparisons alone would let text through.
 */
export function numberIn(value: number, domain: Domain, argument?: string): number {
  if (!(typeof value === 'number' && value > domain.min && value < domain.max)) requireEnd(value, domain, argument)
  return value
}

/**
 * Apart from the guard, so that engines copy the guard itself into its callers: all in one made `sizeShot` half as fast. It gives nothing
 * back: a guard that may give the result of a call gives something that could be anything, and has to be unpacked at every use.
 */
export function requireEnd(value: number, domain: Domain, argument: string | undefined): void {
  if ((value === domain.min && domain.ends[0] === '[') || (value === domain.max && domain.ends[1] === ']')) return
  throw new DomainError(value, domain, argument)
}

/** The number, or NaN for what is none, which the language would make one of or refuse in words of its own: null, text, a bigint, a symbol. */
export function plain(value: number): number {
  return typeof value === 'number' ? value : Number.NaN
}

/** The number of a quantity; NaN is one that is missing. What is no number is refused: null would be read as zero. */
export function numberOf(quantity: number, argument = 'quantity'): number {
  if (typeof quantity === 'number') return quantity
  throw new InputError(argument, `a ${typeof quantity} is no number`, 'give a quantity, or NaN for none')
}

/**
 * The canonical value of a number that was entered in another unit, if it lies in the domain; a refusal shows what was entered.
 * For domains that end at zero or nowhere, whose ends are the same in every unit. What is no number has to be converted to NaN.
 */
export function convertedIn(value: number, canonical: number, unit: string, domain: Domain): number {
  if (
    (canonical > domain.min && canonical < domain.max) ||
    (canonical === domain.min && domain.ends[0] === '[') ||
    (canonical === domain.max && domain.ends[1] === ']')
  )
    return canonical
  throw new DomainError(value, { ...domain, unit })
}

/** A whole number in the domain, whose hint asks for one. */
export function wholeNumberIn(value: number, domain: Domain, argument?: string): number {
  if (numberIn(value, domain, argument) % 1) throw new DomainError(value, domain, argument)
  return value
}

/**
 * An option, or what stands in for it where it is left out. Null is not left out, it goes on to the guard: a limit that was NaN comes
 * out of JSON as null, and would have been the default in silence.
 */
export function optionOr<T, U>(option: T | undefined, instead: U): T | U {
  return option === undefined ? instead : option
}

/** True or false, and nothing that the language would take for one of them: the text 'false' counts as true in it, and null as false. */
export function booleanOf(value: boolean, argument: string): boolean {
  if (typeof value === 'boolean') return value
  throw new InputError(
    argument,
    `${given(value)} is neither true nor false`,
    'give true or false, without quotation marks',
  )
}

function given(value: unknown): string {
  if (typeof value === 'string') return `'${value}'`
  if (typeof value === 'object' && value !== null) return 'an object'
  return typeof value === 'symbol' || typeof value === 'function' ? `a ${typeof value}` : String(value)
}

/** Whether it is an object that can be read. To ask what is in null, or in a proxy that was revoked, throws. */
export function isObject<T extends object = object>(input: unknown): input is T {
  try {
    return typeof input === 'object' && 0 in (input as object) !== undefined
  } catch {
    return false
  }
}

/** Whether it is an array that can be read. */
export function isList(list: unknown): list is readonly unknown[] {
  return isObject(list) && Array.isArray(list)
}

/**
 * The options object, or one in which everything is missing: a call without its argument, or with one that cannot be read, is then
 * refused by the guard of the first number, by name, and not by a TypeError of the language. Where no number is required, and in front
 * of lists and models, `requireObject` stands instead.
 */
export function optionsOf<T>(input: T): T {
  return isObject(input) ? input : ({} as T)
}

/** Refuses what is no object, or one that cannot be read. */
export function requireObject(input: unknown, argument: string): void {
  if (isObject(input)) return
  throw new InputError(argument, 'is missing or no object', 'give one')
}

/** The same for one that may be left out. */
export function requireOption(input: unknown, argument: string): void {
  if (input !== undefined) requireObject(input, argument)
}

/** Refuses what no function of this library made, by one of its functions: an object that went through JSON has lost them. */
export function requireMade(made: unknown, method: string, argument: string): void {
  requireObject(made, argument)
  if (typeof (made as Record<string, unknown>)[method] === 'function') return
  const found = `has no function \`${method}\`, which JSON does not keep`
  throw new InputError(argument, found, 'make it again with the function that made it, from its numbers')
}

/** Refuses what is no array and no typed array: a text has a length, too, and would pass as a series of its letters. */
export function requireList(list: unknown, argument: string): void {
  if (!isObject(list) || typeof (list as unknown as ArrayLike<unknown>).length !== 'number')
    throw new InputError(argument, 'is missing or no list', 'give an array or a typed array')
}

/** Refuses what is no list of objects, and names the first entry that is none. */
export function requireRows(list: unknown, argument: string): void {
  requireList(list, argument)
  const rows = list as ArrayLike<unknown>
  for (let i = 0; i < rows.length; i++) requireObject(rows[i], `${argument}[${i}]`)
}
