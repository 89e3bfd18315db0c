import type { ColumnGrid } from '../grid/grid.js'
import { fillMeanConductivity } from './conduction.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/**
 * Flow up through each element of media that drain and wet on different curves. What they conduct goes with the water that they hold, so
 * the mean is taken over the suctions at which they would hold it while draining; what drives the flow are the suctions themselves.
 */
export function fillScanningConduction(grid: ColumnGrid, points: Points, terms: ColumnTerms, upstream: boolean): void {
  fillMeanConductivity(grid, points, terms)
  const { up, upByBelow, upByAbove, mean, meanByBelow, meanByAbove } = terms
  const { layers, lengths } = grid
  const { suction, effectiveSlope, conductance } = points
  const { conductivity, conductivitySlope } = points.at
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    const scale = conductance[e]!
    const gradient = (suction[p + 1]! - suction[p]!) / lengths[e]!
    const perLength = (scale * mean[e]!) / lengths[e]!
    const byBelow = meanByBelow[e]! * effectiveSlope[p]!
    const byAbove = meanByAbove[e]! * effectiveSlope[p + 1]!
    if (upstream) {
      const slope = conductivitySlope[p + 1]! * effectiveSlope[p + 1]!
      up[e] = scale * (mean[e]! * gradient - conductivity[p + 1]!)
      upByBelow[e] = scale * byBelow * gradient - perLength
      upByAbove[e] = scale * (byAbove * gradient - slope) + perLength
    } else {
      up[e] = scale * mean[e]! * (gradient - 1)
      upByBelow[e] = scale * byBelow * (gradient - 1) - perLength
      upByAbove[e] = scale * byAbove * (gradient - 1) + perLength
    }
  }
}
