import type { CatalogueField } from '../catalogue/entry.js'
import { isPorewaterError } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import type { KindName, KindTypes } from '../text/generated/kind-types.js'
import { KINDS } from '../text/generated/kinds.js'
import { parseQuantity } from '../text/parse.js'
import { toUcum } from '../text/ucum.js'
import { keptUnit, kindForText, kindOfType } from './kind-of-field.js'

/** The number that a text stands for, in the unit that the documentation gives for the argument. */
export function numberFromText(text: string, field: CatalogueField, resultType: string): number {
  const moment = momentFrom(text, `${field.type} ${resultType}`)
  if (moment !== undefined) return moment
  const plain = plainNumber(text, field)
  const own = kindOfType(field.type)
  // The unit of the help counts: a suction head is kept in cm, and written in cm of water.
  if (own !== undefined && (plain === undefined || keptUnit(own) !== field.unit || isWritten(own, field.unit)))
    return read(text, own, field)
  if (plain !== undefined) return plain
  const kind = kindForText(field, resultType)
  if (kind === undefined) throw refusal(text, field)
  const unit = KINDS[kind].units.find((one) => one.shown === field.unit)
  const value = read(text, kind, field)
  return unit === undefined ? value : toUcum(value, kind, unit.ucum).value
}

/** Whether text of a kind is written in a unit anyway, so that the kind's own constructor checks the number. */
function isWritten(kind: KindName, unit: string | undefined): boolean {
  return KINDS[kind].units.some((one) => one.shown === unit)
}

/** The quantity; a refusal names the argument that it is about. */
function read<K extends KindName>(text: string, kind: K, field: CatalogueField): KindTypes[K] {
  try {
    return parseQuantity(text, kind)
  } catch (error) {
    if (!isPorewaterError(error) || error.code !== 'bad-input') throw error
    const problem = error.message.slice(error.argument.length + 2, -error.hint.length - 2)
    throw new InputError(`${field.path.replace(/^.*\./, '')} (${kind})`, problem, error.hint)
  }
}

/** A date and time with its offset from UTC, for instants. */
function momentFrom(text: string, types: string): number | undefined {
  if (!/\bInstant\b/.test(types)) return undefined
  if (!/^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d)?(?:Z|[+-]\d\d:\d\d)$/.test(text.trim())) return undefined
  const milliseconds = Date.parse(text.trim())
  return Number.isNaN(milliseconds) ? undefined : milliseconds / 1000
}

/** A number alone, or with the very unit of the argument. */
function plainNumber(text: string, field: CatalogueField): number | undefined {
  const match = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(.*?)\s*$/.exec(text.slice(0, 100))
  if (match === null) return undefined
  const needsUnit = field.unit !== undefined && !['1', 'raw', 'any'].includes(field.unit)
  return match[2] === (needsUnit ? field.unit : '') ? Number(match[1]) : undefined
}

function refusal(text: string, field: CatalogueField): InputError {
  const bare = field.unit === undefined || field.unit === '1' || field.unit === 'raw' || field.unit === 'any'
  return new InputError(
    field.path.replace(/^.*\./, ''),
    `"${text.slice(0, 80)}" is not a number${bare ? '' : ` in ${field.unit}`}`,
    /\bInstant\b/.test(field.type)
      ? 'write a date and time with its offset, such as 2026-05-19T06:00Z'
      : bare
        ? 'write a plain number, without a unit'
        : `write a number and ${field.unit}`,
  )
}
