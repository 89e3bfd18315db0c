import type { Temperature, WaterDensity } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { TEMPERATURE_KELL } from './domains.js'

/** Where the equation was fitted. */
export const validityKell1975: Validity = {
  of: 'waterDensityKell1975',
  note: 'pure water at 101.325 kPa',
  inputs: { temperature: { min: 0, max: 150, unit: '°C' } },
}

/**
 * Density of water at atmospheric pressure after Kell (1975).
 *
 * In kg/m³. On the temperature scale of 1968; within 0.004 kg/m³ of IAPWS-95. A copy with 0.016897850 in the denominator is wrong by
 * 0.3 kg/m³ at 25 °C.
 *
 * @equation `\rho = \frac{999.83952 + 16.945176\,t - 7.9870401\times10^{-3}t^2 - 4.6170461\times10^{-5}t^3 + 1.0556302\times10^{-7}t^4 - 2.8054253\times10^{-10}t^5}{1 + 0.01687985\,t}`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 150].
 * @returns Density of water. Unit: g/cm³.
 * @validity Pure water at 101.325 kPa, 0 to 150 °C.
 * @source kell-1975
 * @example
 * inKilogramsPerCubicMetre(waterDensityKell1975(celsius(0))) // => 999.83952
 */
export function waterDensityKell1975(temperature: Temperature): WaterDensity {
  const t = numberIn(temperature, TEMPERATURE_KELL)
  const above =
    999.83952 + (16.945176 + (-7.9870401e-3 + (-4.6170461e-5 + (1.0556302e-7 - 2.8054253e-10 * t) * t) * t) * t) * t
  return (above / (1 + 0.01687985 * t) / 1000) as WaterDensity
}
