/**
 * A pure state machine. Its state is plain data: it can be written as JSON at any step, read back later or elsewhere, and go on as
 * if nothing had happened. It knows no clock: time comes with the inputs.
 */
export interface Reducer<State, Input, Output> {
  /** The state before the first input. */
  readonly start: State
  /** The state after an input, and what it brought. The state that was passed in is left as it was. */
  readonly step: (state: State, input: Input) => readonly [State, Output]
}
