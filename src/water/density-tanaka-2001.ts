import type { Temperature, WaterDensity } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { LIQUID_WATER } from './domains.js'

/** Where the equation was fitted. */
export const validityTanaka2001: Validity = {
  of: 'waterDensityTanaka2001',
  note: 'air-free pure water at 101.325 kPa',
  inputs: { temperature: { min: 0, max: 40, unit: '°C' } },
}

/**
 * Density of air-free water after Tanaka and others (2001), the recommendation of the CIPM.
 *
 * In kg/m³.
 *
 * @equation `\rho = 999.97495\left[1 - \frac{(t - 3.983035)^2(t + 301.797)}{522528.9\,(t + 69.34881)}\right]`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 110].
 * @returns Density of water. Unit: g/cm³.
 * @validity Air-free pure water at 101.325 kPa, 0 to 40 °C.
 * @source tanaka-2001, Eq. 1
 * @example
 * inKilogramsPerCubicMetre(waterDensityTanaka2001(celsius(0))) // => 999.84283
 */
export function waterDensityTanaka2001(temperature: Temperature): WaterDensity {
  const t = numberIn(temperature, LIQUID_WATER)
  return (0.99997495 * (1 - ((t - 3.983035) ** 2 * (t + 301.797)) / (522528.9 * (t + 69.34881)))) as WaterDensity
}
