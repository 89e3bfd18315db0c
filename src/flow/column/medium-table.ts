import type { ConductiveModel } from '../../medium/curves/retention-model.js'
import type { SuctionHead } from '../../quantity/generated/suction.js'

/** What a medium does at the suction of each node. */
export interface NodeValues {
  /** Water content. Unit: m³/m³. */
  readonly waterContent: Float64Array
  /** Its slope against suction without the minus sign. Unit: 1/cm. */
  readonly capacity: Float64Array
  /** Conductivity as a share of that at saturation. Unit: 1. */
  readonly conductivity: Float64Array
  /** Its slope against suction. Unit: 1/cm. */
  readonly conductivitySlope: Float64Array
  /** Matric flux potential as a share of the saturated conductivity: the integral of the conductivity from here to the driest. Unit: cm. */
  readonly potential: Float64Array
}

/** Room for the values of some nodes. */
export function nodeValues(nodes: number): NodeValues {
  const room = () => new Float64Array(nodes)
  return {
    waterContent: room(),
    capacity: room(),
    conductivity: room(),
    conductivitySlope: room(),
    potential: room(),
  }
}

/** A stretch of the table without kinks, in equal steps of the logarithm of suction. */
interface Stretch {
  readonly from: number
  readonly to: number
  readonly step: number
  readonly cells: number
  /** Twelve numbers a cell: the cubics of content, conductivity and potential. */
  readonly cubics: Float64Array
}

/** Suction at which the table begins. Unit: cm. */
const WETTEST = 0.01
const DRIEST = 1e7
const CELL = 12
/** E-folds of suction beyond the driest at which an inverse reading stops. */
const FARTHEST = 7
/** Moves of an inverse reading within a cell, and the length in cells of the last: the next would be its square. */
const MOST_MOVES = 60
const CLOSE = 1e-8
/**
 * Water that every e-fold of suction draws from films where pores are long empty, and the suction from which it counts. A medium whose
 * capacity ends would leave a cell that roots have emptied without a suction that fits what is left. Units: m³/m³, cm.
 */
const FILM = 1e-7
const FILM_FROM = 1000
/** Nodes and weights of Gauss and Legendre's rule of three points on [0, 1]. */
const GAUSS_NODES = [0.1127016653792583, 0.5, 0.8872983346207417]
const GAUSS_WEIGHTS = [0.2777777777777778, 0.4444444444444444, 0.2777777777777778]

/** A medium written out as cubics over the logarithm of suction: a step of a simulation reads it some thousand times. */
export interface MediumTable {
  readonly saturated: number
  readonly residual: number
  /** Fills in the values of points from one up to another; zero and less is saturated, beyond pF 7 nothing changes any more. */
  readonly read: (suctions: Float64Array, into: NodeValues, start: number, end: number) => void
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
  const kinks = medium.breakpoints.filter((s) => s > WETTEST && s < DRIEST)
  const ends = [WETTEST, ...kinks, DRIEST]
  const stretches: Stretch[] = []
  let below = 0
  for (let i = ends.length - 1; i > 0; i--) {
    const stretch = fineStretch(medium, ends[i - 1]!, ends[i]!, below)
    below = stretch.cubics[8]!
    stretches.unshift(stretch)
  }
  const { saturated } = medium
  // From saturation to the first cell: cubics that leave saturation without a slope and meet the curves with theirs. A kink at
  // saturation, or a conductivity that falls without end there, would keep iterations from ending.
  const { cubics: first, step: firstStep } = stretches[0]!
  const wet = new Float64Array(8)
  hermite(wet, 0, saturated, first[0]!, 0, first[1]! / firstStep)
  hermite(wet, 4, 1, first[4]!, 0, first[5]! / firstStep)
  /** The integral of the conductivity from saturation to a share of the way. */
  const conducted = (x: number) => WETTEST * x * (wet[4]! + x * (wet[5]! / 2 + x * (wet[6]! / 3 + (x * wet[7]!) / 4)))
  const saturatedPotential = below + conducted(1)
  const driest = stretches.at(-1)!
  const least = cubicAt(driest.cubics, (driest.cells - 1) * CELL, 1)

