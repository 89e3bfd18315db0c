import { Measured } from './measured.js'
import type { FunctionType, SignatureType } from './signature-type.js'
import { isFunction, kindsOf, spelledOut, unitOfKind } from './signatures.js'

/** What the variables of a call stand for: kinds of what was passed in. */
export type Bindings = Map<string, Measured>

/** Holds a function of the package, so that its arguments and results keep their kinds. */
export type HoldFunction = (run: (...given: unknown[]) => unknown, type: FunctionType, name: string) => unknown

/** What a call has in hand to hold its result. */
export interface Holding {
  readonly bindings: Bindings
  readonly holdFunction: HoldFunction
  /** The kind that an argument named in text. */
  readonly named?: string | undefined
}

/** Typed arrays stay what they are; the unit of their numbers is kept beside them. */
const UNITS = new WeakMap<object, string>()

/** The unit of the numbers in a typed array, where a function has told it. */
export function unitOfNumbers(list: object): string | undefined {
  return UNITS.get(list)
}

/** A value of the library with every quantity in it held with its kind. What holds none is the same object. */
export function held(value: unknown, type: SignatureType, holding: Holding): unknown {
  if (type === 0 || value === undefined || value === null) return value
  if (typeof value === 'number') return heldNumber(value, type, holding)
  if (ArrayBuffer.isView(value)) {
    if ('numbers' in type) UNITS.set(value, type.numbers)
    return value
  }
  const plain = spelledOut(type)
  if (typeof value === 'function')
    return isFunction(plain)
      ? holding.holdFunction(value as (...given: unknown[]) => unknown, plain, value.name)
      : alternative(plain, isFunction, (one) => held(value, one, holding), value)
  if (typeof value !== 'object') return value
  return Array.isArray(value) ? heldList(value, plain, holding) : heldObject(value, plain, holding)
}

function heldNumber(value: number, type: SignatureType, { bindings, named }: Holding): unknown {
  if (type === 0) return value
  if ('unit' in type) return type.unit === '1' ? value : new Measured(value, type.unit)
  if ('as' in type) {
    const like = bindings.get(type.as)
    return like === undefined ? value : new Measured(value, like.unit, like.kinds)
  }
  if ('named' in type) return named === undefined ? value : new Measured(value, unitOfKind(named), [named])
  const kinds = kindsOf(type)
  const [first] = kinds
  if (first !== undefined) return new Measured(value, unitOfKind(first), kinds)
  // A number or something else: the part that is a number.
  const plain = spelledOut(type)
  if (plain === 0 || !('oneOf' in plain)) return value
  const part = plain.oneOf.find((one) => kindsOf(one).length > 0 || (one !== 0 && 'unit' in one))
  return part === undefined ? value : heldNumber(value, part, { bindings, named } as Holding)
}

function heldList(list: readonly unknown[], type: SignatureType, holding: Holding): unknown {
  if (type === 0) return list
  if ('list' in type) return mappedList(list, () => type.list, holding)
  if ('places' in type) return mappedList(list, (i) => type.places[i] ?? 0, holding)
  const isList = (one: SignatureType) => one !== 0 && ('list' in one || 'places' in one)
  return alternative(type, isList, (one) => held(list, one, holding), list)
}

function mappedList(list: readonly unknown[], typeAt: (i: number) => SignatureType, holding: Holding): unknown {
  const own = list.map((one, i) => held(one, typeAt(i), holding))
  ORIGINALS.set(own, { object: list, held: {} })
  return own
}

/** The list that a held one stands for, if nothing in it was changed. */
export function originalList(own: readonly unknown[], plain: readonly unknown[]): readonly unknown[] | undefined {
  const list = ORIGINALS.get(own)?.object as readonly unknown[] | undefined
  return list?.length === plain.length && plain.every((one, i) => Object.is(one, list[i])) ? list : undefined
}

function heldObject(value: object, type: SignatureType, holding: Holding): unknown {
  if (type === 0 || !isPlainObject(value)) return value
  if ('each' in type) return mapped(value, (one) => held(one, type.each, holding))
  const has = propertiesOf(type)
  return has === undefined ? value : mapped(value, (one, key) => held(ownerBound(one, value), has[key] ?? 0, holding))
}

/** A method keeps the object that it belongs to. */
function ownerBound(one: unknown, owner: object): unknown {
  if (typeof one !== 'function') return one
  return Object.defineProperty((...given: unknown[]): unknown => one.apply(owner, given), 'name', { value: one.name })
}

/** The object behind a held one, and what was held of it. */
interface Original {
  readonly object: object
  readonly held: Readonly<Record<string, unknown>>
}

const ORIGINALS = new WeakMap<object, Original>()

function mapped(object: object, change: (one: unknown, key: string) => unknown): object {
  const own = Object.fromEntries(Object.entries(object).map(([key, one]) => [key, change(one, key)]))
  ORIGINALS.set(own, { object, held: { ...own } })
  return own
}

/** The object that a held one stands for, if nothing in it was changed; a model keeps what belongs to it alone. */
export function originalOf(own: Record<string, unknown>, plain: Readonly<Record<string, unknown>>): object | undefined {
  const original = ORIGINALS.get(own)
  if (original === undefined) return undefined
  const keys = Object.keys(original.held)
  const before = original.object as Record<string, unknown>
  const same = (key: string) =>
    typeof own[key] === 'function' ? own[key] === original.held[key] : Object.is(plain[key], before[key])
  return keys.length === Object.keys(own).length && keys.every(same) ? original.object : undefined
}

/** The properties of an object, or of all the objects that it may be. */
export function propertiesOf(type: SignatureType): Readonly<Record<string, SignatureType>> | undefined {
  const plain = spelledOut(type)
  if (plain === 0) return undefined
  if ('has' in plain) return plain.has
  if (!('oneOf' in plain)) return undefined
  const each = plain.oneOf.map(propertiesOf).filter((one) => one !== undefined)
  return each.length === 0 ? undefined : Object.assign({}, ...each.reverse())
}

function alternative(
  type: SignatureType,
  fits: (one: SignatureType) => boolean,
  use: (one: SignatureType) => unknown,
  otherwise: unknown,
): unknown {
  if (type === 0 || !('oneOf' in type)) return otherwise
  const part = type.oneOf.map(spelledOut).find(fits)
  return part === undefined ? otherwise : use(part)
}

export function isPlainObject(value: unknown): value is Record<string, unknown> {
  if (typeof value !== 'object' || value === null || value instanceof Measured) return false
  if (Array.isArray(value) || ArrayBuffer.isView(value)) return false
  // An object of the session comes from another context, where `Object` is another one.
  const above: unknown = Object.getPrototypeOf(value)
  return above === null || Object.getPrototypeOf(above as object) === null
}
