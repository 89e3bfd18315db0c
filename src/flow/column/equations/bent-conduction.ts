import type { ColumnGrid } from '../grid/grid.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/** Difference of suction below which an element counts as level, and conductivity below which nothing flows. Units: cm, 1. */
const LEVEL = 1e-6
const NOTHING = 1e-30
const THIRD = 0.3333333333333333

/**
 * Corrects the flow through each trusted element for how the conductivity bends within it.
 *
 * Where the conductivity falls by a share a for every centimetre of suction, the steady flow through a length L with a difference of
 * suction d is that by the mean conductivity times sh(y - x) / (sh(x) sh(y)), with x = a L / 2, y = a d / 2 and sh(x) = sinh(x) / x: the
 * solution of Gardner's steady flow between two suctions. What stands here is the same to the second order, 1 - x y / 3, kept above zero,
 * with a d from the conductivities at both ends. At rest and without weight nothing changes.
 */
export function bendConduction(grid: ColumnGrid, points: Points, terms: ColumnTerms): void {
  const { up, upByBelow, upByAbove, trust, trustByBelow, trustByAbove } = terms
  const { layers, lengths } = grid
  const { suction } = points
  const { conductivity, conductivitySlope } = points.at
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    const below = conductivity[p]!
    const above = conductivity[p + 1]!
    const total = Math.max(below + above, NOTHING)
    const apart = suction[p + 1]! - suction[p]!
    if (!(trust[e]! > 0 && Math.abs(apart) > LEVEL)) continue
    // Inverses, for each is wanted more than once, and a division takes as long as several products.
    const perApart = 1 / apart
    const perTotal = 1 / total
    // Half of a d.
    const fall = (below - above) * perTotal
    const perFall = lengths[e]! * fall * THIRD * perApart
    const third = perFall * fall
    const factor = third > 0 ? 1 / (1 + third) : 1 - third
    const slope = third > 0 ? -factor * factor : -1
    const byFall = 4 * slope * perFall * perTotal * perTotal
    const byApart = -slope * third * perApart
    const byBelow = byFall * above * conductivitySlope[p]! - byApart
    const byAbove = byApart - byFall * below * conductivitySlope[p + 1]!
    const flow = up[e]!
    const share = 1 + trust[e]! * (factor - 1)
    up[e] = flow * share
    upByBelow[e] = upByBelow[e]! * share + flow * (trust[e]! * byBelow + trustByBelow[e]! * (factor - 1))
    upByAbove[e] = upByAbove[e]! * share + flow * (trust[e]! * byAbove + trustByAbove[e]! * (factor - 1))
  }
}
