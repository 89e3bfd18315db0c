import type { Temperature, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { WATER_TEMPERATURE } from './domains.js'

/**
 * Saturation vapour pressure of water from freezing to the critical point: the most exact of the forms here.
 *
 * T is the temperature in kelvins, τ = 1 − T/Tc, Tc = 647.096 K and pc = 22.064 MPa.
 *
 * @equation `\ln\frac{p_s}{p_c} = \frac{T_c}{T} \left( -7.85951783\,\tau + 1.84408259\,\tau^{1.5} - 11.7866497\,\tau^3 + 22.6807411\,\tau^{3.5} - 15.9618719\,\tau^4 + 1.80122502\,\tau^{7.5} \right)`
 * @param temperature - Temperature. Unit: °C. Range: [0, 373.946].
 * @returns Saturation vapour pressure of pure water. Unit: kPa.
 * @validity 0.01 to 373.946 °C.
 * @source wagner-2002, Eq. 2.5; also iapws-sr1-1992
 * @example
 * saturationVapourPressureWagnerPruss2002(celsius(100)) // => 101.42
 */
export function saturationVapourPressureWagnerPruss2002(temperature: Temperature): VapourPressure {
  const k = numberIn(temperature, WATER_TEMPERATURE) + 273.15
  // Rounding must not take the root of a negative number at the critical point.
  const tau = Math.max(0, 1 - k / 647.096)
  const root = Math.sqrt(tau)
  const sum =
    -7.85951783 * tau +
    1.84408259 * tau * root +
    -11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3 * root +
    -15.9618719 * tau ** 4 +
    1.80122502 * tau ** 7 * root
  return (22064 * Math.exp((647.096 / k) * sum)) as VapourPressure
}
