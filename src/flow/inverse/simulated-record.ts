import type { ConductiveModel } from '../../medium/curves/retention-model.js'
import { vanGenuchten1980 } from '../../medium/curves/van-genuchten-1980.js'
import type {
  HydraulicConductivity,
  InverseSuction,
  Share,
  SuctionHead,
  WaterContent,
} from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, wholeNumberIn } from '../../quantity/guard.js'
import { containerFlowRichards1931 } from '../container-flow-richards-1931.js'
import { NODES_OF_FIT, TOLERANCE_OF_FIT } from '../domains.js'
import { probeReading } from '../probe-view/probe-reading.js'
import type { RichardsState } from '../richards-state.js'
import type { RichardsFlow } from '../richards-terms.js'
import type { MediumValues } from './medium-numbers.js'
import type { MediumRecord } from './medium-record.js'

/** Contents that a start keeps off the ends of what a medium can hold at rest. */
const OFF = 1e-4

/** What a medium would have made of a record. */
export interface SimulatedRecord {
  /** The water content with which it began: the nearest to the one wanted that the medium can hold at rest. */
  readonly start: number
  /** Drain of each step. Unit: L. */
  readonly drained: Float64Array
  /** What the probe reads at the end of each step, where it is asked for. */
  readonly read: Float64Array
}

/** Follows a medium through a record. */
export function simulatedRecord(record: MediumRecord, values: MediumValues, look: boolean): SimulatedRecord {
  const flow = simulationOf(record, values)
  const { state, start } = beginning(flow, record, values)
  return { start, ...follow(flow, state, record, look) }
}

/** The simulation of a medium in the container of a record. */
export function simulationOf(record: MediumRecord, values: MediumValues): RichardsFlow {
  return containerFlowRichards1931({
    ...record,
    medium: curveOf(values),
    saturatedConductivity: values.saturatedConductivity as HydraulicConductivity,
    bypass: values.bypass as Share,
    nodes: wholeNumberIn(optionOr(record.nodes, 31), NODES_OF_FIT, 'nodes'),
    tolerance: numberIn(optionOr(record.tolerance, 0.001), TOLERANCE_OF_FIT, 'tolerance'),
  })
}

/** The retention curve of such numbers. */
export function curveOf({ residual, saturated, alpha, n, poreConnection }: MediumValues): ConductiveModel {
  return vanGenuchten1980({
    residual: residual as WaterContent,
    saturated: saturated as WaterContent,
    alpha: alpha as InverseSuction,
    n,
    poreConnection,
  })
}

/** The state at the begin; the nearest that the medium can hold at rest, where it cannot hold what it is told. */
function beginning(
  flow: RichardsFlow,
  { start, base }: MediumRecord,
  values: MediumValues,
): { readonly state: RichardsState; readonly start: number } {
  const below = typeof base === 'number' ? base : 0
  if (start === undefined) return { state: flow.startAt((height) => (height + below) as SuctionHead), start: 0 }
  const driest = flow.waterContent(flow.startAt(() => 1e5 as SuctionHead)) + OFF
  const near = Math.min(Math.max(values.start, driest), values.saturated - OFF)
  return { state: flow.startFrom(near as WaterContent), start: near }
}

/** Drain of each step, and what the probe reads at its end. */
function follow(
  flow: RichardsFlow,
  begin: RichardsState,
  { steps, probe }: MediumRecord,
  look: boolean,
): { readonly drained: Float64Array; readonly read: Float64Array } {
  const drained = new Float64Array(steps.length)
  const read = new Float64Array(steps.length)
  let state = begin
  steps.forEach((during, k) => {
    const [next, after] = flow.step(state, during)
    state = next
    drained[k] = after.drained
    if (look && probe !== undefined) read[k] = probeReading(flow.profile(state), probe)
  })
  return { drained, read }
}
