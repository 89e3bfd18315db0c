import type { CatalogueField } from '../catalogue/entry.js'
import type { KindName } from '../text/generated/kind-types.js'
import { KINDS } from '../text/generated/kinds.js'

type Numeric = Pick<CatalogueField, 'type' | 'unit'>

const NAMES = Object.keys(KINDS) as KindName[]

/** The kind that a documented number is of, by its type; undefined for kinds that text does not know. */
export function kindOfType(type: string): KindName | undefined {
  const name = type.replace(/^readonly |\[\]$| \| undefined$/g, '')
  return NAMES.find((kind) => kind === name)
}

/** A kind in which text can stand for a number of this unit: that of the type, else the first one that is written in the unit. */
export function kindForText(field: Numeric, preferred?: string): KindName | undefined {
  const own = kindOfType(field.type)
  if (own !== undefined) return own
  const asked = preferred === undefined ? undefined : kindOfType(preferred)
  if (asked !== undefined && KINDS[asked].units.some((unit) => unit.shown === field.unit)) return asked
  // An instant counts seconds from a fixed moment: a duration is something else. A plain ratio has no unit to tell its kind by.
  if (/Instant/.test(field.type) || field.unit === undefined) return undefined
  if (field.unit === '1') return /^Any/.test(field.type) ? 'Share' : undefined
  return NAMES.find((kind) => KINDS[kind].units.some((unit) => unit.shown === field.unit))
}

/** The unit in which numbers of a kind are kept; suction is written in kilopascals and kept in centimetres of water. */
export function keptUnit(kind: KindName): string {
  return KINDS[kind].kept
}
