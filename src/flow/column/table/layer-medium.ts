import type { MediumTable } from './medium-table.js'

/** A medium as a table with its saturated conductivity in cm/s. */
export interface LayerMedium {
  readonly table: MediumTable
  /** The medium as it wets from dry, where that is another curve. */
  readonly wetting: MediumTable | undefined
  readonly saturatedConductivity: number
}
