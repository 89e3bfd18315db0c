import { InputError } from '../quantity/errors.js'
import { maxOf, minOf } from '../quantity/extremes.js'
import { numberWithUnit } from './number-with-unit.js'
import type { OverRange } from './over-range.js'
import type { PlotOptions } from './plot-options.js'
import { axisTitle, curveSentence } from './plot-words.js'

/** Bits of a braille character by column and row of its dots (Unicode, block U+2800). */
const DOTS: readonly (readonly number[])[] = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
]

/** How large a plot is, in characters, and which axes are logarithmic. */
export interface PlotSize {
  readonly columns: number
  readonly rows: number
  readonly log: PlotOptions['log']
}

/** Curves in characters, with axes, units, and for each one sentence that says what it shows. */
export function plotText(curves: readonly OverRange[], size: PlotSize): string {
  const { columns, rows, log } = size
  const [first] = curves
  if (first === undefined) throw new InputError('function', 'is missing', 'give one function, or several in a list')
  const known = curves.flatMap((curve) => curve.y.filter((value) => Number.isFinite(value)))
  if (known.length === 0) return `Nothing to plot: all ${first.y.length} points were refused. ${first.firstRefusal}`
  checkUnits(curves)
  const scale = scaleOf(known, log.includes('y'))
  const cells = drawn(curves, scale, columns, rows)
  const label = (value: number) => numberWithUnit(Number(value.toPrecision(3)), undefined)
  const ticks = new Map([
    [0, scale.value(1)],
    [Math.floor((rows - 1) / 2), scale.value(0.5)],
    [rows - 1, scale.value(0)],
  ])
  const wide = maxOf([...ticks.values()].map((value) => label(value).length))
  const lines = cells.map((row, i) => {
    const value = ticks.get(i)
    return `${(value === undefined ? '' : label(value)).padStart(wide)} │${row}`
  })
  const [left, right] = [first.x[0]!, first.x.at(-1) as number].map((end) => numberWithUnit(end, undefined))
  const axis = `${' '.repeat(wide)} └${'─'.repeat(columns)}`
  const ends = `${' '.repeat(wide + 2)}${left}${(right as string).padStart(columns - (left as string).length)}`
  return [titleOf(curves, log), ...lines, axis, ends, ...sentences(curves)].join('\n')
}

function titleOf(curves: readonly OverRange[], log: PlotOptions['log']): string {
  const [first] = curves as [OverRange]
  const name = curves.length === 1 ? first.yName || 'y' : curves.map((_, i) => markOf(i)).join(', ')
  const scales = log === '' ? '' : `, logarithmic ${[...log].join(' and ')}`
  return `${axisTitle(name, first.yUnit)} against ${axisTitle(first.xName || 'x', first.xUnit)}${scales}`
}

function sentences(curves: readonly OverRange[]): string[] {
  if (curves.length === 1) return curves.map(curveSentence)
  return curves.map((curve, i) => {
    const named = `${markOf(i)}${curve.yName === '' ? '' : ` ${curve.yName}`}`
    return curve.refused === curve.y.length
      ? `${named}: all points refused. ${curve.firstRefusal}`
      : `${named}: ${curveSentence(curve)}`
  })
}

function markOf(i: number): string {
  return String.fromCharCode(97 + (i % 26))
}

/** Curves on one axis must be in one unit. */
function checkUnits(curves: readonly OverRange[]): void {
  const seen = curves.filter((curve) => curve.refused < curve.y.length)
  for (const part of ['yUnit', 'xUnit'] as const) {
    const units = [...new Set(seen.map((curve) => curve[part]))]
    if (units.length > 1)
      throw new InputError(
        'curves',
        `are in ${units.map((unit) => unit || 'no unit').join(' and ')}`,
        'plot them one by one',
      )
  }
}

interface Scale {
  /** From 0 at the bottom to 1 at the top. */
  readonly place: (value: number) => number
  readonly value: (place: number) => number
}

/** A flat curve gets room above and below. */
function scaleOf(known: readonly number[], log: boolean): Scale {
  const [low, high] = [minOf(known), maxOf(known)]
  if (log && low <= 0)
    throw new InputError(
      'log',
      `has a value of ${numberWithUnit(low, undefined)}`,
      'only values above zero have a logarithm',
    )
  const [min, max] = log ? levels(Math.log(low), Math.log(high)) : levels(low, high)
  return {
    place: (value) => ((log ? Math.log(value) : value) - min) / (max - min),
    value: (place) => (log ? Math.exp(min + place * (max - min)) : min + place * (max - min)),
  }
}

function levels(low: number, high: number): [number, number] {
  if (high - low > 1e-12 * Math.max(Math.abs(high), Math.abs(low))) return [low, high]
  const room = Math.abs(low) * 0.1 || 1
  return [low - room, high + room]
}

function drawn(curves: readonly OverRange[], scale: Scale, columns: number, rows: number): string[] {
  const bits = Array.from({ length: rows }, () => new Array<number>(columns).fill(0))
  const ends = Array.from({ length: rows }, () => '')
  for (const [i, curve] of curves.entries()) {
    const places = curve.y.map((value, at): [number, number] | undefined =>
      Number.isFinite(value)
        ? [
            Math.round((at / (curve.x.length - 1)) * (columns * 2 - 1)),
            Math.round((1 - scale.place(value)) * (rows * 4 - 1)),
          ]
        : undefined,
    )
    drawLine(bits, places)
    const end = places.filter((place) => place !== undefined).at(-1)
    if (end !== undefined && curves.length > 1) ends[end[1] >> 2] += ` ${markOf(i)}`
  }
  return bits.map((line, row) => {
    const text = line.map((bit) => (bit === 0 ? ' ' : String.fromCharCode(0x2800 + bit))).join('')
    return ends[row] === '' ? text.trimEnd() : text + ends[row]
  })
}

/** Sets the dots from each point to the next; a gap breaks the line. */
function drawLine(bits: readonly number[][], places: readonly ([number, number] | undefined)[]): void {
  const set = (column: number, row: number) => {
    const line = bits[row >> 2]!
    line[column >> 1] = line[column >> 1]! | DOTS[column & 1]![row & 3]!
  }
  for (const [i, place] of places.entries()) {
    if (place === undefined) continue
    const [column, row] = place
    const [nextColumn, nextRow] = places[i + 1] ?? place
    const steps = Math.max(1, Math.abs(nextColumn - column), Math.abs(nextRow - row))
    for (let step = 0; step <= steps; step++)
      set(
        Math.round(column + ((nextColumn - column) * step) / steps),
        Math.round(row + ((nextRow - row) * step) / steps),
      )
  }
}
