import { medianInPlace } from '../numerics/select.js'
import { requireObject } from '../quantity/require-object.js'
import type { LocalOffset } from '../record/local-time.js'
import type { KindName } from '../text/generated/kind-types.js'
import { decimalMarkOf, MISSING_WORDS, type NumberForm, numberOfCell, remedyForCell, SENTINELS } from './cell.js'
import type { CsvRecord } from './csv-lines.js'
import { DocumentError, type DocumentProblem, MOST_PROBLEMS, shownValue } from './document-error.js'
import { quantityFrom, unitOfNumbers } from './field.js'
import { limitedText, refusal } from './hostile-input.js'
import { type Separator, tableRows } from './table-form.js'
import { type DateOrder, dateOrderOf, orderedTimes, remedyForTime, timeOfCell } from './table-times.js'
import { type DecodedText, textFromBytes } from './text-from-bytes.js'

/** One column of numbers that is wanted. */
export interface CsvColumn {
  /** Its name in the header. */
  readonly column: string
  /** What its numbers are; without it they are taken as they stand. */
  readonly kind?: KindName
  /** Unit of its numbers, such as "%"; the canonical one of the kind by default. */
  readonly unit?: string
}

/** How a table of one reading time a row is read. */
export interface CsvSeriesOptions {
  /** Name of the table in messages, such as its file. */
  readonly name?: string
  /** The column of times, or those of date and time of day. */
  readonly time: string | readonly [date: string, time: string]
  /** The columns that are wanted, by the names that they shall have. */
  readonly columns: Readonly<Record<string, CsvColumn>>
  /** What local clocks did, for times without an offset. */
  readonly clock?: readonly LocalOffset[]
  /** What separates fields; found where it is not given. */
  readonly separator?: Separator
  /** Mark between whole and fraction; found where it is not given. */
  readonly decimalMark?: '.' | ','
  /** Whether dates with slashes begin with the day or the month; found where a number beyond 12 tells. */
  readonly dateOrder?: DateOrder
  /** Words for a missing reading, instead of the usual ones. */
  readonly missing?: readonly string[]
  /** Numbers for a missing reading, instead of -999, -9999, -99999 and 65535. Unit: any. Range: any. */
  readonly sentinels?: readonly number[]
  /** Beginning of lines that are comments, "#" by default; empty for none. */
  readonly comment?: string
  /** Longest text that is looked at; two hundred million by default. Unit: 1. Range: integers [1, ∞). */
  readonly maxCharacters?: number
}

/** Columns of a table in the order of time, and what became of every row: `rows` is the sum of the three counts and the length. */
export interface CsvSeries {
  /** Times, rising. Unit: s. */
  readonly time: Float64Array
  /** The wanted columns; NaN is missing. Unit: that of the kind. */
  readonly columns: Readonly<Record<string, Float64Array>>
  /** Rows below the header, comments and blank lines left out. Unit: 1. */
  readonly rows: number
  /** Rows that are no reading: cut, with a field too many, or at a time that is not there. Unit: 1. */
  readonly refused: number
  /** Rows that say again what another one says. Unit: 1. */
  readonly doubled: number
  /** Rows with a time that another row has, and other numbers; the first was kept. Unit: 1. */
  readonly conflicting: number
  /** What is wrong with the first hundred refused and conflicting rows. */
  readonly problems: readonly DocumentProblem[]
  /** In which order the rows stood. */
  readonly order: 'rising' | 'newest-first' | 'shuffled'
  /** Middle of the steps between two times; NaN for fewer than two. Unit: s. */
  readonly step: number
  readonly separator: Separator
  readonly decimalMark: '.' | ','
  readonly encoding: DecodedText['encoding'] | 'text'
}

const TABLE_CHARACTERS = 200_000_000

