import { medianInPlace } from '../../numerics/select.js'
import { InputError } from '../../quantity/errors.js'
import { optionOr, requireObject } from '../../quantity/guard.js'
import { DocumentError, type DocumentProblem } from '../document-error.js'
import { limitedText, refusal } from '../hostile-input.js'
import { columnOf, formOf, timesOf } from './csv-cells.js'
import { checkOptions, placesOf, wholeRows } from './csv-places.js'
import type { CsvSeriesOptions } from './csv-series-options.js'
import { inOrder } from './rows-in-order.js'
import { type Separator, tableRows } from './table-form.js'
import { type DecodedText, textFromBytes } from './text-from-bytes.js'

/** Columns of a table in the order of time, and what became of every row: `rows` is the sum of the three counts and the length. */
export interface CsvSeries {
  /** Times, rising. Unit: s. */
  readonly time: Float64Array
  /** The wanted columns; NaN is missing. Unit: that of the kind. */
  readonly columns: Readonly<Record<string, Float64Array>>
  /** Rows below the header, comments, blank lines and names that are repeated left out. Unit: 1. */
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
 * const table = seriesFromCsv('Zeit;Feuchte\r\n19.05.2026 07:05;55,3\r\n19.05.2026 07:00;NA\r\n', {
 *   time: 'Zeit', columns: { A: { column: 'Feuchte', kind: 'WaterContent', unit: '%' } }, clock: [{ from: 0, ahead: 7200 }], maxCharacters: 1000,
 * })
 * table // => { time: [1779166800, 1779167100], columns: { A: [NaN, 0.553] }, order: 'newest-first', separator: ';', decimalMark: ',' }
 */
export function seriesFromCsv(data: string | Uint8Array, options: CsvSeriesOptions): CsvSeries {
  requireObject(options, 'options')
  if (typeof data !== 'string' && !ArrayBuffer.isView(data))
    throw new InputError('data', `a ${typeof data} is no table`, 'give text, or the bytes of a file')
  const what = options.name ?? 'table'
  checkOptions(what, options)
  const decoded = typeof data === 'string' ? { text: data, encoding: 'text' as const } : textFromBytes(data)
  const text = limitedText(what, decoded.text, optionOr(options.maxCharacters, TABLE_CHARACTERS))
  const table = tableRows(text, options.separator, options.comment ?? '#')
  if (table === undefined || table.rows.length === 0)
    throw refusal(what, '', '', 'has no rows', 'a line of column names and a line for each reading', 'check the export')
  const places = placesOf(what, table.header, options)
  const problems: DocumentProblem[] = []
  const whole = wholeRows(table.rows, table.header, !/[\r\n]$/.test(text), table.separator, problems)
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

function stepOf(time: Float64Array): number {
  if (time.length < 2) return Number.NaN
  return medianInPlace(time.subarray(1).map((now, i) => now - time[i]!))
}
