import { solveTridiagonal } from '../../numerics/tridiagonal.js'
import type { ColumnGrid } from '../column/grid/grid.js'
import type { StepFlows } from '../column/step/passed.js'
import { prepare, type SaltPassed, type SoluteLayer, type Transport, transportOf } from './transport.js'

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

// Three implicit stages of the third order, the last at the end of the step: alexander-1977, from memory; with the two stages of the flow salt closed in with the power 1.6 of the step behind a shot.
const STAGE = 0.4358665215084592
const MIDDLE = 0.7179332607542296
/** Weights of the first two stages in the whole, of γ = STAGE (-6γ² + 16γ - 1) / 4 and (6γ² - 20γ + 5) / 4; that of the last is its length. */
const FIRST = 1.2084966491760107
const SECOND = -0.6443631706844699
/** Water content below which a cell counts as holding that much, so that a concentration stays a number. */
const DRY = 1e-9

/**
 * Carries a dissolved salt along with the flows of each step: with the water, by dispersion and by diffusion in the wetted pores. Fluxes
 * are central, and lean against the stream only as far as is needed where the grid is coarse for the dispersion.
 */
export function soluteTransport(grid: ColumnGrid, layers: readonly SoluteLayer[]) {
  const { nodes } = grid
  const transport = transportOf(grid, layers)
  const room = () => new Float64Array(nodes)
  const [rates, second, third] = [room(), room(), room()]
  /** Changes the salt of each cell by one step of the flow. */
  return (salt: Float64Array, flows: StepFlows, at: SoluteConditions, passed: SaltPassed): void => {
    const { dt } = flows
    prepare(transport, flows, at.diffusion)
    solveStage(transport, salt, flows, STAGE, at)
    inflow(transport, flows, at, rates)
    count(transport, passed, FIRST * dt)
    for (let i = 0; i < nodes; i++) {
      second[i] = salt[i]! + (MIDDLE - STAGE) * dt * rates[i]!
      third[i] = salt[i]! + FIRST * dt * rates[i]!
    }
    solveStage(transport, second, flows, MIDDLE, at)
    inflow(transport, flows, at, rates)
    count(transport, passed, SECOND * dt)
    for (let i = 0; i < nodes; i++) third[i]! += SECOND * dt * rates[i]!
    solveStage(transport, third, flows, 1, at)
    inflow(transport, flows, at, rates)
    count(transport, passed, STAGE * dt)
    for (let i = 0; i < nodes; i++) salt[i] = third[i]! + STAGE * dt * rates[i]!
  }
}

/** Concentrations at which a stage balances. */
function solveStage(
  transport: Transport,
  salt: Float64Array,
  flows: StepFlows,
  share: number,
  at: SoluteConditions,
): void {
  const { grid, lower, diagonal, upper, concentration, byBelow, byAbove } = transport
  const { nodes, volumes } = grid
  const top = nodes - 1
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
  diagonal[0]! += h * Math.max(flows.drained, 0)
  concentration[0]! += h * Math.max(-flows.drained, 0) * at.fromBelow
  diagonal[top]! += h * flows.runOff
  concentration[top]! += h * Math.max(flows.entered, 0) * at.feed
  solveTridiagonal(lower, diagonal, upper, concentration)
}

/** Net inflow of salt into each cell at the concentrations, and what passes the ends. */
function inflow(transport: Transport, flows: StepFlows, at: SoluteConditions, into: Float64Array): void {
  const { grid, concentration, byBelow, byAbove, rate } = transport
  const { nodes } = grid
  const top = nodes - 1
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
  rate.drained = Math.max(flows.drained, 0) * concentration[0]!
  rate.fromBelow = Math.max(-flows.drained, 0) * at.fromBelow
  rate.runOff = flows.runOff * concentration[top]!
  rate.given = Math.max(flows.entered, 0) * at.feed
  into[0]! += rate.fromBelow - rate.drained
  into[top]! += rate.given - rate.runOff
}

/** Adds up what passes in a time. */
function count({ rate }: Transport, passed: SaltPassed, dt: number): void {
  passed.given += dt * rate.given
  passed.drained += dt * rate.drained
  passed.taken += dt * rate.taken
  passed.runOff += dt * rate.runOff
  passed.fromBelow += dt * rate.fromBelow
}
