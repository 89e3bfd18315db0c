import type { Container } from '../medium/container/container.js'
import type { ConductiveModel } from '../medium/curves/retention-model.js'
import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import { numberIn, wholeNumberIn } from '../quantity/guard.js'
import type { HydraulicConductivity } from '../quantity/hydraulic-conductivity.js'
import type { Length } from '../quantity/length.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { ColumnEnds, Sink } from './column-equations.js'
import { type ColumnGrid, columnGrid } from './column-grid.js'
import { SATURATED_CONDUCTIVITY } from './domains.js'
import { type FeddesLimits, feddesDryStart, feddesFactor } from './feddes-factor.js'
import { checkFeddesLimits } from './uptake-feddes-1978.js'

/** A container whose water is simulated. */
export interface RichardsContainer {
  /** The space that the medium fills. */
  readonly container: Container
  /** How the medium holds and conducts water. */
  readonly medium: ConductiveModel
  /** Conductivity of the saturated medium. Unit: cm/h. Range: (0, ∞). */
  readonly saturatedConductivity: HydraulicConductivity
  /** Where and how far roots take up water; without them there can be no demand. */
  readonly roots?: RootsInContainer
  /** What the bottom does: drain freely (the default), nothing, or keep a suction, as on a mat or a water table. */
  readonly base?: 'seepage' | 'closed' | SuctionHead
  /** What the surface does: take up shots (the default), or keep a suction. */
  readonly surface?: 'shots' | SuctionHead
  /** Heights at which the medium is followed, both ends included; 61 by default. Unit: 1. Range: integers [5, 5001]. */
  readonly nodes?: number
  /** Largest error of the water content that a step may make anywhere; 0.0001 by default. Unit: m³/m³. Range: [1e-9, 0.01]. */
  readonly tolerance?: number
}

/** Roots in a container. */
export interface RootsInContainer {
  /** Suctions between which the roots take up water. */
  readonly limits: FeddesLimits
  /** How dense the roots are at a height above the bottom, in any unit; the same everywhere by default. */
  readonly density?: (height: Length) => number
}

const NODES: Domain = {
  quantity: 'nodes',
  unit: '1',
  min: 5,
  max: 5001,
  ends: '[]',
  hint: 'give a whole number; twice as many make a quarter of the error',
}
const TOLERANCE: Domain = {
  quantity: 'tolerance',
  unit: 'm³/m³',
  min: 1e-9,
  max: 0.01,
  ends: '[]',
  hint: 'give the error of water content that a step may make, 0.0001 for instance',
}
const HELD: Domain = {
  quantity: 'suction that is held',
  unit: 'cm',
  min: -1000,
  max: 100000,
  ends: '[]',
  hint: 'give the suction at bottom or surface, zero for a water table',
}
const DENSITY: Domain = {
  quantity: 'root density',
  unit: 'any',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero where there are no roots',
}

/** A container as the simulation wants it. */
export interface RichardsColumn {
  readonly grid: ColumnGrid
  readonly medium: ConductiveModel
  /** Unit: cm/s. */
  readonly saturatedConductivity: number
  readonly ends: ColumnEnds
  readonly tolerance: number
  /** What the roots would draw at a demand in cm³/s. */
  readonly sink: (demand: number) => Sink | undefined
}

/** Refuses what cannot be simulated. */
export function richardsColumn(input: RichardsContainer): RichardsColumn {
  const { container, medium, roots, base = 'seepage', surface = 'shots' } = input
  const saturatedConductivity =
    numberIn(input.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity') / 3600
  const grid = columnGrid(container, wholeNumberIn(input.nodes ?? 61, NODES, 'nodes'))
  const tolerance = numberIn(input.tolerance ?? 0.0001, TOLERANCE, 'tolerance')
  const ends: ColumnEnds = {
    base: typeof base === 'string' ? base : numberIn(base, HELD),
    surface: typeof surface === 'string' ? surface : numberIn(surface, HELD),
  }
  return { grid, medium, saturatedConductivity, ends, tolerance, sink: sinkOf(grid, roots) }
}

function sinkOf(grid: ColumnGrid, roots: RootsInContainer | undefined): RichardsColumn['sink'] {
  const parts = new Float64Array(grid.nodes)
  if (roots !== undefined) checkFeddesLimits(roots.limits)
  const density = roots?.density
  let sum = 0
  for (let i = 0; i < grid.nodes; i++) {
    const here = density === undefined ? 1 : numberIn(density(grid.heights[i] as Length), DENSITY)
    parts[i] = here * grid.volumes[i]!
    sum += parts[i]!
  }
  if (!(sum > 0)) throw new InputError('roots.density', 'is zero everywhere', 'give a density above zero somewhere')
  return (demand) => {
    if (demand === 0) return undefined
    if (roots === undefined)
      throw new InputError('roots', 'are not described, and there is a demand', 'say between which suctions they drink')
    // cm³/s over the surface as mm/d, in which the limits count.
    const dryStart = feddesDryStart(roots.limits, (demand / grid.surface) * 864000)
    return {
      most: parts.map((part) => (part / sum) * demand),
      factor: (suction) => feddesFactor(suction, roots.limits, dryStart),
      driest: roots.limits.h4,
    }
  }
}
