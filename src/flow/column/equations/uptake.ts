import type { ColumnTerms } from './terms.js'

/** What the plants would draw from each half element, and how far its suction lets them. */
export interface Sink {
  /** Potential uptake from the lower and the upper half of each element. Unit: cm³/s. */
  readonly fromLower: Float64Array
  readonly fromUpper: Float64Array
  /** Potential uptake from the cell of each node. Unit: cm³/s. */
  readonly max: Float64Array
  /** Suctions h1 to h4 in cm between which the share rises from nothing, stays whole, and falls to nothing. */
  readonly h1: number
  readonly h2: number
  readonly h3: number
  readonly h4: number
}

/** Suctions closer than this count as one. Unit: cm. */
const CLOSE = 1e-4

/** What the roots take, as far as the suction of the node lets them: nothing is then drawn from a cell that is empty. */
export function fillUptake(s: Float64Array, sink: Sink | undefined, terms: ColumnTerms): void {
  const { taken, takenByBelow, takenByOwn, takenByAbove } = terms
  takenByBelow.fill(0)
  takenByAbove.fill(0)
  if (sink === undefined) {
    taken.fill(0)
    takenByOwn.fill(0)
    return
  }
  const { max, h1, h2, h3, h4 } = sink
  const rise = 1 / (h2 - h1)
  const fall = 1 / (h4 - h3)
  for (let i = 0; i < max.length; i++) {
    const suction = s[i]!
    const all = max[i]!
    const lacksAir = suction < h2
    const lacksWater = suction > h3
    const outside = suction < h1 || suction >= h4
    taken[i] = outside ? 0 : lacksAir ? all * (suction - h1) * rise : lacksWater ? all * (h4 - suction) * fall : all
    takenByOwn[i] = outside ? 0 : lacksAir ? all * rise : lacksWater ? -all * fall : 0
  }
}

/** Averages the share over half elements where roots lack air, because it bends within the lowest centimetre. */
export function averageUptake(s: Float64Array, sink: Sink | undefined, terms: ColumnTerms): void {
  if (sink === undefined) return
  const { h2 } = sink
  const { trust } = terms
  for (let e = 0; e < trust.length; e++) if (s[e]! < h2 || s[e + 1]! < h2) average(s, e, sink, terms)
}

/** Puts the mean of the rising share over either half of an element in the place of its value at the nodes. */
function average(s: Float64Array, e: number, sink: Sink, terms: ColumnTerms): void {
  const below = s[e]!
  const above = s[e + 1]!
  const { taken, takenByBelow, takenByOwn, takenByAbove } = terms
  const middle = (below + above) / 2
  const half = middle - below
  const atBelow = rise(below, sink)
  const atMiddle = rise(middle, sink)
  const atAbove = rise(above, sink)
  // As good as level: the slope of the mean against either end is half of that at the ends.
  const level = Math.abs(half) < CLOSE
  const total = level ? 0 : area(middle, sink)
  const lower = level ? (atBelow + atMiddle) / 2 : (total - area(below, sink)) / half
  const upper = level ? (atAbove + atMiddle) / 2 : (area(above, sink) - total) / half
  const slopeBelow = bend(below, sink)
  const slopeMiddle = bend(middle, sink)
  const slopeAbove = bend(above, sink)
  const lowerByBelow = level ? slopeBelow / 2 : (lower - atBelow) / half
  const lowerByMiddle = level ? slopeMiddle / 2 : (atMiddle - lower) / half
  const upperByAbove = level ? slopeAbove / 2 : (atAbove - upper) / half
  const upperByMiddle = level ? slopeMiddle / 2 : (upper - atMiddle) / half
  const trust = terms.trust[e]!
  const byBelow = terms.trustByBelow[e]!
  const byAbove = terms.trustByAbove[e]!
  const fromLower = sink.fromLower[e]!
  const fromUpper = sink.fromUpper[e]!
  // The middle moves half as far as either node.
  taken[e]! += fromLower * trust * (lower - atBelow)
  takenByOwn[e]! += fromLower * (trust * (lowerByBelow + lowerByMiddle / 2 - slopeBelow) + byBelow * (lower - atBelow))
  takenByAbove[e]! += fromLower * ((trust * lowerByMiddle) / 2 + byAbove * (lower - atBelow))
  taken[e + 1]! += fromUpper * trust * (upper - atAbove)
  takenByOwn[e + 1]! +=
    fromUpper * (trust * (upperByAbove + upperByMiddle / 2 - slopeAbove) + byAbove * (upper - atAbove))
  takenByBelow[e + 1]! += fromUpper * ((trust * upperByMiddle) / 2 + byBelow * (upper - atAbove))
}

/** Share of its demand that a root takes up as far as air decides: rising between h1 and h2; its slope, and its integral from h1. */
function rise(s: number, { h1, h2 }: Sink): number {
  if (s < h1) return 0
  return s < h2 ? (s - h1) / (h2 - h1) : 1
}
function bend(s: number, { h1, h2 }: Sink): number {
  return s < h1 || s >= h2 ? 0 : 1 / (h2 - h1)
}
function area(s: number, { h1, h2 }: Sink): number {
  if (s <= h1) return 0
  return s < h2 ? (s - h1) ** 2 / (2 * (h2 - h1)) : s - (h1 + h2) / 2
}
