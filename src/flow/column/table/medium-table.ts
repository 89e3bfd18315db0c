import type { ConductiveModel } from '../../../medium/curves/retention-model.js'
import { cubicAt, cubicSlopeAt } from './cubic.js'
import type { NodeValues } from './node-values.js'
import { type ReadByContent, readerByContent } from './table-by-content.js'
import { readContentAtEnd, readEnd, tableEnds } from './table-ends.js'
import { CONDUCTIVITY, CONTENT, DRIEST, POTENTIAL, ROW, type TableRows, tableRows, WETTEST } from './table-rows.js'

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
  /** Fills in the values of points by what they hold, with the suctions at which they would. */
  readonly readByContent: ReadByContent
}

/** The table of a medium, with cells so small that no cubic differs from its curve by more than about 1e-7 of the whole. */
export function mediumTable(medium: ConductiveModel): MediumTable {
  const table = tableRows(medium)
  const { rows } = table
  const { saturated } = medium
  const ends = tableEnds(table, saturated)

  const rowAt = rowFinder(table)
  // Row and cubics stand written out in both loops: a call that the engine does not take in would put each number that it passes into an object
  // of its own, and reading would take ten times as long.
  const { cells, firstCell, kinks } = table
  const { bits, words, high, shift } = cells
  const kinkCount = kinks.length
  const read = (suctions: Float64Array, into: NodeValues, start: number, end: number): void => {
    const { waterContent, capacity, conductivity, conductivitySlope, potential } = into
    for (let i = start; i < end; i++) {
      const s = suctions[i]!
      if (s >= WETTEST && s < DRIEST) {
        bits[0] = s
        let row = (words[high]! >>> shift) - firstCell
        for (let k = 0; k < kinkCount && s >= kinks[k]!; k++) row++
        const r = row * ROW
        const perLength = rows[r + 1]!
        const x = (s - rows[r]!) * perLength
        const c1 = rows[r + CONTENT + 1]!
        const c2 = rows[r + CONTENT + 2]!
        const c3 = rows[r + CONTENT + 3]!
        waterContent[i] = rows[r + CONTENT]! + x * (c1 + x * (c2 + x * c3))
        capacity[i] = -perLength * (c1 + x * (2 * c2 + x * 3 * c3))
        const k1 = rows[r + CONDUCTIVITY + 1]!
        const k2 = rows[r + CONDUCTIVITY + 2]!
        const k3 = rows[r + CONDUCTIVITY + 3]!
        conductivity[i] = rows[r + CONDUCTIVITY]! + x * (k1 + x * (k2 + x * k3))
        conductivitySlope[i] = perLength * (k1 + x * (2 * k2 + x * 3 * k3))
        const tail = rows[r + POTENTIAL + 2]! + x * rows[r + POTENTIAL + 3]!
        potential[i] = rows[r + POTENTIAL]! + x * (rows[r + POTENTIAL + 1]! + x * tail)
      } else readEnd(ends, s, into, i)
    }
  }
  const readWaterContents: MediumTable['readWaterContents'] = (suctions, waterContent, capacity, start, end) => {
    for (let i = start; i < end; i++) {
      const s = suctions[i]!
      if (s >= WETTEST && s < DRIEST) {
        bits[0] = s
        let row = (words[high]! >>> shift) - firstCell
        for (let k = 0; k < kinkCount && s >= kinks[k]!; k++) row++
        const r = row * ROW
        const perLength = rows[r + 1]!
        const x = (s - rows[r]!) * perLength
        const c1 = rows[r + CONTENT + 1]!
        const c2 = rows[r + CONTENT + 2]!
        const c3 = rows[r + CONTENT + 3]!
        waterContent[i] = rows[r + CONTENT]! + x * (c1 + x * (c2 + x * c3))
        capacity[i] = -perLength * (c1 + x * (2 * c2 + x * 3 * c3))
      } else readContentAtEnd(ends, s, waterContent, capacity, i)
    }
  }
  const readWaterContent: MediumTable['readWaterContent'] = (s, waterContent, capacity, i) => {
    if (s >= WETTEST && s < DRIEST) {
      const r = rowAt(s)
      const perLength = rows[r + 1]!
      const x = (s - rows[r]!) * perLength
      waterContent[i] = cubicAt(rows, r + CONTENT, x)
      capacity[i] = -perLength * cubicSlopeAt(rows, r + CONTENT, x)
    } else readContentAtEnd(ends, s, waterContent, capacity, i)
  }
  const readByContent = readerByContent(table, rowAt, ends, (_, suctions, into, first, last) =>
    read(suctions, into, first, last),
  )
  return { saturated, residual: medium.residual, read, readWaterContents, readWaterContent, readByContent }
}

/** Says where the row of a suction stands. */
function rowFinder({ cells, firstCell, kinks }: TableRows): (suction: number) => number {
  const { bits, words, high, shift } = cells
  return (s) => {
    bits[0] = s
    let row = (words[high]! >>> shift) - firstCell
    for (let k = 0; k < kinks.length && s >= kinks[k]!; k++) row++
    return row * ROW
  }
}
