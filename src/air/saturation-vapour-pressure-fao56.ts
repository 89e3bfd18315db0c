import type { Temperature, VapourPressure, VapourPressureSlope } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { AIR_TEMPERATURE, SOME_VAPOUR } from './domains.js'

/**
 * Saturation vapour pressure of the air at a temperature.
 *
 * @equation `e^\circ(T) = 0.6108 \exp\left( \frac{17.27\,T}{T + 237.3} \right)`
 * @param temperature - Temperature of the air. Unit: °C. Range: [-60, 100].
 * @returns Saturation vapour pressure. Unit: kPa.
 * @source allen-1998, Eq. 11
 * @example
 * saturationVapourPressureFao56(celsius(24.5)) // => 3.075
 */
export function saturationVapourPressureFao56(temperature: Temperature): VapourPressure {
  return saturation(numberIn(temperature, AIR_TEMPERATURE)) as VapourPressure
}

/**
 * Slope of the saturation vapour pressure curve at a temperature.
 *
 * @equation `\Delta = \frac{4098 \left[ 0.6108 \exp\left( \frac{17.27\,T}{T + 237.3} \right) \right]}{(T + 237.3)^2}`
 * @param temperature - Temperature of the air. Unit: °C. Range: [-60, 100].
 * @returns Slope of the curve. Unit: kPa/K.
 * @source allen-1998, Eq. 13
 * @example
 * slopeOfSaturationVapourPressureFao56(celsius(1)) // => 0.047
 */
export function slopeOfSaturationVapourPressureFao56(temperature: Temperature): VapourPressureSlope {
  const t = numberIn(temperature, AIR_TEMPERATURE)
  return ((4098 * saturation(t)) / (t + 237.3) ** 2) as VapourPressureSlope
}

/**
 * Dew point of air with a vapour pressure: the temperature at which it would be saturated, the true inverse of Eq. 11.
 *
 * @equation `T_{dew} = \frac{237.3 \ln(e_a / 0.6108)}{17.27 - \ln(e_a / 0.6108)}`
 * @param vapourPressure - Pressure of water vapour. Unit: kPa. Range: (0, 102].
 * @returns Dew point. Unit: °C.
 * @source allen-1998, Eq. 14 solved for the temperature
 * @example
 * dewPointFao56(kilopascals(1.705)) // => 15.0
 */
export function dewPointFao56(vapourPressure: VapourPressure): Temperature {
  const logarithm = Math.log(numberIn(vapourPressure, SOME_VAPOUR) / 0.6108)
  return ((237.3 * logarithm) / (17.27 - logarithm)) as Temperature
}

/** Saturation vapour pressure at a temperature, which a refusal calls as its caller does. */
export function saturationAt(temperature: Temperature, argument: string): VapourPressure {
  return saturation(numberIn(temperature, AIR_TEMPERATURE, argument)) as VapourPressure
}

function saturation(t: number): number {
  return 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
}
