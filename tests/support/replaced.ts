import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'

/** The arguments with one value replaced, and the value that stood there; undefined where the example does not reach it. */
export function replaced(entry: CatalogueEntry, args: readonly unknown[], field: CatalogueField, value: unknown) {
  const names = entry.arguments.filter(({ path }) => !path.includes('.')).map(({ path }) => path)
  const [head = '', ...keys] = field.path.split('.')
  let before: unknown
  const set = (node: unknown, rest: readonly string[]): unknown => {
    const [key, ...more] = rest
    if (key === undefined) {
      before = node
      return value
    }
    if (typeof node !== 'object' || node === null) throw new Error('not reached')
    return { ...node, [key]: set((node as Record<string, unknown>)[key], more) }
  }
  try {
    const copy = [...args]
    const position = names.indexOf(head)
    copy[position] = set(args[position], keys)
    return { args: copy, before }
  } catch {
    return undefined
  }
}

/** What functions give back: calibrations, plans, outcomes. Their parts come from the library or through a guard that restores them. */
const MADE = new Set([
  ...catalogue.map(({ result }) => result.type),
  // States of reducers, the day inside a review and a document that was read: made by the library, too.
  ...['LevelState', 'Reducer<State, Input, Output>', 'ZoneDay', 'RecordDocument'],
])

/** Whether a field is a part of something that a function of the library made. */
export function isMade(entry: CatalogueEntry, { path }: CatalogueField): boolean {
  return entry.arguments.some((whole) => path.startsWith(`${whole.path}.`) && MADE.has(whole.type))
}
