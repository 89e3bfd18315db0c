import { DRY, LENGTHS, SHARES } from './curved.js'
import type { ColumnGrid } from './grid.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/**
 * How far the suction within an element may be taken as a straight line: wholly at rest and in gentle flow, not at all across a front.
 * Nor in dry elements, where a cell could not make up for what its neighbours would bring into its mean.
 */
export function trustElements(s: Float64Array, grid: ColumnGrid, terms: ColumnTerms, averaged: boolean): void {
  const { trust, trustByBelow, trustByAbove } = terms
  trust.fill(averaged ? 1 : 0)
  trustByBelow.fill(0)
  trustByAbove.fill(0)
  if (!averaged) return
  for (let e = 0; e < trust.length; e++) {
    const below = s[e]!
    const above = s[e + 1]!
    const length = grid.lengths[e]!
    const jump = Math.abs(above - below)
    const rising = above > below
    const smaller = rising ? below : above
    const larger = rising ? above : below
    const usual = LENGTHS * length + SHARES * Math.max(smaller, 0)
    const dry = DRY * length
    if (jump <= usual && larger <= dry) continue
    const steep = Math.max(jump / usual - 1, 0)
    const parched = Math.max(larger / dry - 1, 0)
    if (steep >= 1 || parched >= 1) {
      trust[e] = 0
      continue
    }
    const [flat, moist] = [fade(steep), fade(parched)]
    trust[e] = flat * moist
    const byJump = (moist * fadeSlope(steep)) / usual
    const byLarger = byJump + (flat * fadeSlope(parched)) / dry
    const bySmaller = -byJump - (smaller > 0 && steep > 0 ? (byJump * jump * SHARES) / usual : 0)
    trustByBelow[e] = rising ? bySmaller : byLarger
    trustByAbove[e] = rising ? byLarger : bySmaller
  }
}

/** From one at zero to zero at one without a kink. */
function fade(x: number): number {
  return 1 - x * x * (3 - 2 * x)
}
function fadeSlope(x: number): number {
  return -6 * x * (1 - x)
}

/**
 * Water in each cell: the integral of the water content over the half elements on both sides of a node, by the parabola through
 * nodes and middle, or by straight lines where an element is too long for a parabola; where the suction jumps, the content at the
 * node stands for the whole cell.
 */
export function fillStorage(grid: ColumnGrid, points: Points, terms: ColumnTerms): void {
  const { water, waterByBelow, waterByOwn, waterByAbove, trust } = terms
  const { layers, lowerHalves, upperHalves } = grid
  const { waterContent, capacity } = points.at
  water.fill(0)
  waterByBelow.fill(0)
  waterByOwn.fill(0)
  waterByAbove.fill(0)
  for (let e = 0; e < lowerHalves.length; e++) {
    const p = e + layers[e]!
    const lower = lowerHalves[e]!
    const upper = upperHalves[e]!
    water[e]! += lower * waterContent[p]!
    waterByOwn[e]! -= lower * capacity[p]!
    water[e + 1]! += upper * waterContent[p + 1]!
    waterByOwn[e + 1]! -= upper * capacity[p + 1]!
    if (trust[e]! > 0) average(e, p, grid, points, terms)
  }
}

/** Puts the means over the halves of an element in the place of the contents at its nodes. */
function average(e: number, p: number, grid: ColumnGrid, points: Points, terms: ColumnTerms): void {
  const { water, waterByBelow, waterByOwn, waterByAbove } = terms
  const { waterContent, capacity } = points.at
  const [below, above, middle] = [waterContent[p]!, waterContent[p + 1]!, points.middleWaterContent[e]!]
  const [slopeBelow, slopeAbove] = [-capacity[p]!, -capacity[p + 1]!]
  // Half of it against either node, of which the middle is the mean.
  const slopeMiddle = -points.middleCapacity[e]! / 2
  const curved = points.curved[grid.layers[e]!]!
  const far = curved ? -1 / 12 : 0
  const near = curved ? 8 / 12 : 1 / 2
  const own = -near - far
  const moreLower = near * middle + own * below + far * above
  const moreUpper = near * middle + own * above + far * below
  const [trust, byBelow, byAbove] = [terms.trust[e]!, terms.trustByBelow[e]!, terms.trustByAbove[e]!]
  const [lower, upper] = [grid.lowerHalves[e]!, grid.upperHalves[e]!]
  water[e]! += lower * trust * moreLower
  waterByOwn[e]! += lower * (trust * (near * slopeMiddle + own * slopeBelow) + byBelow * moreLower)
  waterByAbove[e]! += lower * (trust * (near * slopeMiddle + far * slopeAbove) + byAbove * moreLower)
  water[e + 1]! += upper * trust * moreUpper
  waterByOwn[e + 1]! += upper * (trust * (near * slopeMiddle + own * slopeAbove) + byAbove * moreUpper)
  waterByBelow[e + 1]! += upper * (trust * (near * slopeMiddle + far * slopeBelow) + byBelow * moreUpper)
}
