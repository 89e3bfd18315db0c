import { InputError } from '../quantity/errors.js'
import type { Length } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import type { Sink } from './column/equations/uptake.js'
import type { ColumnGrid } from './column/grid/grid.js'
import { ROOT_DENSITY } from './domains.js'
import { type FeddesLimits, feddesDryStart } from './feddes-factor.js'
import { checkFeddesLimits } from './uptake-feddes-1978.js'

/** Roots in a container. */
export interface RootsInContainer {
  /** Suctions between which the roots take up water. */
  readonly limits: FeddesLimits
  /** How dense the roots are at a height above the bottom, in any unit; the same everywhere by default. */
  readonly density?: (height: Length) => number
}

/** What the roots of a column would draw at a demand in cm³/s. */
export function sinkOf(grid: ColumnGrid, roots: RootsInContainer | undefined): (demand: number) => Sink | undefined {
  if (roots === undefined) return (demand) => (demand === 0 ? undefined : refuse())
  requireObject(roots, 'roots')
  checkFeddesLimits(roots.limits)
  const { heights, lengths, lowerHalves, upperHalves } = grid
  const density = roots.density ?? (() => 1)
  const rooted = (volume: number, height: number) =>
    numberIn(density(height as Length), ROOT_DENSITY, 'density') * volume
  const lower = lowerHalves.map((volume, e) => rooted(volume, heights[e]! + lengths[e]! / 4))
  const upper = upperHalves.map((volume, e) => rooted(volume, heights[e]! + (3 * lengths[e]!) / 4))
  const sum = lower.reduce((a, b) => a + b, 0) + upper.reduce((a, b) => a + b, 0)
  if (!(sum > 0)) throw new InputError('roots.density', 'is zero everywhere', 'give a density above zero somewhere')
  const { h1, h2, h4 } = roots.limits
  return (demand) => {
    if (demand === 0) return undefined
    const max = new Float64Array(heights.length)
    const [fromLower, fromUpper] = [lower.slice(), upper.slice()]
    for (let e = 0; e < lengths.length; e++) {
      fromLower[e]! *= demand / sum
      fromUpper[e]! *= demand / sum
      max[e]! += fromLower[e]!
      max[e + 1]! += fromUpper[e]!
    }
    // cm³/s over the surface as mm/d, in which the limits count.
    const h3 = feddesDryStart(roots.limits, (demand / grid.surface) * 864000)
    return { fromLower, fromUpper, max, h1, h2, h3, h4 }
  }
}

function refuse(): never {
  throw new InputError('demand', 'is above zero, and no roots are described', 'say between which suctions they drink')
}
