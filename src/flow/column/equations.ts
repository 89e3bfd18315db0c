import { fillConduction } from './conduction.js'
import { type ColumnEnds, columnEnds } from './ends.js'
import type { ColumnGrid } from './grid.js'
import type { ColumnHistory } from './history.js'
import type { LayerMedium } from './layer-medium.js'
import { columnPoints } from './points.js'
import { fillScanningConduction } from './scanning-conduction.js'
import { fillStorage, trustElements } from './storage.js'
import { columnTerms } from './terms.js'
import { fillUptake, type Sink } from './uptake.js'

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
  const passage = columnEnds(grid, ends, media[0]!.saturatedConductivity)
  const { heldBase, heldTop } = passage
  const room = () => new Float64Array(nodes)
  /** Net inflow of each cell. Unit: cm³/s. */
  const net = room()
  /** Slopes of water minus dt times net inflow, against suction. */
  const [lower, diagonal, upper] = [room(), room(), room()]
  const { water, waterByBelow, waterByOwn, waterByAbove, up, upByBelow, upByAbove } = terms
  const { taken, takenByBelow, takenByOwn, takenByAbove } = terms

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
    passage.fill(s[0]!, s[top]!, applied, evaporation, terms)
    sum()
  }

  const sum = (): void => {
    let fromBelow = 0
    for (let e = 0; e < top; e++) {
      net[e] = fromBelow - up[e]! - taken[e]!
      fromBelow = up[e]!
    }
    net[top] = fromBelow - taken[top]!
    if (!heldBase) net[0]! -= terms.drained
    if (!heldTop) net[top]! += terms.entered - terms.runOff - terms.evaporated
  }

  /** The matrix for a step. */
  const assemble = (dt: number): void => {
    // What the flow up from below changes in the balance of a cell, against the node below and its own.
    let byBelow = 0
    let byOwn = 0
    for (let i = 0; i < nodes; i++) {
      const outByOwn = i < top ? upByBelow[i]! : 0
      const outByAbove = i < top ? upByAbove[i]! : 0
      lower[i] = waterByBelow[i]! + dt * (takenByBelow[i]! - byBelow)
      diagonal[i] = waterByOwn[i]! + dt * (takenByOwn[i]! - byOwn + outByOwn)
      upper[i] = waterByAbove[i]! + dt * (takenByAbove[i]! + outByAbove)
      byBelow = outByOwn
      byOwn = outByAbove
    }
    diagonal[0]! += dt * terms.drainedSlope
    diagonal[top]! += dt * (terms.runOffSlope + terms.evaporatedSlope)
    if (heldBase) {
      diagonal[0] = 1
      upper[0] = 0
    }
    if (heldTop) {
      diagonal[top] = 1
      lower[top] = 0
    }
  }

  /**
   * Carries water and flows on to a small move of the suctions by their slopes. Flows that pass between cells change both alike, so that
   * no water is lost or made, however good the move is.
   */
  const carryOn = (move: Float64Array, { sink }: Conditions): void => {
    const most = sink?.most
    let before = 0
    let own = move[0]!
    for (let i = 0; i < nodes; i++) {
      const after = i < top ? move[i + 1]! : 0
      water[i]! += waterByBelow[i]! * before + waterByOwn[i]! * own + waterByAbove[i]! * after
      if (most !== undefined) {
        const drawn = taken[i]! + takenByBelow[i]! * before + takenByOwn[i]! * own + takenByAbove[i]! * after
        taken[i] = Math.min(Math.max(drawn, 0), most[i]!)
      }
      before = own
      own = after
    }
    for (let e = 0; e < top; e++) up[e]! += upByBelow[e]! * move[e]! + upByAbove[e]! * move[e + 1]!
    terms.drained = Math.max(0, terms.drained + terms.drainedSlope * move[0]!)
    terms.runOff = Math.max(0, terms.runOff + terms.runOffSlope * move[top]!)
    terms.evaporated = Math.max(0, terms.evaporated + terms.evaporatedSlope * move[top]!)
    sum()
  }

  /** Lets what a held end needs to keep its water pass there. */
  const closeHeldEnds = (target: Float64Array, dt: number): void => {
    if (heldBase) {
      terms.drained = (target[0]! - water[0]!) / dt + net[0]!
      net[0]! -= terms.drained
    }
    if (heldTop) {
      terms.entered = (water[top]! - target[top]!) / dt - net[top]!
      net[top]! += terms.entered
    }
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
    net,
    lower,
    diagonal,
    upper,
    heldBase,
    heldTop,
    averaged,
    store,
    evaluate,
    assemble,
    carryOn,
    closeHeldEnds,
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
