import { readable, readOrRefuse } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { type NamesOf, onlyNames } from '../quantity/one-of.js'
import type { Reducer } from '../quantity/reducer.js'
import { LOWER_LIMIT, UPPER_LIMIT } from './domains.js'

/** Two limits between which nothing is switched. */
export interface DeadBandLimits {
  /** On at this water content and below. Unit: m³/m³. Range: [0, 1]. */
  readonly lower: WaterContent
  /** Off at this water content and above. Unit: m³/m³. Range: [0, 1]. */
  readonly upper: WaterContent
}

const NAMES: NamesOf<DeadBandLimits> = { lower: 1, upper: 1 }

/** What a dead-band remembers. */
export interface DeadBandState {
  readonly on: boolean
}

/**
 * Two-threshold switching of water, in its barest form: on at the lower limit, off at the upper one, unchanged in between. A missing
 * reading switches off, and so does what no medium can hold: zero, as a dead probe sends it, or more than 1.
 *
 * Alone it is not fit to move a valve: it knows no longest run, no volume and no lag of the probe. `controlWatering` does.
 *
 * @procedure On where the reading is at or below the lower limit, off where it is at or above the upper limit, missing or impossible, else as before.
 * @returns A reducer that takes water contents (NaN where missing) and gives on or off.
 * @throws `DomainError` outside the ranges, `InputError` when the limits leave no band.
 * @source definition: two-position control with a differential gap
 * @example
 * const reducer = deadBand({ lower: waterContent(0.5), upper: waterContent(0.6) })
 * runReducer({ reducer, inputs: [0.55, 0.5, 0.55, 0.6, NaN] }).outputs // => [false, true, true, false, false]
 */
export function deadBand(limits: DeadBandLimits): Reducer<DeadBandState, number, boolean> {
  const { lower, upper } = readOrRefuse('limits', () => {
    onlyNames(limits, NAMES, 'limits')
    return checkedBand(limits)
  })
  return {
    start: { on: false },
    step: (state, waterContent) => {
      const on = switched(wasOn(state), waterContent, lower, upper)
      return [{ on }, on]
    },
  }
}

/** The limits, if they leave a band between them. */
export function checkedBand(limits: DeadBandLimits): { lower: number; upper: number } {
  const lower = numberIn(limits.lower, LOWER_LIMIT, 'lower')
  const upper = numberIn(limits.upper, UPPER_LIMIT, 'upper')
  if (!(lower < upper))
    throw new InputError('upper', `${upper} is not above the lower limit ${lower}`, 'leave a band between the limits')
  return { lower, upper }
}

/** Whether it was on, as far as the state can be read: one whose getter throws was not. */
function wasOn(state: DeadBandState): boolean {
  return readable(() => state?.on === true) ?? false
}

/** On or off after a reading; null from JSON and text would be below any limit. */
function switched(on: boolean, waterContent: number, lower: number, upper: number): boolean {
  if (!(typeof waterContent === 'number' && waterContent > 0)) return false
  return waterContent <= lower || (on && waterContent < upper)
}
