import { cubicAt, cubicIntegral, cubicSlopeAt, hermite } from './cubic.js'
import type { NodeValues } from './node-values.js'
import { CONDUCTIVITY, CONTENT, DRIEST, FILM, POTENTIAL, ROW, type TableRows, WETTEST } from './table-rows.js'

/** A medium beyond the rows of its table. */
export interface TableEnds {
  readonly saturated: number
  /** Cubics of content and conductivity from saturation to the first row, and the potential at saturation. */
  readonly wet: Float64Array
  readonly saturatedPotential: number
  /** What it holds where the rows end. */
  readonly min: number
}

/**
 * From saturation to the first row: cubics that leave saturation without a slope and meet the curves with theirs. A kink at saturation, or a
 * conductivity that falls without end there, would keep iterations from ending.
 */
export function tableEnds({ rows, count }: TableRows, saturated: number): TableEnds {
  const wet = new Float64Array(8)
  const toWet = WETTEST * rows[1]!
  hermite(wet, 0, saturated, rows[CONTENT]!, 0, rows[CONTENT + 1]! * toWet)
  hermite(wet, 4, 1, rows[CONDUCTIVITY]!, 0, rows[CONDUCTIVITY + 1]! * toWet)
  return {
    saturated,
    wet,
    saturatedPotential: rows[POTENTIAL]! + WETTEST * cubicIntegral(wet, 4, 1),
    min: cubicAt(rows, (count - 1) * ROW + CONTENT, 1),
  }
}

/** The values of a point beyond the rows. */
export function readEnd(ends: TableEnds, s: number, into: NodeValues, i: number): void {
  const { wet, saturatedPotential } = ends
  const { waterContent, capacity, conductivity, conductivitySlope, potential } = into
  readContentAtEnd(ends, s, waterContent, capacity, i)
  if (s <= 0) {
    conductivity[i] = 1
    conductivitySlope[i] = 0
    potential[i] = saturatedPotential - s
  } else if (s < WETTEST) {
    const x = s / WETTEST
    conductivity[i] = cubicAt(wet, 4, x)
    conductivitySlope[i] = cubicSlopeAt(wet, 4, x) / WETTEST
    potential[i] = saturatedPotential - WETTEST * cubicIntegral(wet, 4, x)
  } else conductivity[i] = conductivitySlope[i] = potential[i] = 0
}

/** Water content and capacity of a point beyond the rows. */
export function readContentAtEnd(
  { saturated, wet, min }: TableEnds,
  s: number,
  waterContent: Float64Array,
  capacity: Float64Array,
  i: number,
): void {
  if (s <= 0) {
    waterContent[i] = saturated
    capacity[i] = 0
  } else if (s < WETTEST) {
    waterContent[i] = cubicAt(wet, 0, s / WETTEST)
    capacity[i] = -cubicSlopeAt(wet, 0, s / WETTEST) / WETTEST
  } else {
    waterContent[i] = min - FILM * Math.log(s / DRIEST)
    capacity[i] = FILM / s
  }
}
