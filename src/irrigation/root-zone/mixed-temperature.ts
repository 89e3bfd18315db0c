import type { Domain } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import type { Temperature } from '../../quantity/generated/temperature.js'
import type { Volume } from '../../quantity/generated/volume.js'
import { numberIn } from '../../quantity/guard.js'
import { GIVEN } from '../domains.js'

const WATER: Domain = {
  quantity: 'temperature of water',
  unit: '°C',
  min: 0,
  max: 100,
  ends: '[]',
  hint: 'give the temperature of liquid water',
}

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
 * ```math
 * T = \frac{V_1 T_1 + V_2 T_2}{V_1 + V_2}
 * ```
 *
 * @param input - Volumes and temperatures.
 * @returns Temperature of the mixture. Unit: °C.
 * @throws `DomainError` outside the ranges, `InputError` when there is no water.
 * @source definition: heat balance of equal heat capacities
 * @example
 * ```ts
 * mixedTemperature({
 *   firstVolume: litres(6),
 *   firstTemperature: celsius(27.5),
 *   secondVolume: litres(0.5),
 *   secondTemperature: celsius(16),
 * }) // => 26.6154
 * ```
 */
export function mixedTemperature(input: MixedTemperatureInput): Temperature {
  const first = numberIn(input.firstVolume, GIVEN, 'firstVolume')
  const second = numberIn(input.secondVolume, GIVEN, 'secondVolume')
  const heat =
    first * numberIn(input.firstTemperature, WATER, 'firstTemperature') +
    second * numberIn(input.secondTemperature, WATER, 'secondTemperature')
  if (first + second === 0) throw new InputError('firstVolume', 'there is no water', 'give at least one volume')
  return (heat / (first + second)) as Temperature
}
