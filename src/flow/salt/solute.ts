import { solveTridiagonal } from '../../numerics/tridiagonal.js'
import type { ColumnGrid } from '../column/grid.js'
import type { StepFlows } from '../column/passed.js'

/** How a dissolved salt moves in each layer. */
interface SoluteLayer {
  /** Unit: cm. */
  readonly dispersivity: number
  /** Unit: m³/m³. */
  readonly saturated: number
}

/** What salt does at the ends of a column and at the roots. Concentrations are in dS/m, amounts in dS/m·cm³. */
interface SoluteConditions {
  /** In water that comes to the surface, and that comes in from below. */
  readonly feed: number
  readonly fromBelow: number
  /** Concentration of what roots take, as a share of that around them. */
  readonly uptakeShare: number
  /** In free water. Unit: cm²/s. */
  readonly diffusion: number
}

/** Salt that passed the ends of a column. Unit: dS/m·cm³. */
export interface SaltPassed {
  given: number
  drained: number
  taken: number
  runOff: number
  fromBelow: number
}

// The stages of the flow: Alexander (1977).
const STAGE = 0.2928932188134524
const REST = 0.7071067811865476
/** Water content below which a cell counts as holding that much, so that a concentration stays a number. */
const DRY = 1e-9

/**
 * Carries a dissolved salt along with the flows of each step: with the water, by dispersion and by diffusion in the wetted pores. Fluxes
 * are central, and lean against the stream only as far as is needed where the grid is coarse for the dispersion.
 */
export function soluteTransport(grid: ColumnGrid, layers: readonly SoluteLayer[]) {
  const { nodes, volumes, lengths, sections } = grid
  const top = nodes - 1
  const room = () => new Float64Array(nodes)
  const [lower, diagonal, upper, concentration, first, second] = [room(), room(), room(), room(), room(), room()]
  /** Flow of salt up an element for a unit concentration below and above it. */
  const byBelow = new Float64Array(top)
  const byAbove = new Float64Array(top)
  const rate: SaltPassed = { given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: 0 }

  const prepare = ({ up, middle }: StepFlows, diffusion: number): void => {
    for (let e = 0; e < top; e++) {
      const { dispersivity, saturated } = layers[grid.layers[e]!]!
      const flow = up[e]!
      // A curve that ends at nothing may lie a film below it, and a root of that is no number.
      const waterContent = Math.max(middle[e]!, 0)
      // Millington and Quirk (1961): the pores wind the more, the drier they are.
      const tortuous = (diffusion * waterContent ** (10 / 3)) / (saturated * saturated)
      const exchange = (dispersivity * Math.abs(flow) + sections[e]! * tortuous) / lengths[e]!
      const upstream = Math.abs(flow) <= 2 * exchange ? 0.5 : 1 - exchange / Math.abs(flow)
      byBelow[e] = flow * (flow > 0 ? upstream : 1 - upstream) + exchange
      byAbove[e] = flow * (flow > 0 ? 1 - upstream : upstream) - exchange
    }
  }
  /** Concentrations at which a stage balances. */
  const solveStage = (salt: Float64Array, flows: StepFlows, share: number, at: SoluteConditions): void => {
    const h = STAGE * flows.dt
    for (let i = 0; i < nodes; i++) {
      const water = flows.before[i]! + share * (flows.after[i]! - flows.before[i]!)
      diagonal[i] = Math.max(water, DRY * volumes[i]!) + h * at.uptakeShare * flows.taken[i]!
      lower[i] = upper[i] = 0
      concentration[i] = salt[i]!
    }
    for (let e = 0; e < top; e++) {
      diagonal[e]! += h * byBelow[e]!
      upper[e]! += h * byAbove[e]!
      lower[e + 1]! -= h * byBelow[e]!
      diagonal[e + 1]! -= h * byAbove[e]!
    }
    if (flows.drained > 0) diagonal[0]! += h * flows.drained
    else concentration[0]! -= h * flows.drained * at.fromBelow
    diagonal[top]! += h * flows.runOff
    concentration[top]! += h * Math.max(flows.entered, 0) * at.feed
    solveTridiagonal(lower, diagonal, upper, concentration)
  }
  /** Net inflow of salt into each cell at the concentrations, and what passes the ends. */
  const inflow = (flows: StepFlows, at: SoluteConditions, into: Float64Array): void => {
    rate.taken = 0
    for (let i = 0; i < nodes; i++) {
      const taken = at.uptakeShare * flows.taken[i]! * concentration[i]!
      rate.taken += taken
      into[i] = -taken
    }
    for (let e = 0; e < top; e++) {
      const flow = byBelow[e]! * concentration[e]! + byAbove[e]! * concentration[e + 1]!
      into[e]! -= flow
      into[e + 1]! += flow
    }
    rate.drained = flows.drained > 0 ? flows.drained * concentration[0]! : 0
    rate.fromBelow = flows.drained > 0 ? 0 : -flows.drained * at.fromBelow
    rate.runOff = flows.runOff * concentration[top]!
    rate.given = Math.max(flows.entered, 0) * at.feed
    into[0]! += rate.fromBelow - rate.drained
    into[top]! += rate.given - rate.runOff
  }
  const count = (passed: SaltPassed, dt: number): void => {
    passed.given += dt * rate.given
    passed.drained += dt * rate.drained
    passed.taken += dt * rate.taken
    passed.runOff += dt * rate.runOff
    passed.fromBelow += dt * rate.fromBelow
  }

  /** Changes the salt of each cell by one step of the flow. */
  return (salt: Float64Array, flows: StepFlows, at: SoluteConditions, passed: SaltPassed): void => {
    const { dt } = flows
    prepare(flows, at.diffusion)
    solveStage(salt, flows, STAGE, at)
    inflow(flows, at, first)
    count(passed, REST * dt)
    for (let i = 0; i < nodes; i++) second[i] = salt[i]! + REST * dt * first[i]!
    solveStage(second, flows, 1, at)
    inflow(flows, at, first)
    count(passed, STAGE * dt)
    for (let i = 0; i < nodes; i++) salt[i] = second[i]! + STAGE * dt * first[i]!
  }
}
