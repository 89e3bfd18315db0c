import type { Missable } from './zone-record.js'

/** A row of a kind of input: its time and its numbers, null where one is missing. */
export type Row = readonly [time: number, ...numbers: Missable[]]

/** Rows of one kind: full blocks and one that is being filled, so that a step copies only a few rows. */
export interface KeptRows {
  readonly full: readonly (readonly Row[])[]
  readonly open: readonly Row[]
}

const BLOCK = 64
export const NO_ROWS: KeptRows = { full: [], open: [] }

/** Rows with one more at its place in time, behind those of the same time. */
export function withRow(rows: KeptRows, row: Row): KeptRows {
  if (!(lastTime(rows) > row[0])) return appended(rows, row)
  const all = allRows(rows)
  let at = all.length
  while (at > 0 && all[at - 1]![0] > row[0]) at--
  return inBlocks([...all.slice(0, at), row, ...all.slice(at)])
}

/** The same, unless there is a row of this time. */
export function withNewRow(rows: KeptRows, row: Row): KeptRows {
  const last = lastTime(rows)
  if (last < row[0]) return appended(rows, row)
  return last === row[0] || allRows(rows).some(([time]) => time === row[0]) ? rows : withRow(rows, row)
}

function appended({ full, open }: KeptRows, row: Row): KeptRows {
  return open.length + 1 < BLOCK ? { full, open: [...open, row] } : { full: [...full, [...open, row]], open: [] }
}

/** Rows from a moment on. */
export function rowsSince(rows: KeptRows, begin: number): KeptRows {
  return inBlocks(allRows(rows).filter(([time]) => time >= begin))
}

export function inBlocks(rows: readonly Row[]): KeptRows {
  const whole = rows.length - (rows.length % BLOCK)
  const full: Row[][] = []
  for (let i = 0; i < whole; i += BLOCK) full.push(rows.slice(i, i + BLOCK))
  return { full, open: rows.slice(whole) }
}

export function allRows({ full, open }: KeptRows): Row[] {
  return [...full.flat(), ...open]
}

/** The time of the last row; minus infinity where there is none. */
export function lastTime({ full, open }: KeptRows): number {
  const row = open[open.length - 1] ?? full[full.length - 1]?.[BLOCK - 1]
  return row?.[0] ?? -Infinity
}
