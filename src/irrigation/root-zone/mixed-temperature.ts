import { answerOf } from '../../quantity/answer.js'
import { WATER_GIVEN } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Temperature, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { WATER_TEMPERATURE } from '../domains.js'

/** Two waters that are mixed. */
export interface MixedTemperatureInput {
  /** Volume of the first, such as the water in the root zone. Unit: L. Range: [0, ∞). */
  readonly firstVolume: Volume
  /** Its temperature. Unit: °C. Range: [0, 100]. */
  readonly firstTemperature: Temperature
  /** Volume of the second, such as a shot. Unit: L. Range: [0, ∞). */
  readonly secondVolume: Volume
  /** Its temperature. Unit: °C. Range: [0, 100]. */
  readonly secondTemperature: Temperature
}

/**
 * Temperature of two waters together. Medium, roots and container hold heat too, so that a root zone changes less than this says.
 *
 * @equation `T = \frac{V_1 T_1 + V_2 T_2}{V_1 + V_2}`
 * @returns Temperature of the mixture. Unit: °C.
 * @throws `DomainError` outside the ranges, `InputError` when there is no water.
 * @source definition: heat balance of equal heat capacities
 * @example
 * mixedTemperature({
 *   firstVolume: litres(6),
 *   firstTemperature: celsius(27.5),
 *   secondVolume: litres(0.5),
 *   secondTemperature: celsius(16),
 * }) // => 26.6154
 */
export function mixedTemperature(input: MixedTemperatureInput): Temperature {
  requireObject(input, 'input')
  const first = numberIn(input.firstVolume, WATER_GIVEN, 'firstVolume')
  const second = numberIn(input.secondVolume, WATER_GIVEN, 'secondVolume')
  const heat =
    first * numberIn(input.firstTemperature, WATER_TEMPERATURE, 'firstTemperature') +
    second * numberIn(input.secondTemperature, WATER_TEMPERATURE, 'secondTemperature')
  if (first + second === 0) throw new InputError('firstVolume', 'there is no water', 'give at least one volume')
  return answerOf(heat / (first + second), 'firstVolume') as Temperature
}
