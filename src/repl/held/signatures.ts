import type { KindName } from '../../text/generated/kind-types.js'
import { KINDS } from '../../text/generated/kinds.js'
import { keptNumber, shownNumber, type TextUnit } from '../../text/text-kind.js'
import signatures from '../signatures.json' with { type: 'json' }
import type { FunctionType, Signatures, SignatureType } from './signature-type.js'

const ALL = signatures as unknown as Signatures

/** The type of a function of the package. */
export function signatureOf(name: string): FunctionType | undefined {
  const type = Object.hasOwn(ALL.functions, name) ? ALL.functions[name] : undefined
  return isFunction(type) ? type : undefined
}

/** The type of a constant of the package. */
export function constantOf(name: string): SignatureType {
  return Object.hasOwn(ALL.constants, name) ? ALL.constants[name]! : 0
}

export function isFunction(type: SignatureType | undefined): type is FunctionType {
  return typeof type === 'object' && 'takes' in type
}

/** A type without names: what a named object has, with the types that it is made of in their places. */
export function spelledOut(type: SignatureType): SignatureType {
  if (type === 0 || !('name' in type) || isKind(type.name)) return type
  const named = Object.hasOwn(ALL.objects, type.name) ? ALL.objects[type.name] : undefined
  if (named === undefined) return 0
  if ('is' in named) return spelledOut(named.is)
  const given = Object.fromEntries((named.names ?? []).map((name, i) => [name, type.of?.[i] ?? 0]))
  return { has: Object.keys(given).length === 0 ? named.has : replaced(named.has, given) }
}

function replaced(
  has: Readonly<Record<string, SignatureType>>,
  given: Readonly<Record<string, SignatureType>>,
): Record<string, SignatureType> {
  return Object.fromEntries(Object.entries(has).map(([key, type]) => [key, inPlace(type, given)]))
}

/** The type with what its variables stand for. */
function inPlace(type: SignatureType, given: Readonly<Record<string, SignatureType>>): SignatureType {
  if (type === 0) return 0
  const each = (one: SignatureType) => inPlace(one, given)
  if ('as' in type) return given[type.as] ?? type
  if ('list' in type) return { list: each(type.list) }
  if ('each' in type) return { each: each(type.each) }
  if ('places' in type) return { places: type.places.map(each) }
  if ('oneOf' in type) return { oneOf: type.oneOf.map(each) }
  if ('has' in type) return { has: replaced(type.has, given) }
  if ('takes' in type) return { takes: type.takes.map(each), gives: each(type.gives) }
  return 'name' in type && type.of ? { name: type.name, of: type.of.map(each) } : type
}

function isKind(name: string): boolean {
  return Object.hasOwn(ALL.kinds, name)
}

/** Unit in which the numbers of a kind are kept. */
export function unitOfKind(kind: string): string {
  return ALL.kinds[kind] ?? '1'
}

/** The kinds that a type may be; empty for what is no quantity. */
export function kindsOf(type: SignatureType): readonly string[] {
  if (type === 0) return []
  if ('name' in type && isKind(type.name)) return [type.name]
  const plain = spelledOut(type)
  if (plain === 0 || !('oneOf' in plain)) return []
  const each = plain.oneOf.map(kindsOf)
  return each.some((kinds) => kinds.length === 0) ? [] : each.flat()
}

/** A number in another unit of its kind; nothing where the kind does not know both. */
export function inUnit(number: number, from: string, kind: string, to: string): number | undefined {
  if (from === to) return number
  const start = textUnit(kind, from)
  const end = textUnit(kind, to)
  return start && end ? shownNumber(keptNumber(number, start), end) : undefined
}

/** The kinds that are written in a unit. */
export function kindsWith(unit: string): readonly string[] {
  return (Object.keys(KINDS) as KindName[]).filter((kind) => textUnit(kind, unit) !== undefined)
}

function textUnit(kind: string, unit: string): TextUnit | undefined {
  return Object.hasOwn(KINDS, kind) ? KINDS[kind as KindName].units.find((one) => one.shown === unit) : undefined
}

/** The units that a kind is written in. */
export function unitsOf(kind: string): readonly string[] {
  return Object.hasOwn(KINDS, kind) ? KINDS[kind as KindName].units.map((unit) => unit.shown) : [unitOfKind(kind)]
}

/** Whether a kind has places on a scale, which are moved but not added. */
export function isPoint(kind: string): boolean {
  return ALL.points.includes(kind)
}

export function allKinds(): readonly string[] {
  return Object.keys(ALL.kinds).filter((kind) => !kind.startsWith('Unnamed'))
}
