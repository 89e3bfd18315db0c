import type { CatalogueEntry, CatalogueField } from '../catalogue/entry.js'
import { nearestNames } from '../catalogue/nearest-names.js'
import { InputError } from '../quantity/errors.js'
import { isPlainObject } from './held/give.js'
import { Measured } from './held/measured.js'
import { numberFromText } from './number-from-text.js'

/** The arguments of a call with text such as `11 L` read into numbers; refuses what is missing or not known. */
export function typedArguments(entry: CatalogueEntry, given: readonly unknown[]): unknown[] {
  const heads = headsOf(entry)
  checkHeads(entry, heads, given)
  return given.map((value, i) => {
    const head = heads[i]
    return head === undefined ? value : read(value, head.path, entry)
  })
}

/** The arguments themselves, without the properties of those that are objects. */
export function headsOf(entry: CatalogueEntry): readonly CatalogueField[] {
  return entry.arguments.filter((field) => !field.path.includes('.'))
}

function checkHeads(entry: CatalogueEntry, heads: readonly CatalogueField[], given: readonly unknown[]): void {
  for (const [i, head] of heads.entries()) {
    const value = given[i]
    if (value === undefined) {
      if (!head.optional)
        throw new InputError(entry.name, `${head.path} is missing`, `it is called as ${callForm(entry)}`)
      continue
    }
    const properties = propertiesOf(entry, head)
    if (properties.length === 0) continue
    if (typeof value !== 'object' || value === null || value instanceof Measured)
      throw new InputError(entry.name, 'takes its arguments by name', `it is called as ${callForm(entry)}`)
    if (isPlainObject(value)) checkProperties(entry, properties, value)
  }
}

function checkProperties(entry: CatalogueEntry, known: readonly CatalogueField[], given: object): void {
  const keys = known.map((field) => lastOf(field.path))
  for (const key of Object.keys(given)) {
    if (keys.includes(key)) continue
    const near = nearestNames(key, keys)
    throw new InputError(
      key,
      `is not an argument of ${entry.name}`,
      near.length > 0 ? `did you mean ${near.join(' or ')}?` : `it takes ${keys.join(', ')}`,
    )
  }
  for (const field of known) {
    if (field.optional || (given as Record<string, unknown>)[lastOf(field.path)] !== undefined) continue
    const unit = field.unit === undefined || field.unit === '1' ? '' : ` (${field.unit})`
    throw new InputError(lastOf(field.path), 'is missing', `${entry.name} needs it: ${field.text}${unit}`)
  }
}

/** How a function is called: `shotVolume({ drainFraction, rise, substrateVolume })`. */
export function callForm(entry: CatalogueEntry): string {
  const heads = headsOf(entry).map((head) => {
    const names = propertiesOf(entry, head).map((field) => lastOf(field.path) + (field.optional ? '?' : ''))
    return names.length === 0 ? head.path + (head.optional ? '?' : '') : `{ ${names.join(', ')} }`
  })
  return `${entry.name}(${heads.join(', ')})`
}

/** The properties of an argument that is an object, as far as the documentation lists them. */
export function propertiesOf(entry: CatalogueEntry, head: CatalogueField): readonly CatalogueField[] {
  const start = `${head.path}.`
  return entry.arguments.filter(
    (field) => field.path.startsWith(start) && !field.path.slice(start.length).includes('.'),
  )
}

function read(value: unknown, path: string, entry: CatalogueEntry): unknown {
  const field = entry.arguments.find((one) => one.path === path)
  if (field !== undefined && field.shape !== 'other') {
    if (typeof value === 'string') return numberFromText(value, field, entry.result.type)
    if (Array.isArray(value))
      return value.map((one) => (typeof one === 'string' ? numberFromText(one, field, entry.result.type) : one))
    return value
  }
  if (!isPlainObject(value)) return value
  const changed = Object.entries(value).map(([key, inner]) => [key, read(inner, `${path}.${key}`, entry)] as const)
  // An object without text in it is passed on as it is, so that what a function made stays the same object.
  return changed.every(([key, inner]) => Object.is(inner, value[key])) ? value : Object.fromEntries(changed)
}

function lastOf(path: string): string {
  return path.slice(path.lastIndexOf('.') + 1)
}
