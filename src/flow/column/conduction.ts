import type { ColumnGrid } from './grid.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/** Difference of two suctions, as a share of the larger, below which they count as nearly equal. */
const NEAR = 0.01

/** A mean conductivity as a share of that at saturation, and its slopes against the suctions at both ends. */
export interface MeanConductivity {
  value: number
  byBelow: number
  byAbove: number
}

/** The mean conductivity over the effective suctions between a point and the next. */
export function meanConductivity({ effective, at }: Points, p: number, mean: MeanConductivity): void {
  const { conductivity, conductivitySlope, potential } = at
  const below = effective[p]!
  const above = effective[p + 1]!
  const difference = above - below
  const kBelow = conductivity[p]!
  const kAbove = conductivity[p + 1]!
  // Nearly equal suctions: the trapezoid with its end correction, because the quotient would lose its digits.
  mean.byBelow = conductivitySlope[p]! / 2
  mean.byAbove = conductivitySlope[p + 1]! / 2
  mean.value = (kBelow + kAbove) / 2 - (difference * (mean.byAbove - mean.byBelow)) / 6
  const apart = Math.abs(difference) / Math.max(Math.abs(below), Math.abs(above))
  if (!(apart > NEAR)) return
  const quotient = (potential[p]! - potential[p + 1]!) / difference
  // From one to the other without a jump, at which an iteration would never end.
  const part = Math.min(apart / NEAR - 1, 1)
  const smooth = part * part * (3 - 2 * part)
  mean.value += smooth * (quotient - mean.value)
  mean.byBelow += smooth * ((quotient - kBelow) / difference - mean.byBelow)
  mean.byAbove += smooth * ((kAbove - quotient) / difference - mean.byAbove)
}

/**
 * Flow up through each element: down by weight, and from wet to dry with the mean conductivity over the suctions between its ends; or,
 * where upstream, sinking with the conductivity of the upper end.
 */
export function fillConduction(grid: ColumnGrid, points: Points, terms: ColumnTerms, upstream: boolean): void {
  const { up, upByBelow, upByAbove } = terms
  const { layers, lengths, sections } = grid
  const { conductivity, conductivitySlope, potential } = points.at
  const mean: MeanConductivity = { value: 0, byBelow: 0, byAbove: 0 }
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    const fall = potential[p]! - potential[p + 1]!
    if (upstream) {
      mean.value = conductivity[p + 1]!
      mean.byBelow = 0
      mean.byAbove = conductivitySlope[p + 1]!
    } else meanConductivity(points, p, mean)
    const scale = points.saturatedConductivity[e]! * sections[e]!
    const length = lengths[e]!
    up[e] = scale * (fall / length - mean.value)
    upByBelow[e] = -scale * (conductivity[p]! / length + mean.byBelow)
    upByAbove[e] = scale * (conductivity[p + 1]! / length - mean.byAbove)
  }
}
