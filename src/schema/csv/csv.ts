import { refusal } from '../hostile-input.js'
import { csvRecords } from './csv-lines.js'

/** No table of this package has more columns. */
const MAX_COLUMNS = 100

/**
 * The fields of a CSV text, row by row, exactly as RFC 4180 writes them: commas, double quotes doubled inside quotes, nothing outside
 * quotes, as many fields in each row as in the first. Rows may end with CR LF or with LF alone; a byte order mark is passed over.
 */
export function csvRows(what: string, text: string): string[][] {
  const bad = (row: number, problem: string, hint: string) =>
    refusal(what, `row ${row}`, '', problem, 'CSV as in RFC 4180', hint)
  const records = csvRecords(text, ',')
  const width = records[0]?.fields.length ?? 0
  return records.map(({ fields, fault, loneReturn }, i) => {
    if (loneReturn) throw bad(i + 1, 'ends at a lone carriage return', 'end rows by CR LF')
    if (fault !== undefined) throw bad(i + 1, fault.problem, fault.hint)
    if (fields.length > MAX_COLUMNS)
      throw bad(i + 1, `has more than ${MAX_COLUMNS} fields`, 'check the separator and the row ends')
    if (fields.length !== width)
      throw bad(i + 1, `has ${fields.length} fields, the first row ${width}`, 'give every row as many')
    return [...fields]
  })
}

/** A row of CSV as RFC 4180 writes it, with its end. */
export function csvLine(fields: readonly string[]): string {
  return `${fields.map((field) => (/[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field)).join(',')}\r\n`
}
