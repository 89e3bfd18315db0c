import type { ColumnGrid } from '../grid/grid.js'
import type { ColumnHistory } from '../scanning/history.js'
import type { LayerMedium } from '../table/layer-medium.js'
import { assembleMatrix, closeHeldEnds, columnBalance, sumFlows } from './balance.js'
import { carryOn } from './carry-on.js'
import { fillConduction } from './conduction.js'
import { type ColumnEnds, columnEnds } from './ends.js'
import { addFilling, carryContents, elementFilling, fillFrom } from './filling.js'
import { columnPoints } from './points.js'
import { fillScanningConduction } from './scanning-conduction.js'
import { fillStorage, trustElements } from './storage.js'
import { columnTerms } from './terms.js'
import { averageUptake, fillUptake, type Sink } from './uptake.js'

/** What happens to a column while its conditions stay the same. */
export interface Conditions {
  /** Water that comes to the surface. Unit: cm³/s. */
  readonly applied: number
  /** Water that the air would take from a wet surface. Unit: cm³/s. */
  readonly evaporation: number
  readonly sink: Sink | undefined
}

/**
 * How cells are seen: by averages over them; by their nodes; or by their nodes, with water sinking at the conductivity of the node above,
 * which is coarser still and cannot swing from node to node where the conductivity falls steeply.
 */
export type Manner = 'averaged' | 'nodal' | 'upstream'

/**
 * The balance of water of every cell of a column, after the mixed form of Richards' equation: what changes is the water content,
 * what drives it is the suction.
 */
export function columnEquations(
  grid: ColumnGrid,
  media: readonly LayerMedium[],
  ends: ColumnEnds,
  manner: Manner,
  history: ColumnHistory | undefined,
) {
  const conduct = history === undefined ? fillConduction : fillScanningConduction
  const averaged = manner === 'averaged'
  const { nodes } = grid
  const top = nodes - 1
  const terms = columnTerms(grid)
  const points = columnPoints(grid, media, history)
  const filling = elementFilling(nodes - 1, points.suction.length)
  const passage = columnEnds(grid, ends, media[0]!.saturatedConductivity)
  const { heldBase, heldTop } = passage
  const balance = columnBalance(grid, terms, heldBase, heldTop)
  const { water, waterByOwn } = terms

  const store = (s: Float64Array): void => {
    points.read(s)
    trustElements(s, grid, terms, averaged)
    fillStorage(grid, points, terms)
    if (heldTop || s[top]! > 0) return
    water[top]! -= grid.surface * s[top]!
    waterByOwn[top]! -= grid.surface
  }

  /** Works out water, flows and their slopes at suctions. */
  const evaluate = (s: Float64Array, { applied, evaporation, sink }: Conditions): void => {
    store(s)
    conduct(grid, points, terms, manner === 'upstream')
    fillUptake(s, sink, terms)
    // Where media turn, contents bend too much to be carried from step to step.
    if (history === undefined && filling.perTime > 0) addFilling(filling, grid, points, terms)
    averageUptake(s, sink, terms)
    passage.fill(s[0]!, s[top]!, applied, evaporation, terms)
    sumFlows(balance)
  }

  /** Sets the suctions that are held. */
  const hold = (s: Float64Array): void => {
    if (heldBase) s[0] = ends.base as number
    if (heldTop) s[top] = ends.surface as number
  }
  /** Water that stands on the surface. Unit: cm³. */
  const standing = (s: Float64Array): number => (heldTop ? 0 : grid.surface * Math.max(0, -s[top]!))

  return {
    grid,
    full: fullCells(grid, media),
    nodes,
    terms,
    points,
    net: balance.net,
    lower: balance.lower,
    diagonal: balance.diagonal,
    upper: balance.upper,
    heldBase,
    heldTop,
    averaged,
    store,
    evaluate,
    assemble: (dt: number): void => assembleMatrix(balance, dt),
    /** Lets points fill from contents for a time, or no time pass. */
    fillFrom: (contents: Float64Array, time: number): void => fillFrom(filling, contents, time),
    carryOn: (move: Float64Array, { sink }: Conditions): void => {
      carryOn(balance, move, sink?.max)
      carryContents(grid, points, move)
    },
    closeHeldEnds: (target: Float64Array, dt: number): void => closeHeldEnds(balance, target, dt),
    hold,
    standing,
  }
}

/** What each cell holds when its media are full. Unit: cm³. */
function fullCells({ nodes, layers, lowerHalves, upperHalves }: ColumnGrid, media: readonly LayerMedium[]) {
  const full = new Float64Array(nodes)
  for (let e = 0; e < layers.length; e++) {
    const { saturated } = media[layers[e]!]!.table
    full[e]! += lowerHalves[e]! * saturated
    full[e + 1]! += upperHalves[e]! * saturated
  }
  return full
}

export type ColumnEquations = ReturnType<typeof columnEquations>
