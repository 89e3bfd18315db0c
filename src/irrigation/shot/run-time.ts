import { answerOf } from '../../quantity/answer.js'
import { EMITTERS, VALVE_TIME } from '../../quantity/domains.js'
import type { Duration, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { EMITTER_FLOW, SHOT_OF_ZONE } from '../domains.js'
import type { EmitterLine } from '../terms.js'

/** What a run time is found from. */
export interface RunTimeInput extends EmitterLine {
  /** Water for all emitters together. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
}

/**
 * How long a valve must be open for its emitters to give a volume.
 *
 * A volume of zero needs no opening, so that its run time is zero whatever the line fill.
 *
 * @equation `t = \frac{V}{q\,n} + t_{fill}`
 * @returns Time that the valve is open. Unit: s.
 * @source definition
 * @example
 * inSeconds(runTime({ volume: millilitres(397.06), emitterFlow: litresPerHour(2.1), emitters: 3 })) // => 226.9
 */
export function runTime(input: RunTimeInput): Duration {
  requireObject(input, 'input')
  const volume = numberIn(input.volume, SHOT_OF_ZONE, 'volume')
  const flow = numberIn(input.emitterFlow, EMITTER_FLOW, 'emitterFlow') * numberIn(input.emitters, EMITTERS, 'emitters')
  const fill = numberIn(optionOr(input.lineFill, 0), VALVE_TIME, 'lineFill')
  return answerOf(volume === 0 ? 0 : (volume / flow) * 3600 + fill, 'emitterFlow') as Duration
}
