import type { VapourPressureDeficit } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { VAPOUR_PRESSURE_DEFICIT } from './domains.js'

/** How a deficit of vapour pressure suits a crop under cover. */
export type VapourPressureDeficitBand = 'too-low' | 'acceptable' | 'excessive'

/**
 * Whether a deficit of vapour pressure suits a crop under cover: below 0.2 kPa leaves stay wet and diseases spread, above 1.4 kPa
 * plants close their stomata. Between them the best value depends on crop and stage.
 *
 * @procedure Compares with 0.2 and 1.4 kPa; both ends count as acceptable.
 * @param deficit - Deficit of vapour pressure; negative on a leaf with dew. Unit: kPa. Range: [-10, 102].
 * @returns Name of the band.
 * @validity Cucumber in plastic tunnels.
 * @source konopacki-2018, abstract
 * @example
 * vapourPressureDeficitBand(kilopascals(0.15)) // => 'too-low'
 */
export function vapourPressureDeficitBand(deficit: VapourPressureDeficit): VapourPressureDeficitBand {
  const d = numberIn(deficit, VAPOUR_PRESSURE_DEFICIT)
  if (d < 0.2) return 'too-low'
  return d > 1.4 ? 'excessive' : 'acceptable'
}
