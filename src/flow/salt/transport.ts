import type { ColumnGrid } from '../column/grid/grid.js'
import type { StepFlows } from '../column/step/passed.js'

/** How a dissolved salt moves in each layer. */
export interface SoluteLayer {
  /** Unit: cm. */
  readonly dispersivity: number
  /** Unit: m³/m³. */
  readonly saturated: number
}

/** Salt that passed the ends of a column. Unit: dS/m·cm³. */
export interface SaltPassed {
  given: number
  drained: number
  taken: number
  runOff: number
  fromBelow: number
}

export function noSaltPassed(): SaltPassed {
  return { given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: 0 }
}

/** What the transport of a salt works with: one number for each node, or for each element. */
export interface Transport {
  readonly grid: ColumnGrid
  readonly layers: readonly SoluteLayer[]
  readonly lower: Float64Array
  readonly diagonal: Float64Array
  readonly upper: Float64Array
  readonly concentration: Float64Array
  /** Flow of salt up an element for a unit concentration below and above it. */
  readonly byBelow: Float64Array
  readonly byAbove: Float64Array
  readonly rate: SaltPassed
}

export function transportOf(grid: ColumnGrid, layers: readonly SoluteLayer[]): Transport {
  const { nodes } = grid
  return {
    grid,
    layers,
    lower: new Float64Array(nodes),
    diagonal: new Float64Array(nodes),
    upper: new Float64Array(nodes),
    concentration: new Float64Array(nodes),
    byBelow: new Float64Array(nodes - 1),
    byAbove: new Float64Array(nodes - 1),
    rate: noSaltPassed(),
  }
}

/** Works out how salt moves through each element for a unit concentration on either side. */
export function prepare(transport: Transport, { up, middle }: StepFlows, diffusion: number): void {
  const { grid, layers, byBelow, byAbove } = transport
  const { lengths, sections } = grid
  for (let e = 0; e < up.length; e++) {
    const { dispersivity, saturated } = layers[grid.layers[e]!]!
    const flow = up[e]!
    // A curve that ends at nothing may lie a film below it, and a root of that is no number.
    const waterContent = Math.max(middle[e]!, 0)
    // millington-1961: the pores wind the more, the drier they are.
    const tortuous = (diffusion * waterContent ** (10 / 3)) / (saturated * saturated)
    const exchange = (dispersivity * Math.abs(flow) + sections[e]! * tortuous) / lengths[e]!
    const upstream = Math.abs(flow) <= 2 * exchange ? 0.5 : 1 - exchange / Math.abs(flow)
    byBelow[e] = flow * (flow > 0 ? upstream : 1 - upstream) + exchange
    byAbove[e] = flow * (flow > 0 ? 1 - upstream : upstream) - exchange
  }
}