/**
 * Columns of numbers over time from a table as people have it: an export of a logger or a spreadsheet, one time a row.
 *
 * Separator and decimal mark are found or set; byte order marks, UTF-16, any line ends, comments, blank lines and the usual words and
 * numbers for a missing reading are understood; rows may stand newest first or without order, and days may stand twice. A cut row costs
 * itself and is told. What could be read in two ways is refused, with line, column and remedy, as is per cent where a fraction is
 * expected: no number is guessed.
 *
 * @procedure Decodes; finds the separator by the number of fields and the decimal mark by the numbers; reads every row; puts times into
 * universal time, with the hours that clocks leave out and repeat; sorts; drops rows that say the same again.
 * @param data - The content of the file, or its text. Unit: 1. Range: any.
 * @param options - Which columns, and what is known of their form.
 * @returns The columns in the order of time, and what became of every row.
 * @throws `DocumentError`, an `InputError`, that names line, column and remedy; `DomainError` for a limit of characters that is none.
 * @source rfc-4180-2005, section 2 (form of CSV); iso-8601-1-2019 (times) [not confirmed, source not seen]; the rest is common practice, no source
 * @example
 * ```ts
 * const table = seriesFromCsv('Zeit;Feuchte\r\n19.05.2026 07:05;55,3\r\n19.05.2026 07:00;NA\r\n', {
 *   time: 'Zeit', columns: { A: { column: 'Feuchte', kind: 'WaterContent', unit: '%' } }, clock: [{ from: 0, ahead: 7200 }], maxCharacters: 1000,
 * })
 * table // => { time: [1779166800, 1779167100], columns: { A: [NaN, 0.553] }, order: 'newest-first', separator: ';', decimalMark: ',' }
 * ```
 */
export function seriesFromCsv(data: string | Uint8Array, options: CsvSeriesOptions): CsvSeries {
  requireObject(options, 'options')
  const what = options.name ?? 'table'
  checkOptions(what, options)
  const decoded = typeof data === 'string' ? { text: data, encoding: 'text' as const } : textFromBytes(data)
  const text = limitedText(what, decoded.text, options.maxCharacters ?? TABLE_CHARACTERS)
  const table = tableRows(text, options.separator, options.comment ?? '#')
  if (table === undefined || table.rows.length === 0)
    throw refusal(what, '', '', 'has no rows', 'a line of column names and a line for each reading', 'check the export')
  const places = placesOf(what, table.header, options)
  const problems: DocumentProblem[] = []
  const whole = wholeRows(table.rows, table.header, problems)
  if (whole.length * 2 < table.rows.length) throw new DocumentError(what, problems as [DocumentProblem])
  const reader = { what, header: table.header, rows: whole, options }
  const form = formOf(reader, places)
  const times = timesOf(reader, places)
  const columns = Object.keys(options.columns).map((name) => columnOf(reader, name, places.columns[name]!, form))
  const kept = inOrder(whole, times, columns, problems)
  return {
    time: kept.time,
    columns: Object.fromEntries(Object.keys(options.columns).map((name, k) => [name, kept.columns[k]!])),
    rows: table.rows.length,
    refused: table.rows.length - whole.length + kept.timeless,
    doubled: kept.doubled,
    conflicting: kept.conflicting,
    problems,
    order: times.order,
    step: stepOf(kept.time),
    separator: table.separator,
    decimalMark: form.decimalMark,
    encoding: decoded.encoding,
  }
}

interface Reader {
  readonly what: string
  readonly header: CsvRecord
  readonly rows: readonly CsvRecord[]
  readonly options: CsvSeriesOptions
}

interface Places {
  readonly time: readonly number[]
  readonly columns: Readonly<Record<string, number>>
}

/** Options come from files as well: what is no list of columns is refused by name. */
function checkOptions(what: string, { time, columns }: CsvSeriesOptions): void {
  const named = typeof time === 'string' || (Array.isArray(time) && time.every((name) => typeof name === 'string'))
  if (!named) throw refusal(what, 'time', shownValue(time), 'is not the name of a column', 'a name', 'name the column')
  if (typeof columns !== 'object' || columns === null || Object.keys(columns).length === 0)
    throw refusal(what, 'columns', shownValue(columns), 'names no column', '{ A: { column: "vwc_1" } }', 'name one')
  for (const [name, one] of Object.entries(columns))
    if (typeof one?.column !== 'string')
      throw refusal(what, `columns.${name}`, shownValue(one), 'names no column', '{ column: "vwc_1" }', 'name it')
}

