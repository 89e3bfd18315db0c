import type { ColumnGrid } from '../grid/grid.js'
import { bendConduction } from './bent-conduction.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/** Difference of two suctions, as a share of the larger, below which they count as nearly equal. */
const NEAR = 0.01
/** Beside saturation the larger counts as no less than this, below which the conductivity hardly changes. Unit: cm. */
const MIN = 0.01

/**
 * The mean conductivity of each element over the effective suctions of its ends, as a share of that at saturation, and its slopes
 * against them.
 */
export function fillMeanConductivity(grid: ColumnGrid, points: Points, terms: ColumnTerms): void {
  const { mean, meanByBelow, meanByAbove } = terms
  const { layers } = grid
  const { effective } = points
  const { conductivity, conductivitySlope, potential } = points.at
  for (let e = 0; e < mean.length; e++) {
    const p = e + layers[e]!
    const below = effective[p]!
    const above = effective[p + 1]!
    const difference = above - below
    const kBelow = conductivity[p]!
    const kAbove = conductivity[p + 1]!
    // Nearly equal suctions: the trapezoid with its end correction, because the quotient would lose its digits.
    let byBelow = conductivitySlope[p]! / 2
    let byAbove = conductivitySlope[p + 1]! / 2
    let value = (kBelow + kAbove) / 2 - (difference * (byAbove - byBelow)) / 6
    const apart = Math.abs(difference)
    const larger = Math.max(Math.abs(below), Math.abs(above), MIN)
    if (apart > NEAR * larger) {
      const perDifference = 1 / difference
      const quotient = (potential[p]! - potential[p + 1]!) * perDifference
      // From one to the other without a jump, at which an iteration would never end.
      const part = Math.min(apart / (NEAR * larger) - 1, 1)
      const smooth = part * part * (3 - 2 * part)
      value += smooth * (quotient - value)
      byBelow += smooth * ((quotient - kBelow) * perDifference - byBelow)
      byAbove += smooth * ((kAbove - quotient) * perDifference - byAbove)
    }
    mean[e] = value
    meanByBelow[e] = byBelow
    meanByAbove[e] = byAbove
  }
}

/**
 * Flow up through each element: down by weight, and from wet to dry with the mean conductivity over the suctions between its ends and
 * what bends within; or, where upstream, sinking with the conductivity of the upper end.
 */
export function fillConduction(grid: ColumnGrid, points: Points, terms: ColumnTerms, upstream: boolean): void {
  fillMeanConductivity(grid, points, terms)
  const { up, upByBelow, upByAbove, mean, meanByBelow, meanByAbove } = terms
  const { layers } = grid
  const { conductivity, conductivitySlope, potential } = points.at
  const { conductance, conductancePerLength } = points
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    const scale = conductance[e]!
    const perLength = conductancePerLength[e]!
    const sinking = upstream ? conductivity[p + 1]! : mean[e]!
    up[e] = perLength * (potential[p]! - potential[p + 1]!) - scale * sinking
    upByBelow[e] = -perLength * conductivity[p]! - (upstream ? 0 : scale * meanByBelow[e]!)
    upByAbove[e] = perLength * conductivity[p + 1]! - scale * (upstream ? conductivitySlope[p + 1]! : meanByAbove[e]!)
  }
  bendConduction(grid, points, terms)
}
