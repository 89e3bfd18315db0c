import { InputError } from '../quantity/errors.js'
import type { AbsoluteHumidity, HumidityRatio, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import { AIR_PRESSURE, AIR_TEMPERATURE, HUMIDITY_RATIO, VAPOUR } from './domains.js'
import type { AirVapour } from './humidity-of-air.js'
import type { AirPressure } from './terms.js'

/** Molar mass of water over that of dry air, as ASHRAE (2009) has it. */
const MASS_RATIO = 0.621945
/** Gas constant of water vapour, J/(kg K): 8.314462618 J/(mol K) over 0.018015268 kg/mol. */
const VAPOUR_GAS_CONSTANT = 461.5231157260608

/** Pressure of water vapour in air of a pressure. */
export interface VapourInAir extends AirPressure {
  /** Pressure of water vapour, below that of the air. Unit: kPa. Range: [0, 102]. */
  readonly vapourPressure: VapourPressure
}

/** Humidity ratio of air of a pressure. */
export interface RatioInAir extends AirPressure {
  /** Mass of vapour per mass of dry air. Unit: kg/kg. Range: [0, 10]. */
  readonly ratio: HumidityRatio
}

/**
 * Mass of water vapour per mass of dry air.
 *
 * @equation `w = 0.621945 \frac{e_a}{P - e_a}`
 * @returns Humidity ratio. Unit: kg/kg.
 * @throws `DomainError` outside the ranges, `InputError` when the vapour alone has the pressure of the air.
 * @source ashrae-2009, chapter 1, Eq. 22 (ideal gases)
 * @example
 * inGramsPerKilogram(humidityRatio({ vapourPressure: kilopascals(1.7), pressure: kilopascals(101.325) })) // => 10.61
 */
export function humidityRatio(air: VapourInAir): HumidityRatio {
  const { vapourPressure, pressure } = optionsOf(air)
  const vapour = numberIn(vapourPressure, VAPOUR, 'vapourPressure')
  const dry = numberIn(pressure, AIR_PRESSURE, 'pressure') - vapour
  if (dry <= 0)
    throw new InputError(
      'vapourPressure',
      `${vapour} kPa leaves no air of the ${pressure} kPa`,
      'check the two pressures',
    )
  return ((MASS_RATIO * vapour) / dry) as HumidityRatio
}

/**
 * Vapour pressure of air from the mass of vapour per mass of dry air: the true inverse of `humidityRatio`.
 *
 * @equation `e_a = \frac{w\,P}{0.621945 + w}`
 * @returns Vapour pressure. Unit: kPa.
 * @source ashrae-2009, chapter 1, Eq. 22 solved for the vapour pressure
 * @example
 * vapourPressureOfRatio({ ratio: gramsPerKilogram(10.61), pressure: kilopascals(101.325) }) // => 1.70
 */
export function vapourPressureOfRatio(air: RatioInAir): VapourPressure {
  const { ratio, pressure } = optionsOf(air)
  const w = numberIn(ratio, HUMIDITY_RATIO, 'ratio')
  return ((w * numberIn(pressure, AIR_PRESSURE, 'pressure')) / (MASS_RATIO + w)) as VapourPressure
}

/**
 * Mass of water vapour in a cubic metre of air.
 *
 * @equation `\rho_v = \frac{e_a}{R_v T}, \quad R_v = 461.52\ \mathrm{J\,kg^{-1}\,K^{-1}}`
 * @returns Absolute humidity. Unit: g/m³.
 * @source definition: ideal gas with the gas constant of bipm-2019 and the molar mass 18.015268 g/mol of iapws-r6-1995
 * @example
 * absoluteHumidity({ temperature: celsius(20), vapourPressure: kilopascals(2.338) }) // => 17.28
 */
export function absoluteHumidity(air: AirVapour): AbsoluteHumidity {
  const { temperature, vapourPressure } = optionsOf(air)
  const kelvin = numberIn(temperature, AIR_TEMPERATURE, 'temperature') + 273.15
  return ((numberIn(vapourPressure, VAPOUR, 'vapourPressure') * 1e6) /
    (VAPOUR_GAS_CONSTANT * kelvin)) as AbsoluteHumidity
}