function placesOf(what: string, header: CsvRecord, options: CsvSeriesOptions): Places {
  const names = header.fields.map((name) => name.trim())
  const place = (name: string) => {
    const at = names.indexOf(name)
    if (at >= 0 && names.lastIndexOf(name) === at) return at
    const problem =
      at < 0 ? `there is no column "${name.slice(0, 60)}"` : `two columns are called "${name.slice(0, 60)}"`
    const shown = `${names.slice(0, 20).join(', ').slice(0, 400)}`
    throw refusal(
      what,
      `line ${header.line}`,
      '',
      `${problem}; the table has ${shown}`,
      '',
      'name columns as the table does, or set the separator',
    )
  }
  const { time } = options
  return {
    time: (typeof time === 'string' ? [time] : time).map(place),
    columns: Object.fromEntries(Object.entries(options.columns).map(([name, { column }]) => [name, place(column)])),
  }
}

/** Rows with as many fields as the header. A row that was cut is told and left out. */
function wholeRows(rows: readonly CsvRecord[], header: CsvRecord, problems: DocumentProblem[]): CsvRecord[] {
  const width = header.fields.length
  return rows.filter(({ line, fields, fault }) => {
    if (fault === undefined && fields.length === width) return true
    if (problems.length < MOST_PROBLEMS)
      problems.push({
        path: `line ${line}`,
        value: '',
        problem: fault?.problem ?? `has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'}`,
        expected: `${width} fields: ${header.fields.join(', ').slice(0, 200)}`,
        hint: fault?.hint ?? 'complete the line or remove it, or set the separator',
      })
    return false
  })
}

function formOf({ what, rows, options }: Reader, places: Places): NumberForm {
  const { decimalMark, missing = MISSING_WORDS, sentinels = SENTINELS } = options
  function* cells() {
    for (const { fields } of rows) for (const at of Object.values(places.columns)) yield fields[at]!.trim()
  }
  const mark = decimalMark ?? decimalMarkOf(cells())
  if (mark === undefined)
    throw refusal(
      what,
      '',
      '',
      'has numbers with a point and numbers with a comma, or such as 1,234 that may be a thousand',
      'one decimal mark',
      'set decimalMark',
    )
  return {
    decimalMark: mark,
    missing: new Set(missing.map((word) => word.toLowerCase())),
    sentinels: new Set(sentinels),
  }
}

function timesOf({ what, header, rows, options }: Reader, places: Places) {
  const cells = rows.map(({ fields }) => places.time.map((at) => fields[at]!.trim()).join(' '))
  const order = options.dateOrder ?? dateOrderOf(cells)
  const clock = options.clock ?? []
  const times = cells.map((cell, i) => {
    const time = timeOfCell(cell, order)
    const place = () => cellPath(rows[i]!, header, places.time[0]!)
    if (time === undefined)
      throw refusal(
        what,
        place(),
        shownValue(cell),
        'is not a time',
        'a time such as 2026-05-19T07:10+02:00',
        remedyForTime(cell),
      )
    if ('local' in time && clock.length === 0)
      throw refusal(
        what,
        place(),
        shownValue(cell),
        'has no offset from universal time',
        'a time with its offset (+02:00 or Z), or a clock',
        'say with "clock" how far local time is ahead of universal time, and since when',
      )
    return time
  })
  return orderedTimes(times, clock)
}

function cellPath({ line }: CsvRecord, header: CsvRecord, at: number): string {
  return `line ${line}, column ${at + 1} (${(header.fields[at] ?? '').trim()})`
}

