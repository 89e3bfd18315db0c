/** One record of a CSV text: its fields, the line on which it begins, and what is wrong with its form. */
export interface CsvRecord {
  readonly line: number
  readonly fields: readonly string[]
  readonly fault?: { readonly problem: string; readonly hint: string }
  /** Whether it ends at a carriage return without a line feed. */
  readonly loneReturn?: true
}

/**
 * The records of a CSV text, for every reader of this package. Fields end at the separator, records at CR LF, LF or a lone CR; a field in
 * double quotes may hold all of them, and its quotes are doubled. A byte order mark is passed over. What breaks this form is told with
 * its record, which ends at the end of the line.
 */
export function csvRecords(text: string, separator: string): CsvRecord[] {
  const records: CsvRecord[] = []
  let at = text.charCodeAt(0) === 0xfeff ? 1 : 0
  let line = 1
  while (at < text.length) {
    const end = endOfLine(text, at)
    const whole = text.slice(at, end)
    if (!whole.includes('"')) {
      const fields = whole.split(separator)
      records.push(isLoneReturn(text, end) ? { line, fields, loneReturn: true } : { line, fields })
      at = afterLine(text, end)
      line++
      continue
    }
    const read = quotedRecord(text, at, separator)
    records.push({
      line,
      fields: read.fields,
      ...(read.fault && { fault: read.fault }),
      ...(isLoneReturn(text, read.next - 1) && { loneReturn: true as const }),
    })
    line += read.lines
    at = read.next
  }
  return records
}

/** Where a line ends: before LF, CR LF or a lone CR, or at the end of the text. */
function endOfLine(text: string, from: number): number {
  const feed = text.indexOf('\n', from)
  const end = feed < 0 ? text.length : feed
  const turn = text.slice(from, end).indexOf('\r')
  return turn < 0 ? end : from + turn
}

function isLoneReturn(text: string, end: number): boolean {
  return text[end] === '\r' && text[end + 1] !== '\n'
}

function afterLine(text: string, end: number): number {
  return text[end] === '\r' && text[end + 1] === '\n' ? end + 2 : end + 1
}

interface ReadRecord {
  readonly fields: string[]
  readonly fault?: { readonly problem: string; readonly hint: string }
  readonly lines: number
  readonly next: number
}

/** A record with quotes in it, which may go over several lines. */
function quotedRecord(text: string, begin: number, separator: string): ReadRecord {
  const fields: string[] = []
  const broken = (problem: string, hint: string): ReadRecord => {
    const end = endOfLine(text, begin)
    return {
      fields: text.slice(begin, end).split(separator),
      fault: { problem, hint },
      lines: 1,
      next: afterLine(text, end),
    }
  }
  let lines = 1
  let at = begin
  for (;;) {
    let field: string
    if (text[at] === '"') {
      const parts: string[] = []
      let from = at + 1
      for (;;) {
        const quote = text.indexOf('"', from)
        if (quote < 0) return broken('has a quote that never closes', 'close it, or double it inside quotes')
        parts.push(text.slice(from, quote))
        at = quote + 1
        if (text[at] !== '"') break
        parts.push('"')
        from = at + 1
      }
      field = parts.join('')
      lines += field.split('\n').length - 1
      if (at < text.length && text[at] !== separator && text[at] !== '\n' && text[at] !== '\r')
        return broken('has text behind a closing quote', 'put the whole field into quotes and double those inside')
    } else {
      let end = at
      while (end < text.length && text[end] !== separator && text[end] !== '\n' && text[end] !== '\r') end++
      field = text.slice(at, end)
      if (field.includes('"'))
        return broken('has a quote inside a field', 'put the whole field into quotes and double those inside')
      at = end
    }
    fields.push(field)
    if (text[at] !== separator) return { fields, lines, next: afterLine(text, at) }
    at++
  }
}
