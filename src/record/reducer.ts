import { InputError } from '../quantity/errors.js'
import { requireList, requireObject } from '../quantity/guard.js'
import type { Reducer } from '../quantity/reducer.js'

/** A reducer with the inputs that it should take. */
export interface RunInput<State, Input, Output> {
  /** The state machine, made by `watchShots` and its like. */
  readonly reducer: Reducer<State, Input, Output>
  /** What it is fed, in order. */
  readonly inputs: readonly Input[]
  /** Where it goes on, made by `runReducer`; its own start by default. */
  readonly state?: State
}

/**
 * Feeds a list of inputs to a reducer.
 *
 * @procedure Takes one step for each input, from the given state or from the start.
 * @returns The last state and all outputs.
 * @throws `InputError` when there is no reducer.
 * @source definition
 * @example
 * const counter = { start: 0, step: (state: number, input: number) => [state + input, state] as const }
 * runReducer({ reducer: counter, inputs: [1, 2, 3] }) // => { state: 6, outputs: [0, 1, 3] }
 */
export function runReducer<State, Input, Output>(
  run: RunInput<State, Input, Output>,
): { readonly state: State; readonly outputs: readonly Output[] } {
  requireObject(run, 'run')
  requireList(run.inputs, 'inputs')
  if (typeof run.reducer?.step !== 'function')
    throw new InputError('reducer', 'has no step', 'give what watchShots or one of its like returned')
  let state = run.state ?? run.reducer.start
  const outputs = run.inputs.map((input) => {
    const [next, output] = run.reducer.step(state, input)
    state = next
    return output
  })
  return { state, outputs }
}
