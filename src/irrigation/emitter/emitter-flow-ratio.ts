import { answerOf } from '../../quantity/answer.js'
import type { Pressure } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { DISCHARGE_EXPONENT, EMITTER_PRESSURE } from '../domains.js'
import type { DischargeExponent } from '../terms.js'

/** Two pressures and how an emitter answers to pressure. */
export interface EmitterFlowRatioInput extends DischargeExponent {
  /** Pressure to compare with. Unit: kPa. Range: (0, ∞). */
  readonly from: Pressure
  /** Another pressure. Unit: kPa. Range: (0, ∞). */
  readonly to: Pressure
}

/**
 * How many times the flow of an emitter changes when its pressure does. The unit of pressure drops out.
 *
 * @equation `\frac{q_2}{q_1} = \left(\frac{H_2}{H_1}\right)^x`
 * @returns Flow at the second pressure over flow at the first. Unit: 1.
 * @source savva-2002, Eq. 13
 * @example
 * emitterFlowRatio({ from: metresOfWater(10), to: metresOfWater(12), exponent: 0.5 }) // => 1.0954
 */
export function emitterFlowRatio(input: EmitterFlowRatioInput): number {
  requireObject(input, 'input')
  const { from, to, exponent } = input
  return answerOf(
    (numberIn(to, EMITTER_PRESSURE, 'to') / numberIn(from, EMITTER_PRESSURE, 'from')) **
      numberIn(exponent, DISCHARGE_EXPONENT, 'exponent'),
    'from',
  )
}
