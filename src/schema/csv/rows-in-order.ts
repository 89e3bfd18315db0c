import { type DocumentProblem, MAX_PROBLEMS } from '../document-error.js'
import type { CsvRecord } from './csv-lines.js'

/** Rows in the order of time, without those that have no time or say again what another one says. */
export function inOrder(
  rows: readonly CsvRecord[],
  { time }: { readonly time: Float64Array },
  columns: readonly Float64Array[],
  problems: DocumentProblem[],
) {
  const order = byTime(time)
  const timeless = time.length - order.length
  const tell = teller(rows, problems)
  // A row of nothing but gaps at a time that the clock left out is what some loggers write there: counted, not told.
  const empty = (i: number) => columns.every((column) => Number.isNaN(column[i]))
  for (let i = 0; i < time.length && timeless > 0; i++)
    if (Number.isNaN(time[i]) && !empty(i))
      tell(i, 'shows a time that the clock left out, or showed twice in a table without order', 'check the clock')
  const keep: number[] = []
  let [doubled, conflicting] = [0, 0]
  for (const i of order) {
    const last = keep[keep.length - 1]
    if (last === undefined || time[last] !== time[i]) keep.push(i)
    else if (columns.every((column) => Object.is(column[last], column[i]))) doubled++
    else {
      conflicting++
      tell(
        i,
        `has the time of line ${rows[last]!.line} and other numbers`,
        'the first was kept; if clocks were changed, say so with "clock"',
      )
    }
  }
  return {
    time: picked(time, keep),
    columns: columns.map((column) => picked(column, keep)),
    timeless,
    doubled,
    conflicting,
  }
}

/** Rows that have a time, in its order; of two with one time the first in the table stays first, because the sort is stable. */
function byTime(time: Float64Array): number[] {
  const timed: number[] = []
  let [rising, last] = [true, -Infinity]
  for (let i = 0; i < time.length; i++) {
    if (Number.isNaN(time[i])) continue
    rising &&= last <= time[i]!
    last = time[i]!
    timed.push(i)
  }
  return rising ? timed : timed.sort((a, b) => time[a]! - time[b]!)
}

function picked(column: Float64Array, keep: readonly number[]): Float64Array {
  const values = new Float64Array(keep.length)
  for (let k = 0; k < keep.length; k++) values[k] = column[keep[k]!]!
  return values
}

/** Tells a problem of a row by its line, as long as there is room for it. */
function teller(rows: readonly CsvRecord[], problems: DocumentProblem[]) {
  return (i: number, problem: string, hint: string) => {
    if (problems.length < MAX_PROBLEMS)
      problems.push({ path: `line ${rows[i]!.line}`, value: '', problem, expected: '', hint })
  }
}
