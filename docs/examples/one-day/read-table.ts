import { readFileSync } from 'node:fs'
import { CsvError, parse } from 'csv-parse/sync'
import { Trouble } from './trouble.js'

/** Since when local clocks were ahead of universal time by how much: `{ from: '2026-03-29T03:00', hoursFromUtc: 2 }`. */
export interface ClockOffset {
  readonly from: string
  readonly hoursFromUtc: number
}

/** A CSV file whose numbers are read column by column; a complaint names file, line, column and what was expected. */
export class Table {
  readonly file: string
  readonly columns: readonly string[]
  private readonly rows: readonly { readonly line: number; readonly cells: readonly string[] }[]

  constructor(file: string) {
    this.file = file
    let text: string
    try {
      text = readFileSync(file, 'utf8')
    } catch (error) {
      throw new Trouble(
        `${file}: cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'}); expected a CSV file`,
      )
    }
    let parsed: { record: string[]; info: { lines: number } }[]
    try {
      parsed = parse(text, {
        bom: true,
        info: true,
        skip_empty_lines: true,
        trim: true,
        relax_column_count: true,
      }) as unknown as typeof parsed
    } catch (error) {
      if (error instanceof CsvError) throw new Trouble(`${file} line ${error.lines ?? '?'}: ${error.message}`)
      throw error
    }
    const [head, ...rest] = parsed
    if (head === undefined || rest.length === 0)
      throw new Trouble(`${file}: has no rows; expected a line of column names and a line for each reading`)
    this.columns = head.record
    for (const { record, info } of rest) {
      if (record.length !== head.record.length)
        throw new Trouble(
          `${file} line ${info.lines}: has ${record.length} fields; expected ${head.record.length} (${head.record.join(', ')})`,
        )
    }
    this.rows = rest.map(({ record, info }) => ({ line: info.lines, cells: record }))
  }

  get length(): number {
    return this.rows.length
  }

  /** A column of numbers; an empty field is a missing value, NaN. */
  numbers(column: string): Float64Array {
    const at = this.position(column)
    return Float64Array.from(this.rows, ({ line, cells }) => {
      const cell = cells[at] as string
      if (cell === '') return Number.NaN
      const value = Number(cell)
      if (!Number.isFinite(value))
        throw this.complaint(line, column, at, cell, 'a number, or nothing where the reading is missing')
      return value
    })
  }

  /** A column of times, in seconds since 1970 in universal time. Times without an offset need to know what the clock did. */
  instants(column: string, clock: readonly ClockOffset[] = []): Float64Array {
    const at = this.position(column)
    const changes = clock.map(({ from, hoursFromUtc }) => ({ from: localSeconds(from) ?? Number.NaN, hoursFromUtc }))
    return Float64Array.from(this.rows, ({ line, cells }) => {
      const cell = cells[at] as string
      const match = /^(\d{4}-\d\d-\d\d)(?:[T ](\d\d:\d\d(?::\d\d(?:\.\d+)?)?))?(Z|[+-]\d\d:\d\d)?$/.exec(cell)
      const local = match ? localSeconds(`${match[1]}T${match[2] ?? '00:00'}`) : undefined
      if (match === null || local === undefined)
        throw this.complaint(line, column, at, cell, 'a time such as 2026-05-19T07:10+02:00')
      if (match[3] !== undefined) return local - offsetSeconds(match[3])
      const change = changes.filter(({ from }) => local >= from).at(-1)
      if (change === undefined)
        throw this.complaint(
          line,
          column,
          at,
          cell,
          'a time with its offset (…+02:00 or …Z), or a "clock" in the setup that says how far local time is ahead of universal time',
        )
      return local - change.hoursFromUtc * 3600
    })
  }

  private position(column: string): number {
    const at = this.columns.indexOf(column)
    if (at < 0)
      throw new Trouble(`${this.file} line 1: there is no column "${column}"; the file has ${this.columns.join(', ')}`)
    return at
  }

  private complaint(line: number, column: string, at: number, cell: string, expected: string): Trouble {
    return new Trouble(
      `${this.file} line ${line}, column ${at + 1} (${column}): ${JSON.stringify(cell.slice(0, 40))} found; expected ${expected}`,
    )
  }
}

function localSeconds(text: string): number | undefined {
  const milliseconds = Date.parse(`${text}Z`)
  return Number.isNaN(milliseconds) ? undefined : milliseconds / 1000
}

function offsetSeconds(text: string): number {
  if (text === 'Z') return 0
  const [hours, minutes] = text.slice(1).split(':').map(Number)
  return (text[0] === '-' ? -1 : 1) * ((hours as number) * 3600 + (minutes as number) * 60)
}
