import type { Duration, Volume, WaterContent } from '../quantity/generated/kinds.js'
import type { Reducer } from '../quantity/reducer.js'

/**
 * Water in one container between two moments. Every model of flow in a container has this shape, from the storage model
 * `waterStore` to the simulation `containerFlowRichards1931`, so that plans and forecasts do not depend on which one stands behind them.
 * It is a `Reducer` over spans of time that starts with a container which was watered through and left to drain.
 */
export interface ContainerFlow<State, Input extends FlowStep = FlowStep, Output extends FlowOutcome = FlowOutcome>
  extends Reducer<State, Input, Output> {
  /** The state of a container that was left to drain until it held this much. */
  readonly startFrom: (waterContent: WaterContent) => State
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
export interface FlowOutcome {
  /** Water that left below. Unit: L. */
  readonly drained: Volume
  /** Water that the plants took. Unit: L. */
  readonly taken: Volume
}
