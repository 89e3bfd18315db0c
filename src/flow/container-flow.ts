import type { Duration, Volume, WaterContent } from '../quantity/generated/kinds.js'
/**
 * Water in one container between two moments. Every model of flow in a container has this shape, from the storage model
 * `waterStore` to the simulation `containerFlowRichards1931`, so that plans and forecasts do not depend on which one stands behind them.
 */
export interface ContainerFlow<State> {
  /** The state of a container that was left to drain until it held this much. */
  readonly start: (waterContent: WaterContent) => State
  /** The state after a span of time, with what drained and what the plants could not get. */
  readonly step: (state: State, during: FlowStep) => FlowOutcome<State>
  /** The mean water content in a state. */
  readonly waterContent: (state: State) => WaterContent
}

/** What happens to a container in a span of time. */
export interface FlowStep {
  /** Its length. Unit: s. Range: (0, 86400]. */
  readonly duration: Duration
  /** Water given. Unit: L. Range: [0, ∞). */
  readonly applied: Volume
  /** Water that the plants would take. Unit: L. Range: [0, ∞). */
  readonly demand: Volume
}

/** What came of it. */
export interface FlowOutcome<State> {
  readonly state: State
  /** Water that left below. Unit: L. */
  readonly drained: Volume
  /** Water that the plants took. Unit: L. */
  readonly taken: Volume
}