/** The numbers of a column in the unit of its kind. */
function columnOf({ what, header, rows, options }: Reader, name: string, at: number, form: NumberForm): Float64Array {
  const { kind, unit } = options.columns[name]!
  const path = (i: number) => cellPath(rows[i]!, header, at)
  const values = Float64Array.from(rows, ({ fields }, i) => {
    const cell = fields[at]!.trim()
    const value = numberOfCell(cell, form)
    if (value === undefined)
      throw refusal(
        what,
        path(i),
        shownValue(cell),
        'is not a number',
        'a number, or nothing where the reading is missing',
        remedyForCell(cell, form),
      )
    return value
  })
  if (kind === undefined) return values
  refuseWrongShare(what, values, kind, unit, path)
  if (unit === undefined || unit === unitOfNumbers(kind)) return values
  // Units of one kind differ by a factor and a zero point, which two numbers give.
  const [one, two] = [quantityFrom(`1 ${unit}`, kind), quantityFrom(`2 ${unit}`, kind)] as [number, number]
  return values.map((x) => one + (x - 1) * (two - one))
}

/** Refuses per cent where a fraction is expected, and fractions where per cent is. */
function refuseWrongShare(
  what: string,
  values: Float64Array,
  kind: KindName,
  unit: string | undefined,
  path: (i: number) => string,
): void {
  const plain = unitOfNumbers(kind)
  const there = values.filter((x) => !Number.isNaN(x))
  if (!SHARES.includes(kind) || there.length === 0) return
  const middle = medianInPlace(there)
  if ((unit === undefined || unit === plain) && middle > 1 && middle <= 100) {
    const i = values.findIndex((x) => x > 1)
    throw refusal(
      what,
      path(i),
      String(values[i]),
      'looks like per cent',
      `a fraction such as ${(values[i]! / 100).toPrecision(3)}`,
      'set the unit of the column to "%"',
    )
  }
  if (unit === '%' && middle > 0 && values.every((x) => Number.isNaN(x) || x <= 1)) {
    const i = values.findIndex((x) => x > 0)
    throw refusal(
      what,
      path(i),
      String(values[i]),
      'looks like a fraction',
      'per cent, as the unit of the column says',
      'leave the unit of the column out',
    )
  }
}

/** Kinds that are shares, which people write in per cent as well. */
const SHARES: readonly KindName[] = ['WaterContent', 'RelativeHumidity', 'DrainFraction', 'Porosity']

/** Rows in the order of time, without those that have no time or say again what another one says. */
function inOrder(
  rows: readonly CsvRecord[],
  { time }: { readonly time: Float64Array },
  columns: readonly Float64Array[],
  problems: DocumentProblem[],
) {
  const timed = Array.from(time.keys()).filter((i) => !Number.isNaN(time[i]))
  const timeless = time.length - timed.length
  const tell = (i: number, problem: string, hint: string) => {
    if (problems.length < MOST_PROBLEMS)
      problems.push({ path: `line ${rows[i]!.line}`, value: '', problem, expected: '', hint })
  }
  // A row of nothing but gaps at a time that the clock left out is what some loggers write there: counted, not told.
  const empty = (i: number) => columns.every((column) => Number.isNaN(column[i]))
  for (let i = 0; i < time.length && timeless > 0; i++)
    if (Number.isNaN(time[i]) && !empty(i))
      tell(i, 'shows a time that the clock left out, or showed twice in a table without order', 'check the clock')
  // The sort is stable: of two rows with one time the first in the table stays first.
  const order = timed.sort((a, b) => time[a]! - time[b]!)
  const keep: number[] = []
  let [doubled, conflicting] = [0, 0]
  for (const i of order) {
    const last = keep[keep.length - 1]
    if (last === undefined || time[last] !== time[i]) keep.push(i)
    else if (columns.every((column) => Object.is(column[last], column[i]))) doubled++
    else {
      conflicting++
      tell(
        i,
        `has the time of line ${rows[last]!.line} and other numbers`,
        'the first was kept; if clocks were changed, say so with "clock"',
      )
    }
  }
  return {
    time: Float64Array.from(keep, (i) => time[i]!),
    columns: columns.map((column) => Float64Array.from(keep, (i) => column[i]!)),
    timeless,
    doubled,
    conflicting,
  }
}

function stepOf(time: Float64Array): number {
  if (time.length < 2) return Number.NaN
  return medianInPlace(time.subarray(1).map((now, i) => now - time[i]!))
}
