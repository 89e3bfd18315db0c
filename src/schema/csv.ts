import { refusal } from './hostile-input.js'

/** No table of this package has more columns. */
const MOST_COLUMNS = 100

/**
 * The fields of a CSV text, row by row, exactly as RFC 4180 writes them: commas, double quotes doubled inside quotes, nothing outside
 * quotes, as many fields in each row as in the first. Rows may end with CR LF or with LF alone; a byte order mark is passed over.
 */
export function csvRows(what: string, text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0
  const bad = (problem: string, hint: string) =>
    refusal(what, `row ${rows.length + 1}`, '', problem, 'CSV as in RFC 4180', hint)
  while (at < text.length) {
    let field: string
    if (text[at] === '"') {
      const parts: string[] = []
      let from = at + 1
      for (;;) {
        const quote = text.indexOf('"', from)
        if (quote < 0) throw bad('has a quote that never closes', 'close it, or double it inside quotes')
        parts.push(text.slice(from, quote))
        at = quote + 1
        if (text[at] !== '"') break
        parts.push('"')
        from = at + 1
      }
      field = parts.join('')
    } else {
      let end = at
      // Four characters end a field; every character is looked at once.
      while (end < text.length && !',\r\n"'.includes(text[end] as string)) end++
      field = text.slice(at, end)
      if (text[end] === '"')
        throw bad('has a quote inside a field', 'put the whole field into quotes and double those inside')
      at = end
    }
    row.push(field)
    if (row.length > MOST_COLUMNS)
      throw bad(`has more than ${MOST_COLUMNS} fields`, 'check the separator and the row ends')
    if (text[at] === ',') {
      at++
      if (at < text.length) continue
      row.push('')
    } else if (text[at] === '\r' && text[at + 1] === '\n') at += 2
    else if (text[at] === '\n') at++
    else if (at < text.length)
      throw bad(
        'has text behind a closing quote, or a lone carriage return',
        'separate fields by commas and rows by CR LF',
      )
    if (rows.length > 0 && row.length !== (rows[0] as string[]).length)
      throw bad(`has ${row.length} fields, the first row ${(rows[0] as string[]).length}`, 'give every row as many')
    rows.push(row)
    row = []
  }
  return rows
}

/** A row of CSV as RFC 4180 writes it, with its end. */
export function csvLine(fields: readonly string[]): string {
  return `${fields.map((field) => (/[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field)).join(',')}\r\n`
}
