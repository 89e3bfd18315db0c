import type { Pressure, VapourPressureSlope } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { AIR_PRESSURE } from './domains.js'

/**
 * Psychrometric constant at an atmospheric pressure.
 *
 * @equation `\gamma = \frac{c_p P}{\epsilon \lambda} = 0.665 \times 10^{-3} P`
 * @param pressure - Pressure of the air. Unit: kPa. Range: [30, 120].
 * @returns Psychrometric constant. Unit: kPa/K.
 * @source allen-1998, Eq. 8
 * @example
 * psychrometricConstantFao56(kilopascals(81.8)) // => 0.054
 */
export function psychrometricConstantFao56(pressure: Pressure): VapourPressureSlope {
  return (0.665e-3 * numberIn(pressure, AIR_PRESSURE)) as VapourPressureSlope
}
