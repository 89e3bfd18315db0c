import { inspect } from 'node:util'
import type { CatalogueEntry, CatalogueField } from '../catalogue/entry.js'
import type { KindName } from '../text/generated/kind-types.js'
import { KINDS } from '../text/generated/kinds.js'
import { keptUnit } from './kind-of-field.js'

/** What a call gave, with what is known about it. */
export interface Called {
  readonly entry: CatalogueEntry
  readonly value: unknown
  /** The kind that was asked for by name, in functions that serve all kinds. */
  readonly kind?: KindName | undefined
}

/** A number with its unit: whole numbers in full, others in six digits. */
export function numberWithUnit(value: number, unit: string | undefined): string {
  const text = String(sixDigits(value))
  return hasName(unit) ? `${text} ${unit}` : text
}

/** The unit of a call's result, or of one property of it. */
export function unitOf({ entry, kind }: Called, path: readonly string[] = []): string | undefined {
  if (path.length > 0) return entry.result.fields.find((field) => field.path === path.join('.'))?.unit
  return kind !== undefined && entry.result.unit?.startsWith('that of') ? keptUnit(kind) : entry.result.unit
}

/** The name of a kind among the arguments of a call. */
export function kindAmong(given: readonly unknown[]): KindName | undefined {
  return given.find((one): one is KindName => typeof one === 'string' && Object.hasOwn(KINDS, one))
}

/** The result of a call as text: numbers with their units, properties one a line. */
export function resultText(called: Called): string {
  const { entry, value } = called
  if (typeof value === 'number') return numberWithUnit(value, unitOf(called))
  if (entry.result.fields.length > 0 && typeof value === 'object' && value !== null && !Array.isArray(value))
    return propertiesText(value as Record<string, unknown>, entry.result.fields)
  return valueText(value)
}

/** Any other value as text. */
export function valueText(value: unknown): string {
  if (typeof value === 'string') return value
  if (ArrayBuffer.isView(value)) return listText(value as unknown as ArrayLike<number>, undefined)
  return inspect(rounded(value), { depth: 3, maxArrayLength: 12, breakLength: 100 })
}

function sixDigits(value: number): number {
  return Number.isInteger(value) ? value : Number(value.toPrecision(6))
}

/** The same value with its numbers in six digits, for showing only. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return sixDigits(value)
  if (Array.isArray(value)) return value.map(rounded)
  const plain = typeof value === 'object' && value !== null && /^(?:Object|null)$/.test(kindOfObject(value))
  return plain ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, rounded(one)])) : value
}

/** The name of an object's constructor, which may come from another context. */
function kindOfObject(value: object): string {
  return String(
    (Object.getPrototypeOf(value) as { constructor?: { name?: string } } | null)?.constructor?.name ?? 'null',
  )
}

function propertiesText(value: Record<string, unknown>, fields: readonly CatalogueField[]): string {
  const keys = Object.keys(value)
  const wide = Math.max(...keys.map((key) => key.length))
  const lines = keys.map((key) => {
    const field = fields.find((one) => one.path === key)
    const text = propertyText(value[key], key, field, fields)
    return `  ${key.padEnd(wide)}  ${text.replace(/\n/g, `\n  ${' '.repeat(wide)}  `)}`
  })
  return lines.join('\n')
}

function propertyText(
  value: unknown,
  key: string,
  field: CatalogueField | undefined,
  fields: readonly CatalogueField[],
): string {
  if (typeof value === 'number') return numberWithUnit(value, field?.unit)
  if (field?.shape === 'list' && isList(value)) return listText(value, field.unit)
  if (typeof value === 'function') return '(a function)'
  const inner = fields
    .filter((one) => one.path.startsWith(`${key}.`))
    .map((one) => ({ ...one, path: one.path.slice(key.length + 1) }))
  if (inner.length > 0 && typeof value === 'object' && value !== null && !Array.isArray(value))
    return `\n${propertiesText(value as Record<string, unknown>, inner)}`
  return valueText(value)
}

function listText(list: ArrayLike<number>, unit: string | undefined): string {
  const first = Array.from({ length: Math.min(5, list.length) }, (_, i) => numberWithUnit(list[i]!, undefined))
  const more = list.length > 5 ? ', ...' : ''
  return `${list.length} numbers${hasName(unit) ? ` in ${unit}` : ''}${first.length > 0 ? ': ' : ''}${first.join(', ')}${more}`
}

function isList(value: unknown): value is ArrayLike<number> {
  return Array.isArray(value) || ArrayBuffer.isView(value)
}

/** Whether a unit is one to be printed: a ratio has none, and some functions take whatever unit they are given. */
export function hasName(unit: string | undefined): unit is string {
  return (
    unit !== undefined && unit !== '' && unit !== '1' && unit !== 'any' && unit !== 'raw' && !unit.startsWith('that of')
  )
}
