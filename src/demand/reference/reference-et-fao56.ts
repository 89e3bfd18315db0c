import { AIR_TEMPERATURE, VAPOUR_PRESSURE_DEFICIT } from '../../air/domains.js'
import type { ReferenceET, Temperature, VapourPressureDeficit } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import { NET_RADIATION, PSYCHROMETRIC, SOIL_HEAT, VAPOUR_SLOPE, WIND_AT_2_M } from '../domains.js'
import type { AerodynamicTerms, AvailableEnergy } from '../terms.js'

/** The terms of the FAO Penman-Monteith equation. */
export interface PenmanMonteithTerms extends AvailableEnergy, AerodynamicTerms {
  /** Mean air temperature at 2 m. Unit: °C. Range: [-60, 100]. */
  readonly meanTemperature: Temperature
  /** Deficit of vapour pressure. Unit: kPa. Range: [-10, 102]. */
  readonly deficit: VapourPressureDeficit
}

/**
 * Reference evapotranspiration of grass by the FAO Penman-Monteith equation, from its terms.
 *
 * @equation `ET_o = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{900}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + 0.34\,u_2)}`
 * @param terms - Radiation, temperature, wind, dryness and the two constants of the day.
 * @returns Reference evapotranspiration; negative values are dew. Unit: mm/d.
 * @validity A large field of green, well-watered grass of 12 cm; not a greenhouse, where wind and radiation differ.
 * @source allen-1998, Eq. 6
 * @example
 * referenceETFao56({
 *   netRadiation: megajoulesPerSquareMetreDay(13.28), meanTemperature: celsius(16.9), windSpeed: metresPerSecond(2.078),
 *   deficit: kilopascals(0.589), slope: kilopascalsPerKelvin(0.122), psychrometricConstant: kilopascalsPerKelvin(0.0666),
 * }) // => 3.9
 */
export function referenceETFao56(terms: PenmanMonteithTerms): ReferenceET {
  const slope = numberIn(optionsOf(terms).slope, VAPOUR_SLOPE, 'slope')
  const gamma = numberIn(terms.psychrometricConstant, PSYCHROMETRIC, 'psychrometricConstant')
  const wind = numberIn(terms.windSpeed, WIND_AT_2_M, 'windSpeed')
  const energy =
    numberIn(terms.netRadiation, NET_RADIATION, 'netRadiation') -
    numberIn(optionOr(terms.soilHeat, 0), SOIL_HEAT, 'soilHeat')
  const dryness =
    ((gamma * 900) / (numberIn(terms.meanTemperature, AIR_TEMPERATURE, 'meanTemperature') + 273)) *
    wind *
    numberIn(terms.deficit, VAPOUR_PRESSURE_DEFICIT, 'deficit')
  return ((0.408 * slope * energy + dryness) / (slope + gamma * (1 + 0.34 * wind))) as ReferenceET
}
