import type { RetentionModel } from '../medium/curves/retention-model.js'
import { InputError } from '../quantity/errors.js'
import type { Length, Share, SuctionHead } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireList, requireRows, wholeNumberIn } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import type { ColumnEnds } from './column/equations/ends.js'
import { type ColumnGrid, columnGrid } from './column/grid/grid.js'
import { usualNodes } from './column/grid/usual-nodes.js'
import type { LayerMedium } from './column/table/layer-medium.js'
import { mediumTable } from './column/table/medium-table.js'
import {
  AIR_DRY_SUCTION,
  BYPASS,
  CONTENT_TOLERANCE,
  HELD_SUCTION,
  NODES,
  RIM,
  SATURATED_CONDUCTIVITY,
} from './domains.js'
import { type RootsInContainer, sinkOf } from './richards-roots.js'
import { type SaltInContainer, type SaltSetting, saltSetting } from './salt/salt-setting.js'
import type { ConductiveMedium, FilledContainer } from './terms.js'
import { wettingTable } from './wetting-table.js'

/** A medium in its place, with how well it conducts when it is full. */
export interface ConductingLayer extends FilledContainer, ConductiveMedium {
  /**
   * How the medium holds water as it wets from dry, where that is known: `wettingCurveKoolParker1987` for instance. Left out, it wets along
   * the curve on which it drains.
   */
  readonly wetting?: RetentionModel
}

/** What surrounds the medium of a simulation, and how exactly it is followed. */
export interface RichardsSurroundings {
  /** Where and how far roots take up water; without them there can be no demand. */
  readonly roots?: RootsInContainer
  /** What the bottom does: drain freely (the default), nothing, or keep a suction, as on a mat or a water table. */
  readonly base?: 'seepage' | 'closed' | SuctionHead
  /** What the surface does: take up shots (the default), or keep a suction. */
  readonly surface?: 'shots' | SuctionHead
  /** Depth of water that can stand on the surface before it runs off over the rim; without it no water runs off. Unit: cm. Range: [0, ∞). */
  readonly rim?: Length
  /** Share of the water given that runs past the medium, along walls and through wide gaps; none by default. Unit: 1. Range: [0, 1]. */
  readonly bypass?: Share
  /** Suction at which the surface is air-dry and evaporation ends; 100000 by default. Unit: cm. Range: [100, 10000000]. */
  readonly airDry?: SuctionHead
  /** How salt moves; without it none is followed. */
  readonly salt?: SaltInContainer
  /**
   * Heights at which the medium is followed, both ends included; by default 27, and up to 61 where the conductivity falls steeply. Unit: 1.
   * Range: integers [5, 5001].
   */
  readonly nodes?: number
  /** Largest error of the water content that a step may make anywhere; 0.001 by default. Unit: m³/m³. Range: [1e-9, 0.01]. */
  readonly tolerance?: number
}

/** A container of one medium whose water is simulated. */
export interface RichardsContainer extends ConductingLayer, RichardsSurroundings {}

/** Layers of different media, one on the other, whose water is simulated. */
export interface RichardsLayers extends RichardsSurroundings {
  /** The layers, from the bottom up; the narrower of two that meet is where water passes. */
  readonly layers: readonly ConductingLayer[]
}

/** A container as the simulation wants it. */
export interface RichardsColumn {
  readonly grid: ColumnGrid
  readonly layers: readonly ConductingLayer[]
  readonly media: readonly LayerMedium[]
  readonly ends: ColumnEnds
  readonly bypass: number
  readonly tolerance: number
  readonly sink: ReturnType<typeof sinkOf>
  readonly salt: SaltSetting | undefined
}

/** Refuses what cannot be simulated. */
export function richardsColumn(layers: readonly ConductingLayer[], around: RichardsSurroundings): RichardsColumn {
  requireRows(layers, 'layers')
  for (const { medium, container } of layers) {
    requireList(medium?.breakpoints, 'medium.breakpoints')
    requireList(container?.breakpoints, 'container.breakpoints')
  }
  if (layers.length === 0) throw new InputError('layers', 'the stack is empty', 'give at least one layer')
  const media = layers.map(({ medium, wetting, saturatedConductivity }) => ({
    table: mediumTable(medium),
    wetting: wetting === undefined ? undefined : wettingTable(medium, wetting),
    saturatedConductivity: numberIn(saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity') / 3600,
  }))
  const { roots, base = 'seepage', surface = 'shots' } = around
  const grid = columnGrid(
    layers.map(({ container }) => container),
    wholeNumberIn(optionOr(around.nodes, usualNodes(layers)), NODES, 'nodes'),
  )
  const airDry = numberIn(optionOr(around.airDry, 1e5), AIR_DRY_SUCTION, 'airDry')
  const ends: ColumnEnds = {
    base: typeof base === 'number' ? numberIn(base, HELD_SUCTION, 'base') : oneOf(base, ['seepage', 'closed'], 'base'),
    surface:
      typeof surface === 'number' ? numberIn(surface, HELD_SUCTION, 'surface') : oneOf(surface, ['shots'], 'surface'),
    rim: around.rim === undefined ? Infinity : numberIn(around.rim, RIM, 'rim'),
    dryFrom: airDry / 2,
    dryAt: airDry,
  }
  const tolerance = numberIn(optionOr(around.tolerance, 0.001), CONTENT_TOLERANCE, 'tolerance')
  const bypass = numberIn(optionOr(around.bypass, 0), BYPASS, 'bypass')
  const salt = saltSetting(around.salt, grid, layers, typeof base === 'number')
  return { grid, layers, media, ends, bypass, tolerance, sink: sinkOf(grid, roots), salt }
}
