import type { Temperature, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { TEMPERATURE_OVER_ICE, TEMPERATURE_OVER_WATER } from './domains.js'

/**
 * Saturation vapour pressure over liquid water after Sonntag (1990), on the temperature scale of 1990.
 *
 * T is the temperature in kelvins.
 *
 * @equation `\ln\frac{e_s}{\mathrm{hPa}} = -\frac{6096.9385}{T} + 16.635794 - 2.711193\times10^{-2}\,T + 1.673952\times10^{-5}\,T^2 + 2.433502 \ln T`
 * @param temperature - Temperature. Unit: °C. Range: [-100, 100].
 * @returns Saturation vapour pressure of pure vapour. Unit: kPa.
 * @validity -100 to 100 °C; below freezing for supercooled water.
 * @source sonntag-1990; coefficients checked in code that quotes sonntag-1994
 * @example
 * saturationVapourPressureSonntag1990(celsius(20)) // => 2.339
 */
export function saturationVapourPressureSonntag1990(temperature: Temperature): VapourPressure {
  const k = numberIn(temperature, TEMPERATURE_OVER_WATER) + 273.15
  const logarithm = -6096.9385 / k + 16.635794 - 2.711193e-2 * k + 1.673952e-5 * k * k + 2.433502 * Math.log(k)
  return (0.1 * Math.exp(logarithm)) as VapourPressure
}

/**
 * Saturation vapour pressure over ice after Sonntag (1990): what hoar frost comes from.
 *
 * T is the temperature in kelvins.
 *
 * @equation `\ln\frac{e_i}{\mathrm{hPa}} = -\frac{6024.5282}{T} + 24.7219 + 1.0613868\times10^{-2}\,T - 1.3198825\times10^{-5}\,T^2 - 0.49382577 \ln T`
 * @param temperature - Temperature. Unit: °C. Range: [-100, 0.01].
 * @returns Saturation vapour pressure over ice. Unit: kPa.
 * @validity -100 to 0.01 °C.
 * @source sonntag-1990
 * @example
 * saturationVapourPressureOverIceSonntag1990(celsius(-10)) // => 0.2599
 */
export function saturationVapourPressureOverIceSonntag1990(temperature: Temperature): VapourPressure {
  const k = numberIn(temperature, TEMPERATURE_OVER_ICE) + 273.15
  const logarithm = -6024.5282 / k + 24.7219 + 1.0613868e-2 * k - 1.3198825e-5 * k * k - 0.49382577 * Math.log(k)
  return (0.1 * Math.exp(logarithm)) as VapourPressure
}
