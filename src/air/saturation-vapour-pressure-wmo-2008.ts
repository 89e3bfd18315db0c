import type { Temperature, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { TEMPERATURE_OVER_WATER_WMO } from './domains.js'

/**
 * Saturation vapour pressure over liquid water as the guide of the World Meteorological Organization writes it.
 *
 * @equation `e_w = 0.6112 \exp\left( \frac{17.62\,T}{T + 243.12} \right)`
 * @param temperature - Temperature. Unit: °C. Range: [-60, 100].
 * @returns Saturation vapour pressure of pure vapour. Unit: kPa.
 * @validity -45 to 60 °C, within 0.3 %.
 * @source wmo-2008, Annex 4.B
 * @example
 * saturationVapourPressureWmo2008(celsius(20)) // => 2.333
 */
export function saturationVapourPressureWmo2008(temperature: Temperature): VapourPressure {
  const t = numberIn(temperature, TEMPERATURE_OVER_WATER_WMO)
  return (0.6112 * Math.exp((17.62 * t) / (t + 243.12))) as VapourPressure
}
