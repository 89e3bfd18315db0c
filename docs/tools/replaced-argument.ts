import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { type DocumentedRange, parseRange } from './ranges.js'
import { partAt } from './replaced-part.js'

/** Which numbers beside the replaced one are made up where the example leaves their part out. */
export type Filled = 'required' | 'all'

/**
 * The arguments of a call with one of them, or a part of one, replaced. Parts that the example leaves out are filled with their
 * required numbers; beside the replaced one all may be, for the catalogue does not say what an optional part requires. `undefined` where
 * a function's example and its documentation do not say enough to reach the part.
 */
export function withReplaced(
  entry: CatalogueEntry,
  args: readonly unknown[],
  field: CatalogueField,
  value: unknown,
  filled: Filled = 'required',
): unknown[] | undefined {
  const names = entry.arguments.filter(({ path }) => !path.includes('.')).map(({ path }) => path)
  const [head = '', ...keys] = field.path.split('.')
  const position = names.indexOf(head)
  const copy = [...args]
  const set = (node: unknown, path: string, [key, ...more]: readonly string[]): unknown => {
    if (key === undefined) return value
    const parent = node ?? madeUpParts(entry, path, more.length === 0 ? filled : 'required')
    if (typeof parent !== 'object' || parent === null) return undefined
    const part = set((parent as Record<string, unknown>)[key], `${path}.${key}`, more)
    return part === undefined && value !== undefined ? undefined : { ...parent, [key]: part }
  }
  copy[position] = set(args[position], head, keys)
  return copy[position] === undefined && value !== undefined ? undefined : copy
}

/** The value that an argument has in a call. */
export function argumentIn(entry: CatalogueEntry, args: readonly unknown[], field: CatalogueField): unknown {
  const names = entry.arguments.filter(({ path }) => !path.includes('.')).map(({ path }) => path)
  const [head = '', ...keys] = field.path.split('.')
  return partAt(args[names.indexOf(head)], keys)
}

/** Some value inside a documented range. */
export function valueInside({ min, max, minOpen, integers }: DocumentedRange): number {
  if (!minOpen && Number.isFinite(min)) return min
  if (!Number.isFinite(min)) return Math.min(0, max)
  return integers || max > min + 1 ? min + 1 : (min + max) / 2
}

function madeUpParts(entry: CatalogueEntry, path: string, which: Filled): Record<string, unknown> | undefined {
  const parts = entry.arguments.filter(
    (field) => field.path.startsWith(`${path}.`) && !field.path.slice(path.length + 1).includes('.'),
  )
  if (parts.length === 0) return undefined
  const filled: Record<string, unknown> = {}
  for (const { path: whole, optional, range, shape } of parts) {
    const known = range === undefined ? undefined : parseRange(range)
    if ((optional && which === 'required') || known === undefined) continue
    const inside = valueInside(known)
    filled[whole.slice(path.length + 1)] = shape === 'list' ? [inside] : inside
  }
  return filled
}

/** What functions give back: calibrations, plans, outcomes. Their parts come from the library or through a guard that restores them. */
export const MADE: ReadonlySet<string> = new Set([
  ...catalogue.map(({ result }) => result.type),
  // States of reducers, the day inside a review and a document that was read: made by the library, too.
  ...['LevelState', 'Reducer<State, Input, Output>', 'ZoneDay', 'RecordDocument'],
])

/** Whether a field is a part of something that a function of the library made. */
export function isMade(entry: CatalogueEntry, { path }: CatalogueField): boolean {
  return entry.arguments.some((whole) => path.startsWith(`${whole.path}.`) && MADE.has(whole.type))
}
