import type { ColumnGrid } from './grid.js'
import type { ColumnTerms, Points } from './terms.js'

/** Difference of two suctions, as a share of the larger, below which they count as nearly equal. */
const NEAR = 0.01

/**
 * Flow up through each element: down by weight, and from wet to dry with the mean conductivity over the suctions between its ends; or,
 * where upstream, sinking with the conductivity of the upper end.
 */
export function fillConduction(grid: ColumnGrid, points: Points, terms: ColumnTerms, upstream: boolean): void {
  const { up, upByBelow, upByAbove } = terms
  const { layers, lengths, sections } = grid
  const { suction, saturatedConductivity } = points
  const { conductivity, conductivitySlope, potential } = points.at
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    const below = suction[p]!
    const above = suction[p + 1]!
    const difference = above - below
    const fall = potential[p]! - potential[p + 1]!
    const kBelow = conductivity[p]!
    const kAbove = conductivity[p + 1]!
    // Nearly equal suctions: the trapezoid with its end correction, because the quotient would lose its digits.
    let byBelow = conductivitySlope[p]! / 2
    let byAbove = conductivitySlope[p + 1]! / 2
    let mean = (kBelow + kAbove) / 2 - (difference * (byAbove - byBelow)) / 6
    const apart = Math.abs(difference) / Math.max(Math.abs(below), Math.abs(above))
    if (upstream) {
      mean = kAbove
      byBelow = 0
      byAbove = conductivitySlope[p + 1]!
    } else if (apart > NEAR) {
      const quotient = fall / difference
      // From one to the other without a jump, at which an iteration would never end.
      const part = Math.min(apart / NEAR - 1, 1)
      const smooth = part * part * (3 - 2 * part)
      mean += smooth * (quotient - mean)
      byBelow += smooth * ((quotient - kBelow) / difference - byBelow)
      byAbove += smooth * ((kAbove - quotient) / difference - byAbove)
    }
    const scale = saturatedConductivity[e]! * sections[e]!
    const length = lengths[e]!
    up[e] = scale * (fall / length - mean)
    upByBelow[e] = -scale * (kBelow / length + byBelow)
    upByAbove[e] = scale * (kAbove / length - byAbove)
  }
}
