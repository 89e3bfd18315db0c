import type { ColumnGrid } from '../grid/grid.js'
import { DRY, LENGTHS, SHARES } from '../table/curved.js'
import type { Points } from './points.js'
import type { ColumnTerms } from './terms.js'

/** Shares that the contents at the middle and at the far node have in the mean over half an element, by the parabola: 8/12 and -1/12. */
const NEAR = 0.6666666666666666
const FAR = -0.08333333333333333

/**
 * How far the suction within an element may be taken as a straight line: wholly at rest and in gentle flow, not at all across a front.
 * Nor in dry elements, where a cell could not make up for what its neighbours would bring into its mean.
 */
export function trustElements(s: Float64Array, grid: ColumnGrid, terms: ColumnTerms, averaged: boolean): void {
  const { trust, trustByBelow, trustByAbove } = terms
  const { lengths } = grid
  for (let e = 0; e < lengths.length; e++) {
    const below = s[e]!
    const above = s[e + 1]!
    const length = lengths[e]!
    const jump = Math.abs(above - below)
    const rising = above > below
    const smaller = rising ? below : above
    const larger = rising ? above : below
    const usual = LENGTHS * length + SHARES * Math.max(smaller, 0)
    const dry = DRY * length
    trust[e] = averaged ? 1 : 0
    trustByBelow[e] = 0
    trustByAbove[e] = 0
    if (!averaged || (jump <= usual && larger <= dry)) continue
    const steep = Math.max(jump / usual - 1, 0)
    const parched = Math.max(larger / dry - 1, 0)
    if (steep >= 1 || parched >= 1) {
      trust[e] = 0
      continue
    }
    const flat = fade(steep)
    const moist = fade(parched)
    trust[e] = flat * moist
    const byJump = (moist * fadeSlope(steep)) / usual
    const byLarger = byJump + (flat * fadeSlope(parched)) / dry
    const bySmaller = -byJump - (smaller > 0 ? (byJump * jump * SHARES) / usual : 0)
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
  const { water, waterByBelow, waterByOwn, waterByAbove, trust, trustByBelow, trustByAbove } = terms
  const { layers, lowerHalves, upperHalves } = grid
  const { middleWaterContent, middleCapacity, curved } = points
  const { waterContent, capacity } = points.at
  const elements = lowerHalves.length
  // What the element below brings to the cell of a node, and its slopes.
  let held = 0
  let byBelow = 0
  let byOwn = 0
  for (let e = 0; e < elements; e++) {
    const p = e + layers[e]!
    const lower = lowerHalves[e]!
    const upper = upperHalves[e]!
    const below = waterContent[p]!
    const above = waterContent[p + 1]!
    const slopeBelow = -capacity[p]!
    const slopeAbove = -capacity[p + 1]!
    const trusted = trust[e]!
    const far = curved[e] === 1 ? trusted * FAR : 0
    const near = curved[e] === 1 ? trusted * NEAR : trusted / 2
    const own = 1 - near - far
    const middle = middleWaterContent[e]!
    // Half of it against either node, of which the middle is the mean.
    const slopeMiddle = (-near * middleCapacity[e]!) / 2
    const inLower = own * below + near * middle + far * above
    const inUpper = own * above + near * middle + far * below
    let lowerByBelow = own * slopeBelow + slopeMiddle
    let lowerByAbove = far * slopeAbove + slopeMiddle
    let upperByAbove = own * slopeAbove + slopeMiddle
    let upperByBelow = far * slopeBelow + slopeMiddle
    if (trusted > 0 && trusted < 1) {
      const moreLower = (inLower - below) / trusted
      const moreUpper = (inUpper - above) / trusted
      lowerByBelow += trustByBelow[e]! * moreLower
      lowerByAbove += trustByAbove[e]! * moreLower
      upperByBelow += trustByBelow[e]! * moreUpper
      upperByAbove += trustByAbove[e]! * moreUpper
    }
    water[e] = held + lower * inLower
    waterByBelow[e] = byBelow
    waterByOwn[e] = byOwn + lower * lowerByBelow
    waterByAbove[e] = lower * lowerByAbove
    held = upper * inUpper
    byBelow = upper * upperByBelow
    byOwn = upper * upperByAbove
  }
  water[elements] = held
  waterByBelow[elements] = byBelow
  waterByOwn[elements] = byOwn
  waterByAbove[elements] = 0
}