  /** Fills in the values of points from one up to another. */
  const read = (suctions: Float64Array, into: NodeValues, start: number, end: number): void => {
    const { waterContent, capacity, conductivity, conductivitySlope, potential } = into
    for (let i = start; i < end; i++) {
      const s = suctions[i]!
      if (s <= 0) {
        waterContent[i] = saturated
        capacity[i] = 0
        conductivity[i] = 1
        conductivitySlope[i] = 0
        potential[i] = saturatedPotential - s
      } else if (s < WETTEST) {
        const x = s / WETTEST
        waterContent[i] = cubicAt(wet, 0, x)
        capacity[i] = -cubicSlopeAt(wet, 0, x) / WETTEST
        conductivity[i] = cubicAt(wet, 4, x)
        conductivitySlope[i] = cubicSlopeAt(wet, 4, x) / WETTEST
        potential[i] = saturatedPotential - conducted(x)
      } else if (s >= DRIEST) {
        waterContent[i] = least - FILM * Math.log(s / DRIEST)
        capacity[i] = FILM / s
        conductivity[i] = conductivitySlope[i] = potential[i] = 0
      } else {
        const u = Math.log(s)
        let k = 0
        while (u >= stretches[k]!.to && k < stretches.length - 1) k++
        const { from, step, cells, cubics } = stretches[k]!
        const place = (u - from) / step
        const cell = Math.min(Math.max(place | 0, 0), cells - 1)
        const x = place - cell
        const c = cell * CELL
        const slope = 1 / (step * s)
        waterContent[i] = cubicAt(cubics, c, x)
        capacity[i] = -slope * cubicSlopeAt(cubics, c, x)
        conductivity[i] = cubicAt(cubics, c + 4, x)
        conductivitySlope[i] = slope * cubicSlopeAt(cubics, c + 4, x)
        potential[i] = cubicAt(cubics, c + 8, x)
      }
    }
  }
  /** Fills in water content and capacity alone, at one point. */
  const readWaterContent = (s: number, waterContent: Float64Array, capacity: Float64Array, i: number): void => {
    if (s <= 0) {
      waterContent[i] = saturated
      capacity[i] = 0
    } else if (s < WETTEST) {
      waterContent[i] = cubicAt(wet, 0, s / WETTEST)
      capacity[i] = -cubicSlopeAt(wet, 0, s / WETTEST) / WETTEST
    } else if (s >= DRIEST) {
      waterContent[i] = least - FILM * Math.log(s / DRIEST)
      capacity[i] = FILM / s
    } else {
      const u = Math.log(s)
      let k = 0
      while (u >= stretches[k]!.to && k < stretches.length - 1) k++
      const { from, step, cells, cubics } = stretches[k]!
      const place = (u - from) / step
      const cell = Math.min(Math.max(place | 0, 0), cells - 1)
      waterContent[i] = cubicAt(cubics, cell * CELL, place - cell)
      capacity[i] = -cubicSlopeAt(cubics, cell * CELL, place - cell) / (step * s)
    }
  }
  /** The suction that holds a water content. */
  const suctionAt = (content: number): number => {
    if (content >= saturated) return 0
    if (content > first[0]!) return WETTEST * placeIn(wet, 0, content)
    if (content <= least) return DRIEST * Math.exp(Math.min((least - content) / FILM, FARTHEST))
    let k = stretches.length - 1
    while (k > 0 && content > stretches[k]!.cubics[0]!) k--
    const { from, step, cells, cubics } = stretches[k]!
    let low = 0
    let high = cells
    while (high - low > 1) {
      const middle = (low + high) >> 1
      if (cubics[middle * CELL]! >= content) low = middle
      else high = middle
    }
    return Math.exp(from + step * (low + placeIn(cubics, low * CELL, content)))
  }
  return { saturated, residual: medium.residual, read, readWaterContent, suctionAt }
}

/** Where in its cell, from 0 to 1, a cubic that falls has a value: Newton's method kept between two ends that close in. */
function placeIn(cubics: Float64Array, c: number, value: number): number {
  let low = 0
  let high = 1
  const top = cubics[c]!
  const bottom = cubicAt(cubics, c, 1)
  let x = top > bottom ? Math.min(Math.max((top - value) / (top - bottom), 0), 1) : 0
  for (let i = 0; i < MOST_MOVES; i++) {
    const over = cubicAt(cubics, c, x) - value
    if (over > 0) low = x
    else high = x
    const slope = cubicSlopeAt(cubics, c, x)
    const newton = slope < 0 ? x - over / slope : -1
    const next = newton >= low && newton <= high ? newton : (low + high) / 2
    if (Math.abs(next - x) < CLOSE) return next
    x = next
  }
  return x
}

/** A stretch of which no cubic differs from its curve by more than about 1e-7 of the whole: the difference falls with the fourth power. */
function fineStretch(medium: ConductiveModel, from: number, to: number, below: number): Stretch {
  const trial = Math.max(8, Math.ceil(Math.log(to / from) / 0.08))
  const off = worst(medium, stretchOf(medium, from, to, trial, below))
  const cells = Math.ceil(trial * Math.min(Math.max((off / 1e-7) ** 0.25, 1), 64))
  return stretchOf(medium, from, to, cells, below)
}

