import { type MeanConductivity, meanConductivity } from './conduction.js'
import type { ColumnGrid } from './grid.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/**
 * Flow up through each element of media that drain and wet on different curves. What they conduct goes with the water that they hold, so
 * the mean is taken over the suctions at which they would hold it while draining; what drives the flow are the suctions themselves.
 */
export function fillScanningConduction(grid: ColumnGrid, points: Points, terms: ColumnTerms, upstream: boolean): void {
  const { up, upByBelow, upByAbove } = terms
  const { layers, lengths, sections } = grid
  const { suction, effectiveSlope, saturatedConductivity } = points
  const mean: MeanConductivity = { value: 0, byBelow: 0, byAbove: 0 }
  for (let e = 0; e < up.length; e++) {
    const p = e + layers[e]!
    meanConductivity(points, p, mean)
    const scale = saturatedConductivity[e]! * sections[e]!
    const gradient = (suction[p + 1]! - suction[p]!) / lengths[e]!
    const perLength = (scale * mean.value) / lengths[e]!
    const [byBelow, byAbove] = [mean.byBelow * effectiveSlope[p]!, mean.byAbove * effectiveSlope[p + 1]!]
    if (upstream) {
      const slope = points.at.conductivitySlope[p + 1]! * effectiveSlope[p + 1]!
      up[e] = scale * (mean.value * gradient - points.at.conductivity[p + 1]!)
      upByBelow[e] = scale * byBelow * gradient - perLength
      upByAbove[e] = scale * (byAbove * gradient - slope) + perLength
    } else {
      up[e] = scale * mean.value * (gradient - 1)
      upByBelow[e] = scale * byBelow * (gradient - 1) - perLength
      upByAbove[e] = scale * byAbove * (gradient - 1) + perLength
    }
  }
}
