import type { CatalogueEntry } from '../catalogue/entry.js'
import { explainQuantityFinding } from '../quantity/explain-quantity-finding.js'
import type { Finding } from '../quantity/finding.js'
import { type Validity, validityOf } from '../quantity/validity.js'
import { LIBRARY } from './library.js'
import { headsOf } from './typed-arguments.js'

/** What a call says about inputs that lie outside the span where its formula was measured. */
export function cautionsOf(entry: CatalogueEntry, given: readonly unknown[]): readonly Finding[] {
  return recordsOf(entry.name).flatMap((record) => {
    const values = Object.keys(record.inputs).flatMap((name) => {
      const value = inputNamed(name, entry, given)
      return typeof value === 'number' ? [[name, value] as const] : []
    })
    return validityOf(record, Object.fromEntries(values)).map(explainQuantityFinding)
  })
}

/** By the function that each is of; a function that is called ten thousand times does not look through the whole library each time. */
let records: ReadonlyMap<string, readonly Validity[]> | undefined

function recordsOf(name: string): readonly Validity[] {
  records ??= recordsOfAll()
  return records.get(name) ?? []
}

function recordsOfAll(): Map<string, Validity[]> {
  const all = new Map<string, Validity[]>()
  for (const record of Object.values(LIBRARY).filter(isRecord))
    all.set(record.of, [...(all.get(record.of) ?? []), record])
  return all
}

function isRecord(member: unknown): member is Validity {
  return typeof member === 'object' && member !== null && 'of' in member && 'inputs' in member
}

/** An argument by its name, or the property of that name of an argument that is an object. */
function inputNamed(name: string, entry: CatalogueEntry, given: readonly unknown[]): unknown {
  const at = headsOf(entry).findIndex((head) => head.path === name)
  if (at >= 0) return given[at]
  const holder = given.find((one) => typeof one === 'object' && one !== null && Object.hasOwn(one, name))
  return (holder as Record<string, unknown> | undefined)?.[name]
}
