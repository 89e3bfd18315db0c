import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Temperature as a place on the scale. Unit: °C. */
export type Temperature = number & Kind<'temperature in degrees Celsius, from celsius() or fahrenheit()', 'point'>

/** Difference of two temperatures. Unit: K. */
export type TemperatureChange = number &
  Kind<'temperature difference in kelvins, from kelvinsOfChange() or fahrenheitOfChange()'>

const TEMPERATURE: Domain = {
  quantity: 'temperature',
  unit: '°C',
  min: -273.15,
  max: 1000,
  ends: '[]',
  hint: 'nothing is colder than absolute zero, and no substrate is hotter than 1000 °C: check the unit',
}
const KELVIN: Domain = {
  quantity: 'temperature',
  unit: 'K',
  min: 0,
  max: 1273.15,
  ends: '[]',
  hint: 'nothing is colder than absolute zero, and no substrate is hotter than 1000 °C: check the unit',
}
const FAHRENHEIT: Domain = {
  quantity: 'temperature',
  unit: '°F',
  min: -459.67,
  max: 1832,
  ends: '[]',
  hint: 'nothing is colder than absolute zero, and no substrate is hotter than 1000 °C: check the unit',
}
const CHANGE: Domain = {
  quantity: 'temperature difference',
  unit: 'K',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give a finite difference',
}

/**
 * Temperature from degrees Celsius.
 *
 * ```math
 * t = v
 * ```
 *
 * @param value - Temperature. Unit: °C. Range: [-273.15, 1000].
 * @returns Temperature. Unit: °C.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 4
 * @example
 * ```ts
 * celsius(20) // => 20
 * ```
 */
export function celsius(value: number): Temperature {
  return numberIn(value, TEMPERATURE) as Temperature
}

/**
 * The number of °C in a temperature.
 *
 * ```math
 * v = t
 * ```
 *
 * @param quantity - Temperature. Unit: °C. Range: any.
 * @returns Plain number. Unit: °C.
 * @source BIPM SI Brochure, 9th edition (2019), Table 4
 * @example
 * ```ts
 * inCelsius(celsius(20)) // => 20
 * ```
 */
export function inCelsius(quantity: Temperature): number {
  return quantity
}

/**
 * Temperature from degrees Fahrenheit.
 *
 * ```math
 * t = \tfrac{5}{9}(v - 32)
 * ```
 *
 * @param value - Temperature. Unit: °F. Range: [-459.67, 1832].
 * @returns Temperature. Unit: °C.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * fahrenheit(68) // => 20
 * ```
 */
export function fahrenheit(value: number): Temperature {
  return (((numberIn(value, FAHRENHEIT) - 32) * 5) / 9) as Temperature
}

/**
 * The number of °F in a temperature.
 *
 * ```math
 * v = \tfrac{9}{5}t + 32
 * ```
 *
 * @param quantity - Temperature. Unit: °C. Range: any.
 * @returns Plain number. Unit: °F.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inFahrenheit(fahrenheit(68)) // => 68
 * ```
 */
export function inFahrenheit(quantity: Temperature): number {
  return (quantity * 9) / 5 + 32
}

/**
 * Temperature from kelvins.
 *
 * ```math
 * t = v - 273.15
 * ```
 *
 * @param value - Temperature. Unit: K. Range: [0, 1273.15].
 * @returns Temperature. Unit: °C.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 2.3.1
 * @example
 * ```ts
 * kelvin(300) // => 26.85
 * ```
 */
export function kelvin(value: number): Temperature {
  return (numberIn(value, KELVIN) - 273.15) as Temperature
}

/**
 * The number of K in a temperature.
 *
 * ```math
 * v = t + 273.15
 * ```
 *
 * @param quantity - Temperature. Unit: °C. Range: any.
 * @returns Plain number. Unit: K.
 * @source BIPM SI Brochure, 9th edition (2019), section 2.3.1
 * @example
 * ```ts
 * inKelvin(kelvin(300)) // => 300
 * ```
 */
export function inKelvin(quantity: Temperature): number {
  return quantity + 273.15
}

/**
 * Temperature difference from kelvins, which are degrees Celsius of difference.
 *
 * ```math
 * \Delta t = v
 * ```
 *
 * @param value - Difference. Unit: K. Range: (-∞, ∞).
 * @returns Temperature difference. Unit: K.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 2.3.1
 * @example
 * ```ts
 * kelvinsOfChange(5) // => 5
 * ```
 */
export function kelvinsOfChange(value: number): TemperatureChange {
  return numberIn(value, CHANGE) as TemperatureChange
}

/**
 * The number of K in a temperature difference.
 *
 * ```math
 * v = \Delta t
 * ```
 *
 * @param quantity - Temperature difference. Unit: K. Range: any.
 * @returns Plain number. Unit: K.
 * @source BIPM SI Brochure, 9th edition (2019), section 2.3.1
 * @example
 * ```ts
 * inKelvinsOfChange(kelvinsOfChange(5)) // => 5
 * ```
 */
export function inKelvinsOfChange(quantity: TemperatureChange): number {
  return quantity
}

/**
 * Temperature difference from degrees Fahrenheit of difference.
 *
 * ```math
 * \Delta t = \tfrac{5}{9} v
 * ```
 *
 * @param value - Difference. Unit: °F. Range: (-∞, ∞).
 * @returns Temperature difference. Unit: K.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * fahrenheitOfChange(9) // => 5
 * ```
 */
export function fahrenheitOfChange(value: number): TemperatureChange {
  return convertedIn(value, (value * 5) / 9, '°F', CHANGE) as TemperatureChange
}

/**
 * The number of °F in a temperature difference.
 *
 * ```math
 * v = \tfrac{9}{5} \Delta t
 * ```
 *
 * @param quantity - Temperature difference. Unit: K. Range: any.
 * @returns Plain number. Unit: °F.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inFahrenheitOfChange(fahrenheitOfChange(9)) // => 9
 * ```
 */
export function inFahrenheitOfChange(quantity: TemperatureChange): number {
  return (quantity * 9) / 5
}

/**
 * A temperature raised by a difference; a negative difference cools it.
 *
 * ```math
 * t_2 = t_1 + \Delta t
 * ```
 *
 * @param from - Temperature. Unit: °C. Range: any.
 * @param change - Temperature difference. Unit: K. Range: any.
 * @returns Temperature. Unit: °C.
 * @source definition of a scale with points and differences
 * @example
 * ```ts
 * shiftTemperature(celsius(18), kelvinsOfChange(4)) // => 22
 * ```
 */
export function shiftTemperature(from: Temperature, change: TemperatureChange): Temperature {
  return (from + change) as Temperature
}

/**
 * By how much one temperature is above another.
 *
 * ```math
 * \Delta t = t_1 - t_2
 * ```
 *
 * @param above - Temperature. Unit: °C. Range: any.
 * @param below - Temperature. Unit: °C. Range: any.
 * @returns Temperature difference. Unit: K.
 * @source definition of a scale with points and differences
 * @example
 * ```ts
 * temperatureDifference(celsius(22), celsius(18)) // => 4
 * ```
 */
export function temperatureDifference(above: Temperature, below: Temperature): TemperatureChange {
  return (above - below) as TemperatureChange
}
