/** Words that stand for a missing reading, in small letters. */
export const MISSING_WORDS: readonly string[] = [
  '',
  'nan',
  'na',
  'n/a',
  'null',
  'none',
  '-',
  '−',
  '–',
  '--',
  '#n/a',
  '#nv',
  '#value!',
]

/** How the numbers of a table are written. */
export interface NumberForm {
  readonly decimalMark: '.' | ','
  readonly missing: ReadonlySet<string>
  readonly sentinels: ReadonlySet<number>
}

const WITH_POINT = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i
const WITH_COMMA = /^[+-]?(\d+,?\d*|,\d+)(e[+-]?\d+)?$/i

/** The number of a cell, NaN where it is missing, or undefined where it is no number. */
export function numberOfCell(cell: string, form: NumberForm): number | undefined {
  const { decimalMark, missing, sentinels } = form
  const plain = cell.startsWith('−') && cell.length > 1 ? `-${cell.slice(1)}` : cell
  if (decimalMark === '.' ? WITH_POINT.test(plain) : WITH_COMMA.test(plain)) {
    const value = Number(decimalMark === '.' ? plain : plain.replace(',', '.'))
    if (Math.abs(value) === Infinity) return undefined
    return sentinels.has(value) ? Number.NaN : value
  }
  return missing.has(plain.toLowerCase()) ? Number.NaN : undefined
}

/** What could be meant by a cell that is no number, in words. */
export function remedyForCell(cell: string, { decimalMark }: NumberForm): string {
  if (/^[+-]?(inf|infinity|[\d.,]+e\+?\d{3,})$/i.test(cell)) return 'no reading is infinite; leave a missing one empty'
  if (/%$/.test(cell)) return 'leave the sign out and set the unit of the column to "%"'
  if (/^[+-]?\d{1,3}([.,'’\s]\d{3})+([.,]\d+)?$/.test(cell)) return 'leave thousands separators out, or set decimalMark'
  if (/^[+-]?\d*[.,]\d+$/.test(cell)) return `the decimal mark of this table is "${decimalMark}"; set decimalMark`
  return 'correct it, or list it under "missing" where it stands for no reading'
}

/**
 * Whether the numbers of a column can be thousands: three digits behind each mark, none that begins with zero, and between them whole
 * numbers of three digits, as 998, 1.002 stand for 998 and 1002.
 */
export function maybeThousands(cells: Iterable<string>, mark: '.' | ','): boolean {
  let [marked, whole] = [false, false]
  for (const cell of cells) {
    if (cell.includes(mark)) {
      if (!/^[+\-−]?[1-9]\d{0,2}[.,]\d{3}$/.test(cell)) return false
      marked = true
    } else whole ||= /^[+\-−]?\d{3}$/.test(cell)
  }
  return marked && whole
}

/** Which decimal mark the cells of a table have; undefined where they could be read in both ways. */
export function decimalMarkOf(cells: Iterable<string>): '.' | ',' | undefined {
  let [points, commas, sureCommas] = [false, false, false]
  for (const cell of cells) {
    if (cell.includes(',')) {
      if (!/^[+\-−]?\d*,\d+(e[+-]?\d+)?$/i.test(cell)) continue
      commas = true
      // 1,234 may be a thousand or one and a bit; 0,234 and 1,23 cannot be a thousand.
      sureCommas ||= !/^[+\-−]?[1-9]\d{0,2},\d{3}$/.test(cell)
    } else points ||= /^[+\-−]?\d*\.\d+(e[+-]?\d+)?$/i.test(cell)
  }
  if (!commas) return '.'
  return sureCommas && !points ? ',' : undefined
}
