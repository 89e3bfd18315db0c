import type { Elevation, Pressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { STATION_PRESSURE } from './domains.js'

/**
 * Elevation at which the mean atmosphere has a pressure: the true inverse of Eq. 7. A forecast pressure is usually reduced to sea
 * level and would give 0 m everywhere.
 *
 * @equation `z = \frac{293}{0.0065} \left( 1 - \left( \frac{P}{101.3} \right)^{1/5.26} \right)`
 * @param pressure - Pressure of the air at the station. Unit: kPa. Range: [33, 107].
 * @returns Elevation. Unit: m.
 * @source allen-1998, Eq. 7 solved for the elevation
 * @example
 * elevationOfPressureFao56(kilopascals(81.7559)) // => 1800.0
 */
export function elevationOfPressureFao56(pressure: Pressure): Elevation {
  return ((293 / 0.0065) * (1 - (numberIn(pressure, STATION_PRESSURE) / 101.3) ** (1 / 5.26))) as Elevation
}
