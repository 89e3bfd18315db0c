import type { ColumnGrid } from '../grid/grid.js'
import type { ColumnTerms } from './terms.js'

/** What holds at bottom and surface: a suction in cm, or water that leaves or comes by itself. */
export interface ColumnEnds {
  readonly base: 'seepage' | 'closed' | number
  readonly surface: 'shots' | number
  /** Depth of standing water above which it runs off. Unit: cm. */
  readonly rim: number
  /** Suction at the surface from which evaporation falls, and at which it ends. Unit: cm. */
  readonly dryFrom: number
  readonly dryAt: number
}

/** Conductance of the seepage face in saturated conductivities per centimetre: no more than a film of water stands on it. */
const FACE = 1e4
/** How fast water above the rim runs off. Unit: 1/s. */
const RUN_OFF = 1

/** Flows through bottom and surface of a column whose suction is not held there. */
export function columnEnds(grid: ColumnGrid, ends: ColumnEnds, minConductivity: number) {
  const { bottom, surface } = grid
  const heldBase = typeof ends.base === 'number'
  const heldTop = typeof ends.surface === 'number'
  const face = ends.base === 'seepage' ? FACE * minConductivity * bottom : 0
  const fall = ends.dryAt - ends.dryFrom

  /** Fills in what drains, runs off and evaporates at the suctions of the lowest and the highest node. */
  const fill = (below: number, above: number, applied: number, evaporation: number, terms: ColumnTerms): void => {
    terms.drained = face * Math.max(0, -below)
    terms.drainedSlope = below <= 0 ? -face : 0
    terms.entered = applied
    const over = -above - ends.rim
    terms.runOff = over > 0 ? RUN_OFF * surface * over : 0
    terms.runOffSlope = over > 0 ? -RUN_OFF * surface : 0
    const falling = above > ends.dryFrom && above < ends.dryAt
    const part = above >= ends.dryAt ? 0 : falling ? (ends.dryAt - above) / fall : 1
    terms.evaporated = evaporation * part
    terms.evaporatedSlope = falling ? -evaporation / fall : 0
  }
  return { heldBase, heldTop, fill }
}
