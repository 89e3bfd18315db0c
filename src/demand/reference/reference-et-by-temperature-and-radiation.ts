import type { DayTemperatures } from '../../air/actual-vapour-pressure-fao56.js'
import { AIR_PRESSURE, AIR_TEMPERATURE, OUTSIDE_RADIATION } from '../../air/domains.js'
import { psychrometricConstantFao56 } from '../../air/psychrometric-constant-fao56.js'
import { slopeOfSaturationVapourPressureFao56 } from '../../air/saturation-vapour-pressure-fao56.js'
import type { AirPressure, Extraterrestrial } from '../../air/terms.js'
import type { Pressure, ReferenceET, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import { notAbove } from '../../quantity/not-above.js'
import { NET_RADIATION, PRIESTLEY_TAYLOR, SOIL_HEAT } from '../domains.js'
import type { AvailableEnergy } from '../terms.js'

/** Temperatures of a day and the radiation above the atmosphere. */
export interface TemperatureMethodInput extends Extraterrestrial, DayTemperatures {}

/** Radiation and temperature of a day, for the method without wind and humidity. */
export interface RadiationMethodInput extends AvailableEnergy, AirPressure {
  /** Mean air temperature. Unit: °C. Range: [-60, 100]. */
  readonly temperature: Temperature
  /** Coefficient; 1.26 by default. Unit: 1. Range: [0, 3]. */
  readonly coefficient?: number
}

/**
 * Reference evapotranspiration of a day from its temperatures only.
 *
 * @equation `ET_o = 0.0023\,(T_{mean} + 17.8) \sqrt{T_{max} - T_{min}} \cdot 0.408\,R_a`
 * @returns Reference evapotranspiration. Unit: mm/d.
 * @throws `DomainError` outside the ranges, `InputError` when the temperatures are swapped.
 * @validity Means of five days or more; too low in wind above 3 m/s, too high in humid air. Under cover it means nothing.
 * @source hargreaves-1985, in the form of allen-1998, Eq. 52
 * @example
 * referenceETHargreaves1985({
 *   maxTemperature: celsius(34.8), minTemperature: celsius(25.6), extraterrestrial: megajoulesPerSquareMetreDay(38.06),
 * }) // => 5.20
 */
export function referenceETHargreaves1985(input: TemperatureMethodInput): ReferenceET {
  const { maxTemperature: max, minTemperature: min, extraterrestrial } = optionsOf(input)
  const high = numberIn(max, AIR_TEMPERATURE, 'maxTemperature')
  const low = numberIn(min, AIR_TEMPERATURE, 'minTemperature')
  const outside = numberIn(extraterrestrial, OUTSIDE_RADIATION, 'extraterrestrial')
  notAbove('minTemperature', low, 'maxTemperature', high)
  return (0.0023 * ((high + low) / 2 + 17.8) * Math.sqrt(high - low) * 0.408 * outside) as ReferenceET
}

/**
 * Evapotranspiration of a large wet surface from radiation and temperature, without wind and humidity.
 *
 * @equation `ET = \alpha \frac{\Delta}{\Delta + \gamma} \frac{R_n - G}{2.45}`
 * @returns Evapotranspiration; negative values are dew. Unit: mm/d.
 * @validity Humid surroundings without advection; arid sites need a higher coefficient.
 * @source priestley-1972
 * @example
 * referenceETPriestleyTaylor1972({
 *   netRadiation: megajoulesPerSquareMetreDay(13.28), temperature: celsius(16.9), pressure: kilopascals(100.1),
 * }) // => 4.42
 */
export function referenceETPriestleyTaylor1972(input: RadiationMethodInput): ReferenceET {
  const slope = slopeOfSaturationVapourPressureFao56(
    numberIn(optionsOf(input).temperature, AIR_TEMPERATURE, 'temperature') as Temperature,
  )
  const gamma = psychrometricConstantFao56(numberIn(input.pressure, AIR_PRESSURE, 'pressure') as Pressure)
  const energy =
    numberIn(input.netRadiation, NET_RADIATION, 'netRadiation') -
    numberIn(optionOr(input.soilHeat, 0), SOIL_HEAT, 'soilHeat')
  return ((numberIn(optionOr(input.coefficient, 1.26), PRIESTLEY_TAYLOR, 'coefficient') * slope * energy) /
    (slope + gamma) /
    2.45) as ReferenceET
}
