import { inspect } from 'node:util'
import { maxOf } from '../quantity/extremes.js'
import { unitOfNumbers } from './held/give.js'
import { Measured } from './held/measured.js'
import { numberWithUnit, sixDigits } from './number-with-unit.js'

/** A value as the session shows it: quantities with their unit, text in quotes, properties one a line. */
export function valueText(value: unknown): string {
  if (value instanceof Measured) return value.toString()
  if (ArrayBuffer.isView(value)) return numbersText(value)
  if (isOwnObject(value) && Object.keys(value).length > 0) return propertiesText(value, 0)
  return inspected(value)
}

function inspected(value: unknown): string {
  return inspect(rounded(value), { depth: 3, maxArrayLength: 12, breakLength: 100 })
}

/** The same value with its numbers in six digits, for showing only. */
function rounded(value: unknown): unknown {
  if (typeof value === 'number') return sixDigits(value)
  if (Array.isArray(value)) return value.map(rounded)
  if (!isOwnObject(value)) return value
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, rounded(one)]))
}

/** An object without a class, which may come from another context. */
function isOwnObject(value: unknown): value is Record<string, unknown> {
  if (typeof value !== 'object' || value === null || Array.isArray(value) || value instanceof Measured) return false
  const above = Object.getPrototypeOf(value) as { constructor?: { name?: string } } | null
  return above === null || above.constructor?.name === 'Object'
}

/** Objects in objects are opened so deep. */
const DEEPEST = 3

function propertiesText(value: Record<string, unknown>, depth: number): string {
  const keys = Object.keys(value)
  const wide = maxOf(keys.map((key) => key.length))
  const lines = keys.map((key) => {
    const text = propertyText(value[key], depth)
    return `  ${key.padEnd(wide)}  ${text.replace(/\n/g, `\n  ${' '.repeat(wide)}  `)}`
  })
  return lines.join('\n')
}

function propertyText(value: unknown, depth: number): string {
  if (typeof value === 'function') return '(a function)'
  if (isOwnObject(value) && Object.keys(value).length > 0 && depth < DEEPEST)
    return propertiesText(value, depth + 1).replace(/^ {2}/gm, '')
  if (Array.isArray(value) && value.length > 3 && value.every((one) => one instanceof Measured))
    return quantitiesText(value)
  return isOwnObject(value) ? inspected(value) : valueText(value)
}

function quantitiesText(list: readonly Measured[]): string {
  const units = new Set(list.map((one) => one.unit))
  const [unit] = units
  return units.size > 1 ? inspected(list) : listText(list.map(Number), unit)
}

function numbersText(list: ArrayBufferView): string {
  return listText(list as unknown as ArrayLike<number>, unitOfNumbers(list))
}

function listText(list: ArrayLike<number>, unit: string | undefined): string {
  const first = Array.from({ length: Math.min(5, list.length) }, (_, i) => numberWithUnit(list[i]!, undefined))
  const more = list.length > 5 ? ', ...' : ''
  const named = numberWithUnit(list.length, undefined)
  return `${named} numbers${unit === undefined || unit === '1' ? '' : ` in ${unit}`}${first.length > 0 ? ': ' : ''}${first.join(', ')}${more}`
}
