import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import { numberIn } from '../quantity/guard.js'
import { asName } from '../quantity/one-of.js'
import { allSpellings } from './all-spellings.js'
import { TEXT_TABLE } from './generated/text-table.js'
import { codeOf, type TextKind, type TextUnit, usualHint, wordsOf } from './text-kind.js'
import { formOf } from './unit-form.js'

/** Names of all kinds that text can stand for. */
function kindNames(): string[] {
  return textRows().flatMap(([names = '']) => names.split(' '))
}

/** The lines of the table, each in its parts; the form is told where the table is written. */
export function textRows(): string[][] {
  return TEXT_TABLE.split('\n').map((line) => line.split('|'))
}

/** Kinds that were asked for before: what is kept never differs from what would be read again. */
const READ = /* @__PURE__ */ new Map<string, TextKind>()

/** The kind of that name. */
export function kindNamed(kind: string): TextKind {
  const known = READ.get(kind)
  if (known) return known
  const row = textRows().find(([names = '']) => names.split(' ').includes(kind))
  if (row) {
    const read = kindOf(row)
    READ.set(kind, read)
    return read
  }
  throw new InputError(
    'kind',
    `"${asName(kind).slice(0, 80)}" is not the name of a kind`,
    `use one of ${kindNames().join(', ')}`,
  )
}

function kindOf([names = '', said = '', kept = '', range = '', hint = '', marks = '', list = '']: string[]): TextKind {
  const units = list.split('~').map(unitOf) as [TextUnit, ...TextUnit[]]
  const [min, max] = range.slice(1, -1).split(',')
  const quantity = said || wordsOf(names.split(' ')[0]!)
  const domain: Domain = {
    quantity,
    unit: kept || units[0].shown,
    min: min ? Number(min) : -Infinity,
    max: max ? Number(max) : Infinity,
    ends: `${range[0]}${range.at(-1)}` as Domain['ends'],
    // A hint that goes on after the usual words starts with the sign between.
    hint: /^[;,]|^$/.test(hint) ? usualHint(quantity, range) + hint : hint,
  }
  return {
    domain,
    make: (value) => numberIn(value, domain),
    units,
    kept: domain.unit,
    bare: marks.includes('b'),
    compound: marks.includes('c'),
  }
}

function unitOf(text: string): TextUnit {
  const [shown = '', conversion = '', ucum = codeOf(shown)] = text.split(':')
  const step = (sign: string, otherwise: string) => Number.parseFloat(conversion.split(sign)[1] ?? otherwise)
  return {
    shown,
    ucum,
    form: formOf(shown, allSpellings()),
    minus: step('-', '0'),
    times: step('*', '1'),
    over: step('/', '1'),
  }
}
