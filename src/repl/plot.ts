import { maxOf, minOf } from '../quantity/extremes.js'
import type { OverRange } from './over-range.js'
import { numberWithUnit } from './shown.js'

/** Bits of a braille character by column and row of its dots (Unicode, block U+2800). */
const DOTS: readonly (readonly number[])[] = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
]

/** How large a plot is, in characters. */
export interface PlotSize {
  readonly columns: number
  readonly rows: number
}

/** A curve in characters, with axes, units, and one sentence that says what it shows. */
export function plotText(curve: OverRange, { columns, rows }: PlotSize): string {
  const known = curve.y.filter((value) => Number.isFinite(value))
  if (known.length === 0) return `Nothing to plot: all ${curve.y.length} points were refused. ${curve.firstRefusal}`
  const [low, high] = levels(minOf(known), maxOf(known))
  const cells = drawn(curve, low, high, columns, rows)
  const label = (value: number) => numberWithUnit(Number(value.toPrecision(3)), undefined)
  const wide = Math.max(...[low, (low + high) / 2, high].map((value) => label(value).length))
  const lines = cells.map((row, i) => {
    const value =
      i === 0 ? high : i === rows - 1 ? low : i === Math.floor((rows - 1) / 2) ? (low + high) / 2 : undefined
    return `${(value === undefined ? '' : label(value)).padStart(wide)} │${row}`
  })
  const left = numberWithUnit(curve.x[0] as number, undefined)
  const right = numberWithUnit(curve.x.at(-1) as number, undefined)
  const axis = `${' '.repeat(wide)} └${'─'.repeat(columns)}`
  const ends = `${' '.repeat(wide + 2)}${left}${right.padStart(columns - left.length)}`
  const title = `${curve.yName || 'y'}${inUnit(curve.yUnit)} against ${curve.xName || 'x'}${inUnit(curve.xUnit)}`
  return [title, ...lines, axis, ends, sentence(curve)].join('\n')
}

function inUnit(unit: string): string {
  return unit === '' ? '' : ` (${unit})`
}

/** A flat curve gets room above and below. */
function levels(low: number, high: number): [number, number] {
  if (high - low > 1e-12 * Math.max(Math.abs(high), Math.abs(low))) return [low, high]
  const room = Math.abs(low) * 0.1 || 1
  return [low - room, high + room]
}

function drawn(curve: OverRange, low: number, high: number, columns: number, rows: number): string[] {
  const bits = Array.from({ length: rows }, () => new Array<number>(columns).fill(0))
  const last = curve.x.length - 1
  const place = (i: number): [number, number] => [
    Math.round((i / last) * (columns * 2 - 1)),
    Math.round((1 - ((curve.y[i] as number) - low) / (high - low)) * (rows * 4 - 1)),
  ]
  const set = (column: number, row: number) => {
    const line = bits[row >> 2] as number[]
    line[column >> 1] = (line[column >> 1] as number) | (DOTS[column & 1]?.[row & 3] as number)
  }
  for (let i = 0; i <= last; i++) {
    if (!Number.isFinite(curve.y[i] as number)) continue
    const [column, row] = place(i)
    const [nextColumn, nextRow] = i < last && Number.isFinite(curve.y[i + 1] as number) ? place(i + 1) : [column, row]
    const steps = Math.max(1, Math.abs(nextColumn - column), Math.abs(nextRow - row))
    for (let step = 0; step <= steps; step++)
      set(
        Math.round(column + ((nextColumn - column) * step) / steps),
        Math.round(row + ((nextRow - row) * step) / steps),
      )
  }
  return bits.map((line) =>
    line
      .map((bit) => (bit === 0 ? ' ' : String.fromCharCode(0x2800 + bit)))
      .join('')
      .trimEnd(),
  )
}

/** The curve in words, for those who do not see it. */
function sentence(curve: OverRange): string {
  const at = curve.y
    .map((value, i) => [curve.x[i] as number, value] as const)
    .filter(([, value]) => Number.isFinite(value))
  const values = at.map(([, value]) => value)
  const first = at[0] as readonly [number, number]
  const end = at.at(-1) as readonly [number, number]
  const rising = values.every((value, i) => i === 0 || value >= (values[i - 1] as number))
  const falling = values.every((value, i) => i === 0 || value <= (values[i - 1] as number))
  const way = rising && falling ? 'Does not change' : rising ? 'Rises' : falling ? 'Falls' : 'Rises and falls'
  const point = ([x, y]: readonly [number, number]) =>
    `${numberWithUnit(y, curve.yUnit)} at ${numberWithUnit(x, curve.xUnit)}`
  const refused =
    curve.refused === 0 ? '' : ` ${curve.refused} of ${curve.y.length} points refused. ${curve.firstRefusal}`
  return `${way}: ${point(first)}, ${point(end)}; lowest ${numberWithUnit(minOf(values), curve.yUnit)}, highest ${numberWithUnit(maxOf(values), curve.yUnit)}.${refused}`
}
