import type { Temperature, TemperatureChange } from './generated/kinds.js'
import { numberOf } from './guard.js'
/**
 * A temperature moved by a difference: up by a positive one, down by a negative one.
 *
 * @equation `t_2 = t_1 + \Delta t`
 * @param from - Temperature. Unit: °C. Range: any.
 * @param change - Temperature difference. Unit: K. Range: any.
 * @returns Temperature. Unit: °C.
 * @source definition of a scale with points and differences
 * @example
 * shiftTemperature(celsius(18), kelvinsOfChange(4)) // => 22
 */
export function shiftTemperature(from: Temperature, change: TemperatureChange): Temperature {
  return (numberOf(from, 'from') + numberOf(change, 'change')) as Temperature
}

/**
 * By how much one temperature is above another.
 *
 * @equation `\Delta t = t_1 - t_2`
 * @param above - Temperature. Unit: °C. Range: any.
 * @param below - Temperature. Unit: °C. Range: any.
 * @returns Temperature difference. Unit: K.
 * @source definition of a scale with points and differences
 * @example
 * temperatureDifference(celsius(22), celsius(18)) // => 4
 */
export function temperatureDifference(above: Temperature, below: Temperature): TemperatureChange {
  return (numberOf(above, 'above') - numberOf(below, 'below')) as TemperatureChange
}