/** The largest difference between cubic and curve at the middle of a cell, as a share of the range of either. */
function worst(medium: ConductiveModel, { from, step, cells, cubics }: Stretch): number {
  const range = medium.saturated - medium.residual
  let most = 0
  for (let cell = 0; cell < cells; cell++) {
    const s = Math.exp(from + (cell + 0.5) * step) as SuctionHead
    const film = FILM * Math.log1p(s / FILM_FROM)
    const waterContent = Math.abs(cubicAt(cubics, cell * CELL, 0.5) + film - medium.waterContent(s)) / range
    const conductivity = Math.abs(cubicAt(cubics, cell * CELL + 4, 0.5) - medium.relativeConductivity(s))
    most = Math.max(most, waterContent, conductivity)
  }
  return most
}

function stretchOf(medium: ConductiveModel, from: number, to: number, cells: number, below: number): Stretch {
  const start = Math.log(from)
  const step = (Math.log(to) - start) / cells
  const waterContents = new Float64Array(cells + 1)
  const conductivities = new Float64Array(cells + 1)
  const waterContentSlopes = new Float64Array(cells + 1)
  for (let i = 0; i <= cells; i++) {
    // A hair inside the stretch, where a kink has but one side.
    const edge = i === 0 ? 1e-12 : i === cells ? -1e-12 : 0
    const s = (Math.exp(start + i * step) * (1 + edge)) as SuctionHead
    waterContents[i] = medium.waterContent(s) - FILM * Math.log1p(s / FILM_FROM)
    waterContentSlopes[i] = -(medium.capacity(s) * s + (FILM * s) / (FILM_FROM + s)) * step
    conductivities[i] = medium.relativeConductivity(s)
  }
  const cubics = new Float64Array(cells * CELL)
  for (let i = 0; i < cells; i++) {
    hermite(
      cubics,
      i * CELL,
      waterContents[i]!,
      waterContents[i + 1]!,
      waterContentSlopes[i]!,
      waterContentSlopes[i + 1]!,
    )
    const [left, right] = [slopeAt(conductivities, i), slopeAt(conductivities, i + 1)]
    hermite(cubics, i * CELL + 4, conductivities[i]!, conductivities[i + 1]!, left, right)
  }
  let after = below
  for (let i = cells - 1; i >= 0; i--) {
    const c = i * CELL + 4
    let gained = 0
    for (let g = 0; g < 3; g++) {
      const x = GAUSS_NODES[g]!
      gained += GAUSS_WEIGHTS[g]! * cubicAt(cubics, c, x) * Math.exp(start + (i + x) * step)
    }
    const before = after + gained * step
    const [wet, dry] = [Math.exp(start + i * step), Math.exp(start + (i + 1) * step)]
    hermite(cubics, c + 4, before, after, -conductivities[i]! * wet * step, -conductivities[i + 1]! * dry * step)
    after = before
  }
  return { from: start, to: Math.log(to), step, cells, cubics }
}

/** The cubic over one cell from its values and slopes at both ends. */
function hermite(into: Float64Array, at: number, left: number, right: number, leftSlope: number, rightSlope: number) {
  const rise = right - left
  into[at] = left
  into[at + 1] = leftSlope
  into[at + 2] = 3 * rise - 2 * leftSlope - rightSlope
  into[at + 3] = leftSlope + rightSlope - 2 * rise
}

/** A cubic at a place from 0 to 1 in its cell. */
function cubicAt(cubics: Float64Array, c: number, x: number): number {
  return cubics[c]! + x * (cubics[c + 1]! + x * (cubics[c + 2]! + x * cubics[c + 3]!))
}

/** Its slope there, for a cell of length 1. */
function cubicSlopeAt(cubics: Float64Array, c: number, x: number): number {
  return cubics[c + 1]! + x * (2 * cubics[c + 2]! + x * 3 * cubics[c + 3]!)
}

/** Slope of equally spaced values by differences of the fourth order, one-sided at the ends. */
function slopeAt(values: Float64Array, i: number): number {
  const n = values.length - 1
  const v = (k: number) => values[k]!
  if (i >= 2 && i <= n - 2) return (v(i - 2) - 8 * v(i - 1) + 8 * v(i + 1) - v(i + 2)) / 12
  const [at, sign] = i < 2 ? [0, 1] : [n, -1]
  const w = (k: number) => v(at + sign * k)
  const near = i < 2 ? i : n - i
  return (
    sign *
    (near === 0
      ? (-25 * w(0) + 48 * w(1) - 36 * w(2) + 16 * w(3) - 3 * w(4)) / 12
      : (-3 * w(0) - 10 * w(1) + 18 * w(2) - 6 * w(3) + w(4)) / 12)
  )
}
