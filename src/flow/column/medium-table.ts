import type { ConductiveModel } from '../../medium/curves/retention-model.js'
import { cubicAt, cubicIntegral, cubicSlopeAt, hermite, placeIn } from './cubic.js'
import type { NodeValues } from './node-values.js'
import { CONDUCTIVITY, CONTENT, DRIEST, FILM, POTENTIAL, ROW, tableRows, WETTEST } from './table-rows.js'

/** E-folds of suction beyond the driest at which an inverse reading stops. */
const FARTHEST = 7

/** A medium written out as cubics of the suction: a step of a simulation reads it some thousand times. */
export interface MediumTable {
  readonly saturated: number
  readonly residual: number
  /** Fills in the values of points from one up to another; zero and less is saturated, beyond pF 7 nothing changes any more. */
  readonly read: (suctions: Float64Array, into: NodeValues, start: number, end: number) => void
  /** Fills in water content and capacity alone. */
  readonly readWaterContents: (
    suctions: Float64Array,
    waterContent: Float64Array,
    capacity: Float64Array,
    start: number,
    end: number,
  ) => void
  /** Fills in water content and capacity of one point. */
  readonly readWaterContent: (
    suction: number,
    waterContent: Float64Array,
    capacity: Float64Array,
    point: number,
  ) => void
  /** The suction at which the medium holds a water content; zero from saturation on. */
  readonly suctionAt: (waterContent: number) => number
}

/** The table of a medium, with cells so small that no cubic differs from its curve by more than about 1e-7 of the whole. */
export function mediumTable(medium: ConductiveModel): MediumTable {
  const { cells, firstCell, kinks, rows, count } = tableRows(medium)
  const { bits, words, high, shift } = cells
  const { saturated } = medium
  // From saturation to the first row: cubics that leave saturation without a slope and meet the curves with theirs. A kink at
  // saturation, or a conductivity that falls without end there, would keep iterations from ending.
  const wet = new Float64Array(8)
  const toWet = WETTEST * rows[1]!
  hermite(wet, 0, saturated, rows[CONTENT]!, 0, rows[CONTENT + 1]! * toWet)
  hermite(wet, 4, 1, rows[CONDUCTIVITY]!, 0, rows[CONDUCTIVITY + 1]! * toWet)
  const saturatedPotential = rows[POTENTIAL]! + WETTEST * cubicIntegral(wet, 4, 1)
  const least = cubicAt(rows, (count - 1) * ROW + CONTENT, 1)

  /** Where the row of a suction stands. */
  const rowAt = (s: number): number => {
    bits[0] = s
    let row = (words[high]! >>> shift) - firstCell
    for (let k = 0; k < kinks.length && s >= kinks[k]!; k++) row++
    return row * ROW
  }
  const read = (suctions: Float64Array, into: NodeValues, start: number, end: number): void => {
    const { waterContent, capacity, conductivity, conductivitySlope, potential } = into
    for (let i = start; i < end; i++) {
      const s = suctions[i]!
      if (s >= WETTEST && s < DRIEST) {
        const r = rowAt(s)
        const perLength = rows[r + 1]!
        const x = (s - rows[r]!) * perLength
        waterContent[i] = cubicAt(rows, r + CONTENT, x)
        capacity[i] = -perLength * cubicSlopeAt(rows, r + CONTENT, x)
        conductivity[i] = cubicAt(rows, r + CONDUCTIVITY, x)
        conductivitySlope[i] = perLength * cubicSlopeAt(rows, r + CONDUCTIVITY, x)
        potential[i] = cubicAt(rows, r + POTENTIAL, x)
      } else readEnd(s, into, i)
    }
  }
  /** The values of a point beyond the rows. */
  const readEnd = (s: number, into: NodeValues, i: number): void => {
    const { waterContent, capacity, conductivity, conductivitySlope, potential } = into
    readContentAtEnd(s, waterContent, capacity, i)
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
  const readContentAtEnd = (s: number, waterContent: Float64Array, capacity: Float64Array, i: number): void => {
    if (s <= 0) {
      waterContent[i] = saturated
      capacity[i] = 0
    } else if (s < WETTEST) {
      waterContent[i] = cubicAt(wet, 0, s / WETTEST)
      capacity[i] = -cubicSlopeAt(wet, 0, s / WETTEST) / WETTEST
    } else {
      waterContent[i] = least - FILM * Math.log(s / DRIEST)
      capacity[i] = FILM / s
    }
  }
  const readWaterContent = (s: number, waterContent: Float64Array, capacity: Float64Array, i: number): void => {
    if (s >= WETTEST && s < DRIEST) {
      const r = rowAt(s)
      const perLength = rows[r + 1]!
      const x = (s - rows[r]!) * perLength
      waterContent[i] = cubicAt(rows, r + CONTENT, x)
      capacity[i] = -perLength * cubicSlopeAt(rows, r + CONTENT, x)
    } else readContentAtEnd(s, waterContent, capacity, i)
  }
  const readWaterContents: MediumTable['readWaterContents'] = (suctions, waterContent, capacity, start, end) => {
    for (let i = start; i < end; i++) readWaterContent(suctions[i]!, waterContent, capacity, i)
  }
  const suctionAt = (content: number): number => {
    if (content >= saturated) return 0
    if (content > rows[CONTENT]!) return WETTEST * placeIn(wet, 0, content)
    if (content <= least) return DRIEST * Math.exp(Math.min((least - content) / FILM, FARTHEST))
    let low = 0
    let above = count
    while (above - low > 1) {
      const middle = (low + above) >> 1
      if (rows[middle * ROW + CONTENT]! >= content) low = middle
      else above = middle
    }
    const r = low * ROW
    return rows[r + 1] === 0 ? rows[r]! : rows[r]! + placeIn(rows, r + CONTENT, content) / rows[r + 1]!
  }
  return { saturated, residual: medium.residual, read, readWaterContents, readWaterContent, suctionAt }
}
