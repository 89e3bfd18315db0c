import { type CsvRecord, csvRecords } from './csv-lines.js'

/** Separators between the fields of a table, as spreadsheets and loggers write them. */
export const SEPARATORS = [',', ';', '\t', '|'] as const
/** A separator of a table. */
export type Separator = (typeof SEPARATORS)[number]

/** Lines that are looked at to find the form of a table. */
const LOOKED = 50

/** The rows of a table below its header, without comments and blank lines. */
export interface TableRows {
  readonly header: CsvRecord
  readonly rows: readonly CsvRecord[]
  readonly separator: Separator
}

/** The rows of a table with its separator, which is found where it is not given; undefined for a text without a line. */
export function tableRows(text: string, separator: Separator | undefined, comment: string): TableRows | undefined {
  const said = SAID.exec(text)
  const found = separator ?? SEPARATORS.find((one) => one === said?.[1]) ?? separatorOf(text, comment)
  const records = csvRecords(text, found)
  const [header, ...rows] = linesOf(said === null ? records : records.slice(1), comment)
  if (header === undefined) return undefined
  // A logger that starts again, and files that were joined, name their columns again.
  return { header, rows: rows.filter((row) => !sameFields(row, header)), separator: found }
}

/** A first line in which a spreadsheet says what separates the fields. */
const SAID = /^\ufeff?"?sep=([,;\t|])"?(?=[\r\n])/i

function sameFields(row: CsvRecord, header: CsvRecord): boolean {
  return (
    row.fields.length === header.fields.length &&
    row.fields.every((field, k) => field.replace(/^\ufeff/, '').trim() === header.fields[k]!.trim())
  )
}

/** Records that are neither comments nor blank; spreadsheets leave lines with nothing but separators behind. */
function linesOf(records: readonly CsvRecord[], comment: string): CsvRecord[] {
  return records.filter(({ fields }) => {
    if (comment !== '' && fields[0]!.trimStart().startsWith(comment)) return false
    return fields.some((field) => field.trim() !== '')
  })
}

/** The separator that cuts the first lines into the same number of fields as the header, and into most of them. */
function separatorOf(text: string, comment: string): Separator {
  let head = 0
  for (let lines = 0; lines < LOOKED && head < text.length; lines++) {
    const next = text.indexOf('\n', head)
    head = next < 0 ? text.length : next + 1
  }
  // Text without a line feed may have lone carriage returns.
  const part = text.slice(0, Math.min(head, 100_000))
  let best: Separator = ','
  let score = 0
  for (const separator of SEPARATORS) {
    const [header, ...rows] = linesOf(csvRecords(part, separator), comment)
    const width = header?.fields.length ?? 0
    if (width < 2) continue
    const alike = rows.filter(({ fields }) => fields.length === width).length
    const here = (alike + 0.5) / (rows.length + 0.5) + width / 1000
    if (here > score) [best, score] = [separator, here]
  }
  return best
}
