import type { SurfaceTension, Temperature } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { TEMPERATURE_SURFACE_TENSION } from './domains.js'

const CRITICAL_TEMPERATURE = 647.096

/**
 * Surface tension of water against its vapour after IAPWS R1-76.
 *
 * Pure water. Wetting agents and what roots give off lower it, and capillary rise with it.
 *
 * @equation `\sigma = 0.2358\,y^{1.256}(1 - 0.625\,y), \quad y = 1 - \frac{T}{647.096\,\mathrm K}`
 * @param temperature - Water temperature. Unit: °C. Range: [-20, 373.946].
 * @returns Surface tension. Unit: N/m.
 * @validity Pure water, 0.01 to 373.946 °C.
 * @source iapws-r1-2014, Eq. 1
 * @example
 * inMillinewtonsPerMetre(waterSurfaceTensionIapws(celsius(10))) // => 74.221044
 */
export function waterSurfaceTensionIapws(temperature: Temperature): SurfaceTension {
  const y = Math.max(0, 1 - (numberIn(temperature, TEMPERATURE_SURFACE_TENSION) + 273.15) / CRITICAL_TEMPERATURE)
  return (0.2358 * y ** 1.256 * (1 - 0.625 * y)) as SurfaceTension
}
