import { InputError } from '../../quantity/errors.js'
import { numberFromText } from '../number-from-text.js'
import { type Bindings, isPlainObject, originalList, originalOf, propertiesOf, unitOfNumbers } from './give.js'
import { inOtherKind } from './in-other-kind.js'
import { Measured } from './measured.js'
import type { FunctionType, SignatureType } from './signature-type.js'
import { inUnit, isFunction, kindsOf, kindsWith, spelledOut, unitOfKind } from './signatures.js'
import { aKind, wrongKind } from './wrong-kind.js'

/** What a call needs to take its arguments. */
export interface Taking {
  readonly bindings: Bindings
  /** The function behind one that is held. */
  readonly plainFunction: (run: (...given: never[]) => unknown, type: FunctionType | undefined) => unknown
  readonly named?: string | undefined
}

/** A value of the session as the library takes it: plain numbers in the unit of their kind; a wrong kind is refused. */
export function taken(value: unknown, type: SignatureType, where: string, taking: Taking): unknown {
  if (value instanceof Measured) return takenNumber(value, type, where, taking)
  if (typeof value === 'string') return takenText(value, type, where)
  if (typeof value === 'function') {
    const plain = spelledOut(type)
    return taking.plainFunction(value as () => unknown, isFunction(plain) ? plain : undefined)
  }
  if (ArrayBuffer.isView(value)) return takenNumbers(value, type, where)
  if (Array.isArray(value)) {
    const all = value.map((one, i) => taken(one, placeIn(type, i), where, taking))
    return all.every((one, i) => Object.is(one, value[i])) ? value : (originalList(value, all) ?? all)
  }
  if (!isPlainObject(value)) return value
  const has = propertiesOf(type)
  const each = type !== 0 && 'each' in type ? type.each : 0
  const all = Object.entries(value).map(([key, one]) => [key, taken(one, has?.[key] ?? each, key, taking)] as const)
  if (all.every(([key, one]) => Object.is(one, value[key]))) return value
  const plain = Object.fromEntries(all)
  return originalOf(value, plain) ?? plain
}

/** What a list holds, or the one of several that is a list. */
function placeIn(type: SignatureType, i: number): SignatureType {
  const plain = spelledOut(type)
  if (plain === 0) return 0
  if ('list' in plain) return plain.list
  if ('places' in plain) return plain.places[i] ?? 0
  if ('numbers' in plain) return { unit: plain.numbers }
  return 'oneOf' in plain ? (plain.oneOf.map((one) => placeIn(one, i)).find((one) => one !== 0) ?? 0) : 0
}

function takenNumber(value: Measured, type: SignatureType, where: string, taking: Taking): number {
  if (type === 0) return value.number
  if ('as' in type) return takenAs(value, type.as, where, taking.bindings)
  if ('named' in type)
    return taking.named === undefined ? value.number : takenNumber(value, { name: taking.named }, where, taking)
  if ('unit' in type) return numberInUnit(value, type.unit, where)
  const kinds = kindsOf(type)
  if (kinds.length > 0) {
    const number = inAnyOf(value, kinds)
    if (number === undefined) throw wrongKind(where, value, kinds)
    return number
  }
  const plain = spelledOut(type)
  if (plain === 0 || !('oneOf' in plain)) throw wrongKind(where, value, [])
  const part = plain.oneOf.find((one) => kindsOf(one).length > 0 || (one !== 0 && ('unit' in one || 'as' in one)))
  if (part === undefined) throw wrongKind(where, value, [])
  return takenNumber(value, part, where, taking)
}

/** The number in the unit of the first kind that fits. */
function inAnyOf(value: Measured, kinds: readonly string[]): number | undefined {
  for (const kind of kinds) {
    if (value.kinds.includes(kind)) return inOtherKind(value, kind)
    if (value.kinds.length > 0) continue
    const number = inUnit(value.number, value.unit, kind, unitOfKind(kind))
    if (number !== undefined) return number
  }
  return undefined
}

/** The first amount says which kind is meant; the others must be of the same. */
function takenAs(value: Measured, name: string, where: string, bindings: Bindings): number {
  const first = bindings.get(name)
  if (first === undefined) {
    bindings.set(name, value)
    return value.number
  }
  const both = first.kinds.filter((kind) => value.kinds.includes(kind))
  const [kind] = both
  if (kind !== undefined) {
    bindings.set(name, new Measured(first.number, first.unit, both))
    return inOtherKind(value, kind)
  }
  const known = first.kinds.length > 0 ? first.kinds : kindsWith(first.unit)
  const shared = known.find((one) => inUnit(value.number, value.unit, one, first.unit) !== undefined)
  const free = first.kinds.length === 0 || value.kinds.length === 0
  if (free && shared !== undefined) return inUnit(value.number, value.unit, shared, first.unit) as number
  throw wrongKind(where, value, known)
}

/** A plain number that is written in a unit, such as the argument of `litres()`. */
function numberInUnit(value: Measured, unit: string, where: string): number {
  // A suction of 1 cm is the pressure of 1 cm of water.
  if (value.unit === unit || (value.kinds.length === 0 && `${value.unit} of water` === unit)) return value.number
  const kinds = value.kinds.length > 0 ? value.kinds : kindsWith(value.unit)
  for (const kind of kinds) {
    const number = inUnit(value.number, value.unit, kind, unit)
    if (number !== undefined) return number
  }
  throw new InputError(
    where,
    `${value} is ${aKind(value)}`,
    unit === '1' ? 'give a plain number, without a unit' : `give a number in ${unit}`,
  )
}

function takenNumbers(value: ArrayBufferView, type: SignatureType, where: string): unknown {
  const unit = unitOfNumbers(value)
  const plain = spelledOut(type)
  if (unit === undefined || plain === 0) return value
  const wanted = 'numbers' in plain ? plain.numbers : 'list' in plain ? unitWanted(plain.list) : undefined
  if (wanted !== undefined && wanted !== unit)
    throw new InputError(where, `holds numbers in ${unit}`, `it takes numbers in ${wanted}`)
  return value
}

function unitWanted(type: SignatureType): string | undefined {
  if (type !== 0 && 'unit' in type) return type.unit
  const [kind] = kindsOf(type)
  return kind === undefined ? undefined : unitOfKind(kind)
}

/** Text in the place of a quantity; all other text is text. */
function takenText(value: string, type: SignatureType, where: string): unknown {
  const [kind] = kindsOf(type)
  const unit = type !== 0 && 'unit' in type ? type.unit : undefined
  if (kind === undefined && unit === undefined) return value
  const of = { path: where, text: '', optional: false, shape: 'number' } as const
  return numberFromText(value, { ...of, type: kind ?? 'number', unit: unit ?? unitOfKind(kind as string) }, '')
}
