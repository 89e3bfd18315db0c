import { cubicAt, cubicSlopeAt, placeAtOnce, placeIn } from './cubic.js'
import type { NodeValues } from './node-values.js'
import type { TableEnds } from './table-ends.js'
import { CONDUCTIVITY, CONTENT, DRIEST, FILM, POTENTIAL, ROW, type TableRows, WETTEST } from './table-rows.js'

/** E-folds of suction beyond the driest at which an inverse reading stops. */
const FARTHEST = 7
/** Rows over which the one that holds a content is looked for step by step. */
const WALK = 8

/**
 * Reads a medium by what it holds: puts the suction at which it holds each water content in the place of another, near which it is looked for
 * first, and fills in what it does there.
 */
export type ReadByContent = (
  contents: Float64Array,
  suctions: Float64Array,
  into: NodeValues,
  start: number,
  end: number,
) => void

/** Reads the rows of a table by content, and has what lies beyond them read by `read`. */
export function readerByContent(
  table: TableRows,
  rowAt: (suction: number) => number,
  { wet, min }: TableEnds,
  read: ReadByContent,
): ReadByContent {
  const { rows } = table
  return (contents, suctions, into, start, end) => {
    const { capacity, conductivity, conductivitySlope, potential } = into
    for (let i = start; i < end; i++) {
      const content = contents[i]!
      if (content <= rows[CONTENT]! && content > min) {
        const near = suctions[i]!
        const r = rowOf(table, content, near >= WETTEST && near < DRIEST ? rowAt(near) : -1)
        const perLength = rows[r + 1]!
        if (perLength > 0) {
          const at = r + CONTENT
          if (!placeAtOnce(rows, at, contents, suctions, i)) placeIn(rows, at, contents, suctions, i)
          const x = suctions[i]!
          suctions[i] = rows[r]! + x / perLength
          capacity[i] = -perLength * cubicSlopeAt(rows, r + CONTENT, x)
          conductivity[i] = cubicAt(rows, r + CONDUCTIVITY, x)
          conductivitySlope[i] = perLength * cubicSlopeAt(rows, r + CONDUCTIVITY, x)
          potential[i] = cubicAt(rows, r + POTENTIAL, x)
          continue
        }
        suctions[i] = rows[r]!
      } else if (content > rows[CONTENT]!) {
        placeIn(wet, 0, contents, suctions, i)
        suctions[i]! *= WETTEST
      } else suctions[i] = DRIEST * Math.exp(Math.min((min - content) / FILM, FARTHEST))
      read(contents, suctions, into, i, i + 1)
    }
  }
}

/** Where the row that holds a water content stands: a few rows on from another, where there is one, or by halves. Behind the last is none that holds as much. */
function rowOf({ rows, count }: TableRows, content: number, near: number): number {
  let r = near
  for (let k = 0; k < WALK && near >= 0; k++) {
    if (rows[r + CONTENT]! < content) r -= ROW
    else if (rows[r + ROW + CONTENT]! >= content) r += ROW
    else return r
  }
  let low = 0
  let above = count
  while (above - low > 1) {
    const middle = (low + above) >> 1
    if (rows[middle * ROW + CONTENT]! >= content) low = middle
    else above = middle
  }
  return low * ROW
}
