import type { Temperature, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import type { Validity } from '../quantity/validity.js'
import { AIR_TEMPERATURE } from './domains.js'

/** Where the relation of Buck (1981) was fitted. */
export const validityBuck1981: Validity = {
  of: 'saturationVapourPressureBuck1981',
  note: 'over liquid water, also below freezing',
  inputs: { temperature: { min: -20, max: 50, unit: '°C' } },
}

/**
 * Saturation vapour pressure over liquid water after Buck (1981), curve ew1.
 *
 * @equation `e_s = 0.61121 \exp\left( \frac{17.502\,T}{T + 240.97} \right)`
 * @param temperature - Temperature. Unit: °C. Range: [-60, 100].
 * @returns Saturation vapour pressure of pure vapour, without the enhancement of moist air. Unit: kPa.
 * @validity -20 to 50 °C; 0.1 % below the formulation of IAPWS at 20 °C.
 * @source buck-1981, curve ew1
 * @example
 * saturationVapourPressureBuck1981(celsius(20)) // => 2.337
 */
export function saturationVapourPressureBuck1981(temperature: Temperature): VapourPressure {
  const t = numberIn(temperature, AIR_TEMPERATURE)
  return (0.61121 * Math.exp((17.502 * t) / (t + 240.97))) as VapourPressure
}
