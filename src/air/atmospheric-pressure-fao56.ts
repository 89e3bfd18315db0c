import { SITE_ELEVATION } from '../quantity/domains.js'
import type { Elevation, Pressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'

/**
 * Mean pressure of the atmosphere at an elevation.
 *
 * @equation `P = 101.3 \left( \frac{293 - 0.0065\,z}{293} \right)^{5.26}`
 * @param elevation - Height of the site above sea level. Unit: m. Range: [-500, 9000].
 * @returns Atmospheric pressure. Unit: kPa.
 * @source allen-1998, Eq. 7
 * @example
 * atmosphericPressureFao56(metresAboveSeaLevel(1800)) // => 81.8
 */
export function atmosphericPressureFao56(elevation: Elevation): Pressure {
  return (101.3 * ((293 - 0.0065 * numberIn(elevation, SITE_ELEVATION)) / 293) ** 5.26) as Pressure
}
