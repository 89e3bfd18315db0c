import { answerOf } from '../../quantity/answer.js'
import { EMITTERS, WATER_GIVEN } from '../../quantity/domains.js'
import type { ApplicationRate, Area, Duration, Flow, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { EMITTER_FLOW, ON_TIME, WETTED_AREA } from '../domains.js'
import type { EmitterFlow, Emitters } from '../terms.js'

/**
 * Flow that a zone takes while its valve is open.
 *
 * @equation `Q = q \, n`
 * @returns Flow of the zone. Unit: L/h.
 * @source definition
 * @example
 * inLitresPerMinute(zoneFlow({ emitterFlow: litresPerHour(2), emitters: 120 })) // => 4
 */
export function zoneFlow(input: Emitters): Flow {
  requireObject(input, 'input')
  const { emitterFlow, emitters } = input
  return answerOf(
    numberIn(emitterFlow, EMITTER_FLOW, 'emitterFlow') * numberIn(emitters, EMITTERS, 'emitters'),
    'emitterFlow',
  ) as Flow
}

/** Emitters and the surface on which their water falls. */
export interface ApplicationRateInput extends Emitters {
  /** Surface that they water. Unit: m². Range: (0, ∞). */
  readonly area: Area
}

/**
 * Depth of water per time that emitters put on a surface.
 *
 * @equation `R = \frac{q \, n}{A}`
 * @returns Application rate. Unit: mm/h.
 * @source definition: 1 mm is 1 L/m²
 * @example
 * applicationRate({ emitterFlow: litresPerHour(2), emitters: 1, area: squareMetres(0.25) }) // => 8
 */
export function applicationRate(input: ApplicationRateInput): ApplicationRate {
  requireObject(input, 'input')
  return answerOf(zoneFlow(input) / numberIn(input.area, WETTED_AREA, 'area'), 'area') as ApplicationRate
}

/** A volume that is to be given in a time. */
export interface EmittersNeededInput extends EmitterFlow {
  /** Water for one container. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
  /** Longest time that all emitters may run. Unit: s. Range: (0, ∞). */
  readonly maxOn: Duration
}

/**
 * How many emitters a container needs so that a volume comes in a set time; one at least, so that no container is left without.
 *
 * @equation `n = \max\left(1, \left\lceil \frac{V}{q \, t} \right\rceil\right)`
 * @returns Whole number of emitters. Unit: 1.
 * @source definition
 * @example
 * emittersNeeded({ volume: millilitres(400), emitterFlow: litresPerHour(2), maxOn: minutes(5) }) // => 3
 */
export function emittersNeeded(input: EmittersNeededInput): number {
  requireObject(input, 'input')
  const { volume, emitterFlow, maxOn } = input
  const each = (numberIn(emitterFlow, EMITTER_FLOW, 'emitterFlow') * numberIn(maxOn, ON_TIME, 'maxOn')) / 3600
  return answerOf(Math.max(1, Math.ceil(numberIn(volume, WATER_GIVEN, 'volume') / each - 1e-9)), 'emitterFlow')
}
