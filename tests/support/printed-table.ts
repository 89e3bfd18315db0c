import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

type Cell = string | number | null
type Row = readonly [Cell, ...(number | null)[]]

const tables = JSON.parse(
  readFileSync(new URL('../fixtures/printed-tables.json', import.meta.url), 'utf8'),
) as Readonly<Record<string, { readonly source: string; readonly rows: readonly Row[] }>>

/**
 * Compares every cell of a table with a second transcription of the print, made apart from the one in the code: a slip of the finger in
 * either shows. `cells` gives what the code has for the first cell of a row, in the units and the order of the print.
 */
export function checkEveryCell(table: string, rows: number, cells: (first: never) => readonly (number | null)[]): void {
  const printed = tables[table]
  if (printed === undefined) throw new Error(`there is no printed table ${table}`)
  it(`${table}: every cell is that of the print (${printed.source})`, () => {
    expect(printed.rows.length).toBe(rows)
    for (const [first, ...print] of printed.rows) {
      const got = cells(first as never)
      expect(got.length, String(first)).toBe(print.length)
      // A unit may turn the last bits; no print has twelve digits.
      expect(
        got.map((cell) => (cell === null ? null : Number(cell.toPrecision(12)))),
        String(first),
      ).toEqual(print)
    }
  })
}
