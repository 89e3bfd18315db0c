import { InputError } from '../../quantity/errors.js'
import { requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'

/** Where a row of a table comes from. */
export interface SourcedRow {
  /** The work by its key and the place in it: `evans-1996, abstract`. `sourceInFull()` writes it out. */
  readonly source: string
  /**
   * `read`: the numbers were seen in a copy of the table; `confirmed`: public code or text that cites it has the same numbers;
   * `not-confirmed`: neither, look them up before you rely on them.
   */
  readonly known: 'read' | 'confirmed' | 'not-confirmed'
}

/** The texture classes of the United States Department of Agriculture. */
export type TextureClass =
  | 'sand'
  | 'loamy-sand'
  | 'sandy-loam'
  | 'loam'
  | 'silt'
  | 'silt-loam'
  | 'sandy-clay-loam'
  | 'clay-loam'
  | 'silty-clay-loam'
  | 'sandy-clay'
  | 'silty-clay'
  | 'clay'

/**
 * The row of a table by a name that is only known when the program runs. With a name in the source text write `table.loam` or
 * `table['clay-loam']` instead: the compiler then checks it.
 *
 * @param table - One of the tables of this package.
 * @param name - The name of a row.
 * @procedure Looks the name up among the table's own names.
 * @returns The row.
 * @throws `InputError` for a name that the table does not have, with the names that it has.
 * @source definition
 * @example
 * tableRow(texturesCarselParrish1988, 'loam').n // => 1.56
 */
export function tableRow<Row>(table: Readonly<Record<string, Row>>, name: string): Row {
  return rowOf(table, name, 'name')
}

/** The same, for a function whose argument has another name. */
export function rowOf<Row>(table: Readonly<Record<string, Row>>, name: string, argument: string): Row {
  requireObject(table, 'table')
  const row = hasRow(table, name) ? table[name] : undefined
  if (row !== undefined) return row
  throw new InputError(
    argument,
    `the table has no row "${asName(name)}"`,
    `take one of: ${Object.keys(table).join(', ')}`,
  )
}
