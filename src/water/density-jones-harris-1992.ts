import { cubicAt } from '../numerics/cubic.js'
import type { Temperature, WaterDensity } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

/** Where the equation was fitted. */
export const validityJonesHarris1992: Validity = {
  of: 'waterDensityJonesHarris1992',
  note: 'air-free pure water at 101.325 kPa',
  inputs: { temperature: { min: 5, max: 40, unit: '°C' } },
}

/**
 * Density of air-free water on the temperature scale of 1990 after Jones and Harris (1992).
 *
 * In kg/m³.
 *
 * @equation `\rho = 999.85308 + 6.32693\times10^{-2}t - 8.523829\times10^{-3}t^2 + 6.943248\times10^{-5}t^3 - 3.821216\times10^{-7}t^4`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Density of water. Unit: g/cm³.
 * @validity Air-free pure water at 101.325 kPa, 5 to 40 °C.
 * @source jones-1992
 * @example
 * inKilogramsPerCubicMetre(waterDensityJonesHarris1992(celsius(5))) // => 999.964771
 */
export function waterDensityJonesHarris1992(temperature: Temperature): WaterDensity {
  const t = numberIn(temperature, LIQUID_WATER)
  const cubed = cubicAt([6.32693e-2, -8.523829e-3, 6.943248e-5, -3.821216e-7], t)
  return ((999.85308 + cubed * t) / 1000) as WaterDensity
}
