import { cubicIntegral, hermite } from './cubic.js'
import { CONDUCTIVITY, CONTENT, POTENTIAL, type TableRows, WETTEST } from './table-rows.js'

/** A medium between saturation and the first row of its table, as cubics of content and conductivity over that stretch. */
export interface WetEnd {
  readonly wet: Float64Array
  readonly saturatedPotential: number
}

/**
 * From saturation to the first row: cubics that leave saturation without a slope and meet the curves with theirs. A kink at saturation, or a
 * conductivity that falls without end there, would keep iterations from ending.
 */
export function wetEnd({ rows }: TableRows, saturated: number): WetEnd {
  const wet = new Float64Array(8)
  const toWet = WETTEST * rows[1]!
  hermite(wet, 0, saturated, rows[CONTENT]!, 0, rows[CONTENT + 1]! * toWet)
  hermite(wet, 4, 1, rows[CONDUCTIVITY]!, 0, rows[CONDUCTIVITY + 1]! * toWet)
  return { wet, saturatedPotential: rows[POTENTIAL]! + WETTEST * cubicIntegral(wet, 4, 1) }
}
