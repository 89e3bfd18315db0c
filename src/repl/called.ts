import type { CatalogueEntry } from '../catalogue/entry.js'
import type { KindName } from '../text/generated/kind-types.js'
import { KINDS } from '../text/generated/kinds.js'
import { keptUnit } from './kind-of-field.js'

/** What a call gave, with plain numbers, and what is known about it. */
export interface Called {
  readonly entry: CatalogueEntry
  readonly value: unknown
  /** The kind that was asked for by name, in functions that serve all kinds. */
  readonly kind?: KindName | undefined
}

/** The unit of a call's result. */
export function unitOf({ entry, kind }: Called): string | undefined {
  return kind !== undefined && entry.result.unit?.startsWith('that of') ? keptUnit(kind) : entry.result.unit
}

/** The name of a kind among the arguments of a call. */
export function kindAmong(given: readonly unknown[]): KindName | undefined {
  return given.find((one): one is KindName => typeof one === 'string' && Object.hasOwn(KINDS, one))
}
