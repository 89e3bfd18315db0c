import type { LocalOffset } from '../../record/local-time.js'
import type { KindName } from '../../text/generated/kind-types.js'
import type { Separator } from './table-form.js'
import type { DateOrder } from './table-times.js'

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
