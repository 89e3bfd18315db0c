import { InputError } from '../quantity/errors.js'
import type { AirDensity } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import { AIR_PRESSURE, AIR_TEMPERATURE, VAPOUR } from './domains.js'
import type { AirVapour } from './humidity-of-air.js'
import type { AirPressure } from './terms.js'

/** Gas constants of dry air and of water vapour, J/(kg K): 8.314462618 J/(mol K) over 28.966 and 18.015268 g/mol. */
const DRY = 287.0421396810053
const VAPOUR_CONSTANT = 461.5231157260608

/** Temperature, vapour pressure and pressure of air. */
export interface MoistAir extends AirPressure, AirVapour {}

/**
 * Density of moist air, as a mixture of ideal gases. Moist air is lighter than dry air.
 *
 * @equation `\rho = \frac{P - e_a}{R_d T} + \frac{e_a}{R_v T}`
 * @returns Density of the air with its vapour. Unit: kg/m³.
 * @throws `DomainError` outside the ranges, `InputError` when the vapour has more than the pressure of the air.
 * @source definition: ideal gases with the gas constant of bipm-2019, 28.966 g/mol (ashrae-2009) and 18.015268 g/mol
 * @example
 * densityOfMoistAir({ temperature: celsius(20), vapourPressure: kilopascals(1.17), pressure: kilopascals(101.325) }) // => 1.199
 */
export function densityOfMoistAir(air: MoistAir): AirDensity {
  const { temperature, vapourPressure, pressure } = optionsOf(air)
  const kelvin = numberIn(temperature, AIR_TEMPERATURE, 'temperature') + 273.15
  const vapour = numberIn(vapourPressure, VAPOUR, 'vapourPressure')
  const dry = numberIn(pressure, AIR_PRESSURE, 'pressure') - vapour
  if (dry < 0)
    throw new InputError(
      'vapourPressure',
      `${vapour} kPa is more than the pressure of the air, ${pressure} kPa`,
      'check the two pressures',
    )
  return (((dry / DRY + vapour / VAPOUR_CONSTANT) * 1000) / kelvin) as AirDensity
}
