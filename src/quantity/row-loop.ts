/** Converts readings row by row and gives the number of missing ones, which stay NaN. */
export type RowLoop = (
  readings: Float64Array,
  output: Float64Array,
  convert: (reading: number) => number,
  /** Hears of a result that is not finite. */
  notFinite: (row: number, result: number) => void,
  /** Hears what the conversion throws; what it throws itself ends the loop. */
  refused: (row: number, thrown: unknown) => void,
) => number
