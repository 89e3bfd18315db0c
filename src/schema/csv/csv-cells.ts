import { medianInPlace } from '../../numerics/select.js'
import { optionOr, requireRows } from '../../quantity/guard.js'
import { SENTINELS } from '../../quantity/missing.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { shownValue } from '../document-error.js'
import { quantityFrom, unitOfNumbers } from '../field/field.js'
import { refusal } from '../hostile-input.js'
import { decimalMarkOf, MISSING_WORDS, maybeThousands, type NumberForm, numberOfCell, remedyForCell } from './cell.js'
import type { CsvRecord } from './csv-lines.js'
import type { Places } from './csv-places.js'
import type { CsvSeriesOptions } from './csv-series-options.js'
import { dateOrderOf, orderedTimes, remedyForTime, timeOfCell } from './table-times.js'

/** Rows of a table and how they are to be read. */
export interface Reader {
  readonly what: string
  readonly header: CsvRecord
  readonly rows: readonly CsvRecord[]
  readonly options: CsvSeriesOptions
}

/** How numbers are written in the wanted columns. */
export function formOf({ what, header, rows, options }: Reader, places: Places): NumberForm {
  const { decimalMark, missing = MISSING_WORDS, sentinels = SENTINELS } = options
  function* cells() {
    for (const at of Object.values(places.columns))
      for (const { fields } of rows) if (/[.,]/.test(fields[at]!)) yield fields[at]!.trim()
  }
  const mark = decimalMark ?? decimalMarkOf(cells())
  if (mark === undefined) {
    const { row, at } = firstComma(rows, places)
    throw refusal(
      what,
      cellPath(row, header, at),
      shownValue(row.fields[at]!.trim()),
      'has a comma beside numbers with a point, or a comma that may part thousands',
      'one decimal mark',
      'leave thousands separators out, or set decimalMark',
    )
  }
  if (decimalMark === undefined) refuseThousands({ what, header, rows, options }, places, mark)
  return {
    decimalMark: mark,
    missing: new Set(missing.map((word) => word.toLowerCase())),
    sentinels: new Set(sentinels),
  }
}

/** Where the first number with a comma stands. */
function firstComma(rows: readonly CsvRecord[], places: Places): { readonly row: CsvRecord; readonly at: number } {
  for (const row of rows)
    for (const at of Object.values(places.columns)) if (/,\d/.test(row.fields[at]!)) return { row, at }
  return { row: rows[0]!, at: Object.values(places.columns)[0]! }
}

/** Refuses a column that reads 998, then 1.002: the mark may part thousands. */
function refuseThousands({ what, header, rows }: Reader, places: Places, mark: '.' | ','): void {
  for (const at of Object.values(places.columns)) {
    function* cells() {
      for (const { fields } of rows) yield fields[at]!.trim()
    }
    if (!maybeThousands(cells(), mark)) continue
    const row = rows.find(({ fields }) => fields[at]!.includes(mark))!
    throw refusal(
      what,
      cellPath(row, header, at),
      shownValue(row.fields[at]!.trim()),
      'may be a thousand, because the column has whole numbers of three digits beside it',
      'one decimal mark',
      'leave thousands separators out, or set decimalMark',
    )
  }
}

/** The times of the rows in universal time, and in which order they stand. */
export function timesOf({ what, header, rows, options }: Reader, places: Places) {
  const [day, hour] = places.time as [number, number?]
  const cells = rows.map(({ fields }) =>
    hour === undefined ? fields[day]!.trim() : `${fields[day]!.trim()} ${fields[hour]!.trim()}`,
  )
  const order = options.dateOrder ?? dateOrderOf(cells)
  const clock = optionOr(options.clock, [])
  requireRows(clock, 'clock')
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

/** So many different cells of a column are remembered with their numbers. */
const MAX_KNOWN = 4096

/** The numbers of a column in the unit of its kind. */
export function columnOf(
  { what, header, rows, options }: Reader,
  name: string,
  at: number,
  form: NumberForm,
): Float64Array {
  const { kind, unit } = options.columns[name]!
  const path = (i: number) => cellPath(rows[i]!, header, at)
  const read = (field: string, i: number) => {
    const cell = field.trim()
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
  }
  const values = eachOnce(rows, at, read)
  if (kind === undefined) return values
  refuseWrongShare(what, values, kind, unit, path)
  if (unit === undefined || unit === unitOfNumbers(kind)) return values
  // Units of one kind differ by a factor and a zero point, which two numbers give.
  const [one, two] = [quantityFrom(`1 ${unit}`, kind), quantityFrom(`2 ${unit}`, kind)] as [number, number]
  return values.map((x) => one + (x - 1) * (two - one))
}

/** Reads the cells of a column. Loggers write few different numbers: each is read once. */
function eachOnce(rows: readonly CsvRecord[], at: number, read: (field: string, i: number) => number): Float64Array {
  const values = new Float64Array(rows.length)
  const known = new Map<string, number>()
  for (let i = 0; i < rows.length; i++) {
    const field = rows[i]!.fields[at]!
    let value = known.get(field)
    if (value === undefined) {
      value = read(field, i)
      if (known.size < MAX_KNOWN) known.set(field, value)
    }
    values[i] = value
  }
  return values
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
