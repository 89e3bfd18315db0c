import { InputError } from '../../quantity/errors.js'
import { isList, requireList } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { KINDS } from '../../text/generated/kinds.js'
import { type DocumentProblem, MAX_PROBLEMS, shownValue } from '../document-error.js'
import { refusal } from '../hostile-input.js'
import type { CsvRecord } from './csv-lines.js'
import type { CsvSeriesOptions } from './csv-series-options.js'
import { SEPARATORS } from './table-form.js'

/** Places of the wanted columns in a row. */
export interface Places {
  readonly time: readonly number[]
  readonly columns: Readonly<Record<string, number>>
}

/** Options come from files as well: what is no list of columns is refused by name. */
export function checkOptions(what: string, options: CsvSeriesOptions): void {
  const { time, columns } = options
  const names: readonly unknown[] = isList(time) ? time : [time]
  const named = (names.length === 1 || names.length === 2) && names.every((name) => typeof name === 'string')
  if (!named) throw refusal(what, 'time', shownValue(time), 'is not the name of a column', 'a name', 'name the column')
  if (typeof columns !== 'object' || columns === null || Object.keys(columns).length === 0)
    throw refusal(what, 'columns', shownValue(columns), 'names no column', '{ A: { column: "vwc_1" } }', 'name one')
  for (const [name, one] of Object.entries(columns))
    if (typeof one?.column !== 'string')
      throw refusal(what, `columns.${name}`, shownValue(one), 'names no column', '{ column: "vwc_1" }', 'name it')
  checkWords(options)
}

/** Where the wanted columns stand, by the header. */
export function placesOf(what: string, header: CsvRecord, options: CsvSeriesOptions): Places {
  const names = header.fields.map((name) => name.trim())
  const place = (name: string) => {
    const at = names.indexOf(name)
    if (at >= 0 && names.lastIndexOf(name) === at) return at
    if (/\p{Cc}/u.test(header.fields.join('').replace(/\s/g, '')))
      throw refusal(
        what,
        `line ${header.line}`,
        '',
        'is no text',
        'a table as text',
        'open the file where it was made and save it as CSV',
      )
    const problem =
      at < 0 ? `there is no column "${name.slice(0, 60)}"` : `two columns are called "${name.slice(0, 60)}"`
    const shown = `${names.slice(0, 20).join(', ').slice(0, 400)}`
    throw refusal(
      what,
      `line ${header.line}`,
      '',
      `${problem}; the table has ${shown}`,
      '',
      'name columns as the table does, remove lines above the names, or set the separator',
    )
  }
  const { time } = options
  return {
    time: (typeof time === 'string' ? [time] : time).map(place),
    columns: Object.fromEntries(Object.entries(options.columns).map(([name, { column }]) => [name, place(column)])),
  }
}

/** Rows with as many fields as the header. A row that was cut is told and left out. `open` says that the text ends without a line end. */
export function wholeRows(
  rows: readonly CsvRecord[],
  header: CsvRecord,
  open: boolean,
  separator: string,
  problems: DocumentProblem[],
): CsvRecord[] {
  const cut = open && cutInLastField(rows) ? rows[rows.length - 1] : undefined
  const width = header.fields.length
  return rows.filter((row) => {
    const { line, fields, fault } = row
    if (fault === undefined && fields.length === width && row !== cut) return true
    if (problems.length < MAX_PROBLEMS)
      problems.push({
        path: `line ${line}`,
        value: '',
        problem:
          row === cut
            ? 'ends the table within a field, shorter than all others'
            : (fault?.problem ?? `has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'}`),
        expected: `${width} fields: ${header.fields.join(', ').slice(0, 200)}`,
        hint: fault?.hint ?? remedyForWidth(fields, width, separator),
      })
    return false
  })
}

/** What to do about a row with another number of fields than the header, in words. */
function remedyForWidth(fields: readonly string[], width: number, separator: string): string {
  if (fields.length === width + 1 && fields[width]!.trim() === '')
    return `it ends with "${separator}": end the line of names with it too, or take it away`
  if (fields.length > width && separator === ',')
    return 'remove it, or set the separator; numbers with a decimal comma need quotes, or semicolons between the fields'
  return 'complete the line or remove it, or set the separator'
}

/** Rows that must agree before a shorter last one is taken for cut. */
const ENOUGH_ROWS = 20

/**
 * Whether the last field of the last row is a piece: shorter where all others are of one length, or with fewer decimals than any other.
 * Loggers write as many decimals each time; where their number changes, a piece cannot be told from a number.
 */
function cutInLastField(rows: readonly CsvRecord[]): boolean {
  const last = rows[rows.length - 1]
  const width = last?.fields.length ?? 0
  const texts = rows.filter(({ fields }) => fields.length === width).map(({ fields }) => fields[width - 1]!.trim())
  const piece = texts.pop() ?? ''
  const others = texts.filter((text) => /\d$/.test(text))
  if (piece === '' || others.length < ENOUGH_ROWS) return false
  const decimals = (text: string) => /[.,](\d*)$/.exec(text)?.[1]?.length ?? 0
  const { length } = others[0]!
  return others.every((text) => text.length === length)
    ? piece.length < length
    : others.every((text) => decimals(text) > decimals(piece))
}

function checkWords({
  columns,
  dateOrder,
  decimalMark,
  separator,
  missing = [],
  sentinels = [],
}: CsvSeriesOptions): void {
  requireList(missing, 'missing')
  requireList(sentinels, 'sentinels')
  if (!missing.every((word) => typeof word === 'string'))
    throw new InputError('missing', 'holds what is no text', 'give the words that stand for a missing reading')
  if (separator !== undefined) oneOf(separator, SEPARATORS, 'separator')
  if (decimalMark !== undefined) oneOf(decimalMark, ['.', ','], 'decimalMark')
  if (dateOrder !== undefined) oneOf(dateOrder, ['day-month-year', 'month-day-year'], 'dateOrder')
  for (const [name, column] of Object.entries(columns))
    if (column.kind !== undefined) oneOf(column.kind, Object.keys(KINDS) as KindName[], `columns.${name}.kind`)
}
