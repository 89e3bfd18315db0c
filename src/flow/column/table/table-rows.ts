import type { ConductiveModel } from '../../../medium/curves/retention-model.js'
import type { SuctionHead } from '../../../quantity/generated/kinds.js'
import { cubicAt, cubicIntegral, hermite } from './cubic.js'
import { type OctaveCells, octaveCells } from './octave-cells.js'

/** Suctions between which the table has rows. Unit: cm. */
export const WETTEST = 0.1
export const DRIEST = 1e7
/** Numbers of a row: where it begins, one over its length, and the cubics of content, conductivity and potential. */
export const ROW = 14
export const CONTENT = 2
export const CONDUCTIVITY = 6
export const POTENTIAL = 10
/**
 * Water that every e-fold of suction draws from films where pores are long empty, and the suction from which it counts. A medium whose
 * capacity ends would leave a cell that roots have emptied without a suction that fits what is left. Units: m³/m³, cm.
 */
export const FILM = 1e-7
const FILM_FROM = 1000
/** Largest difference between a cubic and its curve, as a share of the range, and halvings of an octave with which the search begins and ends. */
const EXACT = 1e-7
const FIRST = 4
const FINEST = 10
/** A hair inside a stretch, where a kink has but one side. */
const HAIR = 1e-12
/** Points from whose values a slope is worked out. */
const STENCIL = 5

/** A medium written out as cubics of the suction in cells of its octaves; a kink parts the row of its cell into two. */
export interface TableRows {
  readonly cells: OctaveCells
  readonly firstCell: number
  readonly kinks: Float64Array
  readonly rows: Float64Array
  readonly count: number
}

/** Rows of which no cubic differs from its curve by more than about 1e-7 of the whole: the difference falls with the fourth power. */
export function tableRows(medium: ConductiveModel): TableRows {
  const trial = rowsOf(medium, FIRST)
  const more = Math.ceil(Math.log2(worst(medium, trial) / EXACT) / 4)
  return more > 0 ? rowsOf(medium, Math.min(FIRST + more, FINEST)) : trial
}

/** The largest difference between cubic and curve at the middle of a row, as a share of the range of either. */
function worst(medium: ConductiveModel, { rows, count }: TableRows): number {
  const range = medium.saturated - medium.residual
  let max = 0
  for (let r = 0; r < count * ROW; r += ROW) {
    if (rows[r + 1] === 0) continue
    const s = (rows[r]! + 0.5 / rows[r + 1]!) as SuctionHead
    const content = Math.abs(cubicAt(rows, r + CONTENT, 0.5) + film(s) - medium.waterContent(s)) / range
    const conductivity = Math.abs(cubicAt(rows, r + CONDUCTIVITY, 0.5) - medium.relativeConductivity(s))
    max = Math.max(max, content, conductivity)
  }
  return max
}

function film(suction: number): number {
  return FILM * Math.log1p(suction / FILM_FROM)
}

function rowsOf(medium: ConductiveModel, halvings: number): TableRows {
  const kinks = Float64Array.from(medium.breakpoints.filter((s) => s > WETTEST && s < DRIEST)).sort()
  const cells = octaveCells(halvings)
  const firstCell = cells.cellOf(WETTEST)
  const count = cells.cellOf(DRIEST) - firstCell + 1 + kinks.length
  const rows = new Float64Array(count * ROW)
  const ends = [WETTEST, ...kinks, DRIEST]
  let row = 0
  for (let i = 1; i < ends.length; i++) row = fillStretch(medium, cells, rows, row, ends[i - 1]!, ends[i]!)
  fillPotentials(rows, count)
  return { cells, firstCell, kinks, rows, count }
}

/** Fills in the rows between two kinks, and gives the row that follows. */
function fillStretch(
  medium: ConductiveModel,
  { cellOf, startOf }: OctaveCells,
  rows: Float64Array,
  first: number,
  from: number,
  to: number,
): number {
  const edges = [from]
  const last = cellOf(to)
  for (let cell = cellOf(from) + 1; cell <= last; cell++) edges.push(startOf(cell))
  // Where the stretch ends with a cell, the next cell has an empty row in it.
  edges.push(to)
  const inside = edges.map((s, i) => (s * (i === 0 ? 1 + HAIR : s === to ? 1 - HAIR : 1)) as SuctionHead)
  const contents = inside.map((s) => medium.waterContent(s) - film(s))
  const contentSlopes = inside.map((s) => -medium.capacity(s) - FILM / (FILM_FROM + s))
  const conductivities = inside.map((s) => medium.relativeConductivity(s))
  const points = edges.at(-2) === to ? edges.length - 1 : edges.length
  const slopes = edges.map((_, i) => slopeAt(edges, conductivities, points, Math.min(i, points - 1)))
  for (let i = 0; i < edges.length - 1; i++) {
    const r = (first + i) * ROW
    const length = edges[i + 1]! - edges[i]!
    rows[r] = edges[i]!
    rows[r + 1] = length > 0 ? 1 / length : 0
    const [low, high] = [contentSlopes[i]! * length, contentSlopes[i + 1]! * length]
    hermite(rows, r + CONTENT, contents[i]!, contents[i + 1]!, low, high)
    const [left, right] = [slopes[i]! * length, slopes[i + 1]! * length]
    hermite(rows, r + CONDUCTIVITY, conductivities[i]!, conductivities[i + 1]!, left, right)
  }
  return first + edges.length - 1
}

/** Adds the conductivity up from the dry end. */
function fillPotentials(rows: Float64Array, count: number): void {
  let after = 0
  for (let row = count - 1; row >= 0; row--) {
    const r = row * ROW
    const length = rows[r + 1] === 0 ? 0 : 1 / rows[r + 1]!
    const before = after + length * cubicIntegral(rows, r + CONDUCTIVITY, 1)
    const [left, right] = [cubicAt(rows, r + CONDUCTIVITY, 0), cubicAt(rows, r + CONDUCTIVITY, 1)]
    hermite(rows, r + POTENTIAL, before, after, -left * length, -right * length)
    after = before
  }
}

/** Slope of values at one of some points by the polynomial through the nearest of them. */
function slopeAt(points: readonly number[], values: readonly number[], count: number, i: number): number {
  const many = Math.min(STENCIL, count)
  const from = Math.min(Math.max(i - (many >> 1), 0), count - many)
  let slope = 0
  for (let k = from; k < from + many; k++) {
    if (k === i) continue
    // Each other point's share, and what it takes from the point itself: the slopes of Lagrange's polynomials.
    let share = 1 / (points[k]! - points[i]!)
    for (let j = from; j < from + many; j++)
      if (j !== i && j !== k) share *= (points[i]! - points[j]!) / (points[k]! - points[j]!)
    slope += share * (values[k]! - values[i]!)
  }
  return slope
}
