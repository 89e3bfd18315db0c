import { type Instant, instant } from '../../quantity/calendar.js'
import { InputError } from '../../quantity/errors.js'
import { optionOr, requireList, requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { KINDS } from '../../text/generated/kinds.js'
import { DocumentError, type DocumentProblem, MAX_PROBLEMS } from '../document-error.js'
import { unitOfNumbers } from '../field/field.js'
import { limitedText, refusal } from '../hostile-input.js'
import { instantFromText, textFromInstant } from '../instant-text.js'
import { problemFrom } from '../problem-from.js'
import type { ReadingKind, ReadingLimit } from '../terms.js'
import { checkReading, readingValue, type TidyReading } from '../tidy-reading.js'
import { csvLine, csvRows } from './csv.js'

/** How a table is read. */
export interface TableOptions extends ReadingLimit {
  /** Whether columns that the table should not have are refused, as by default, or passed over. */
  readonly unknownColumns?: 'refuse' | 'pass-over'
}

/** The readings of a table, and what became of every row: `rows` is the sum of readings and refused. */
export interface TableReadings {
  /** The readings, in the order of the rows. */
  readonly readings: readonly TidyReading[]
  /** Rows below the header. Unit: 1. */
  readonly rows: number
  /** Rows that are no reading. Unit: 1. */
  readonly refused: number
  /** Numbers of those rows in the file, whose header is row 1. Unit: 1. */
  readonly refusedRows: readonly number[]
  /** What is wrong with the first hundred of them. */
  readonly problems: readonly DocumentProblem[]
}

const WHAT = 'table of readings'
const NEEDED = ['time', 'source', 'quantity', 'value', 'unit'] as const
const COLUMNS: readonly string[] = [...NEEDED, 'quality']

/**
 * Readings from a tidy table: CSV with one reading a row and the columns time, source, quantity, value, unit and, if wanted, quality.
 *
 * Times are ISO 8601 with a zone, or seconds since 1970. The quantity is the name of a kind, such as `WaterContent` or `BulkEC`, or
 * `RawReading`. The unit is any that the kind accepts; empty, it is the canonical one. An empty value is a missing reading.
 *
 * @procedure Reads CSV as in RFC 4180, in one pass; converts each row; keeps going where a row is bad and counts it. A table that is not
 * CSV, or lacks a column, is refused as a whole.
 * @param text - The CSV text, with a header.
 * @param options - What to do with other columns, and the longest text to look at.
 * @returns The readings, and counts of rows by what became of them.
 * @throws `DocumentError`, an `InputError`, for text that is no such table; `DomainError` for a limit of characters that is none.
 * @source rfc-4180-2005, section 2 (form of CSV)
 * @example
 * const table = readingsFromTidyCsv(
 *   'time,source,quantity,value,unit\r\n2026-05-19T06:30:00Z,A1,WaterContent,55,%\r\n2026-05-19T06:35:00Z,A1,WaterContent,155,%\r\n',
 *   { maxCharacters: 1000 },
 * )
 * table.readings // => [{ time: 1779172200, source: 'A1', kind: 'WaterContent', value: 0.55 }]
 * table.refusedRows // => [3]
 */
export function readingsFromTidyCsv(text: string, options: TableOptions = {}): TableReadings {
  requireObject(options, 'options')
  const unknown = oneOf(optionOr(options.unknownColumns, 'refuse'), ['refuse', 'pass-over'], 'unknownColumns')
  const [header, ...rows] = csvRows(WHAT, limitedText(WHAT, text, options.maxCharacters))
  const column = columnsOf(header ?? [], unknown)
  const readings: TidyReading[] = []
  const refusedRows: number[] = []
  const problems: DocumentProblem[] = []
  rows.forEach((row, i) => {
    const wrong: DocumentProblem[] = []
    problemFrom(wrong, `row ${i + 2}`, '', () => readings.push(readingOf((name) => row[column(name)] ?? '')))
    if (wrong.length === 0) return
    refusedRows.push(i + 2)
    if (problems.length < MAX_PROBLEMS) problems.push(...wrong)
  })
  return { readings, rows: rows.length, refused: refusedRows.length, refusedRows, problems }
}

/**
 * A tidy table of readings: CSV with one reading a row, numbers in canonical units.
 *
 * @procedure Writes a header and one row a reading, as RFC 4180 has it; a missing reading has an empty value; a time that milliseconds
 * do not hold in full is written as seconds since 1970.
 * @param readings - The readings, made by `readingsFromTidyCsv`, `readingsFromSenml` or by hand.
 * @returns CSV text, which `readingsFromTidyCsv` reads again without loss.
 * @throws `DocumentError`, an `InputError` that lists every reading that cannot be written.
 * @source rfc-4180-2005, section 2 (form of CSV)
 * @example
 * const reading: TidyReading = { time: instant(1779172200), source: 'A1', kind: 'WaterContent', value: 0.55 }
 * tidyCsvFromReadings([reading]).split('\r\n')[1] // => '2026-05-19T06:30:00Z,A1,WaterContent,0.55,m³/m³,'
 */
export function tidyCsvFromReadings(readings: readonly TidyReading[]): string {
  requireList(readings, 'readings')
  const problems: DocumentProblem[] = []
  const lines = [csvLine(COLUMNS)]
  readings.forEach((reading, i) => {
    if (problems.length >= MAX_PROBLEMS) return
    problemFrom(problems, `[${i}]`, '', () => {
      const { time, source, kind, value, quality } = checkReading(reading)
      const number = Number.isNaN(value) ? '' : String(value)
      const unit = kind === 'RawReading' ? '' : unitOfNumbers(kind)
      lines.push(
        csvLine([textFromInstant(time), source, kind, number, unit, quality === undefined ? '' : String(quality)]),
      )
    })
  })
  const [first, ...more] = problems
  if (first !== undefined) throw new DocumentError('readings', [first, ...more])
  return lines.join('')
}

/** Where each column stands. */
function columnsOf(header: readonly string[], unknownColumns: 'refuse' | 'pass-over'): (name: string) => number {
  const refuse = (problem: string, hint: string) => refusal(WHAT, 'header', '', problem, COLUMNS.join(','), hint)
  for (const name of NEEDED)
    if (!header.includes(name)) throw refuse(`has no column "${name}"`, 'add it to the first row')
  if (new Set(header).size !== header.length) throw refuse('names a column twice', 'name each once')
  const other = header.find((name) => !COLUMNS.includes(name))
  if (other !== undefined && unknownColumns === 'refuse')
    throw refuse(`has a column "${other.slice(0, 40)}"`, 'remove it, or read with unknownColumns: "pass-over"')
  const places = new Map(header.map((name, i) => [name, i]))
  return (name) => places.get(name) ?? -1
}

function readingOf(field: (name: string) => string): TidyReading {
  const kind = kindOf(field('quantity'))
  const flag = field('quality')
  return checkReading({
    time: timeOf(field('time')),
    source: field('source'),
    kind,
    value: numberOf(field('value'), field('unit'), kind),
    ...(flag === '' ? {} : { quality: Number(flag) }),
  })
}

function kindOf(name: string): ReadingKind {
  if (name === 'RawReading' || Object.hasOwn(KINDS, name)) return name as ReadingKind
  throw new InputError(
    'quantity',
    `"${name.slice(0, 40)}" is not a kind of quantity`,
    'write it as WaterContent, BulkEC, Temperature or RawReading',
  )
}

function timeOf(text: string): Instant {
  return /^-?\d+(\.\d+)?(e[+-]?\d+)?$/.test(text) ? instant(Number(text)) : instantFromText(text)
}

function numberOf(number: string, unit: string, kind: ReadingKind): number {
  if (number === '') return Number.NaN
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(number))
    throw new InputError(
      'value',
      `"${number.slice(0, 40)}" is not a number`,
      'write a decimal point and no thousands separator; leave a missing reading empty',
    )
  if (unit === '' || (kind !== 'RawReading' && unit === unitOfNumbers(kind))) return readingValue(Number(number), kind)
  if (kind === 'RawReading')
    throw new InputError(
      'unit',
      `"${unit.slice(0, 40)}" stands with a raw reading`,
      'leave the unit of raw readings empty',
    )
  // Side by side, `1` and `500 mL` would be one number.
  if (/^\d/.test(unit) && !/^1 ?\//.test(unit))
    throw new InputError('unit', `"${unit.slice(0, 40)}" starts with a digit`, 'write the unit alone')
  return readingValue(`${number} ${unit}`, kind)
}
