import type {
  RelativeHumidity,
  Temperature,
  VapourPressure,
  VapourPressureDeficit,
} from '../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import { RELATIVE_HUMIDITY, VAPOUR } from './domains.js'
import { saturationAt } from './saturation-vapour-pressure-fao56.js'
import type { AirTemperature } from './terms.js'

/** Temperature of the air and its relative humidity at the same moment. */
export interface AirHumidity extends AirTemperature {
  /** Relative humidity. Unit: 1. Range: [0, 1]. */
  readonly relativeHumidity: RelativeHumidity
}

/** Temperature of the air and the pressure of its water vapour. */
export interface AirVapour extends AirTemperature {
  /** Pressure of water vapour. Unit: kPa. Range: [0, 102]. */
  readonly vapourPressure: VapourPressure
}

/** Temperature and humidity of the air, and the temperature of a leaf in it. */
export interface LeafInAir extends AirHumidity {
  /** Temperature of the leaf. Unit: °C. Range: [-60, 100]. */
  readonly leafTemperature: Temperature
}

/**
 * Vapour pressure of air from temperature and relative humidity of the same moment or hour.
 *
 * @equation `e_a = e^\circ(T)\,RH`
 * @returns Vapour pressure. Unit: kPa.
 * @source allen-1998, Eq. 54
 * @example
 * vapourPressureOfHumidity({ temperature: celsius(38), relativeHumidity: percent(52) }) // => 3.445
 */
export function vapourPressureOfHumidity(air: AirHumidity): VapourPressure {
  const { temperature, relativeHumidity } = optionsOf(air)
  return (saturationAt(temperature, 'temperature') *
    numberIn(relativeHumidity, RELATIVE_HUMIDITY, 'relativeHumidity')) as VapourPressure
}

/**
 * Relative humidity of air from its temperature and vapour pressure. It is above 1 for air that cannot exist without fog, and is then
 * returned as it is.
 *
 * @equation `RH = \frac{e_a}{e^\circ(T)}`
 * @returns Relative humidity. Unit: 1.
 * @source allen-1998, Eq. 10
 * @example
 * relativeHumidityOfAir({ temperature: celsius(38), vapourPressure: kilopascals(3.445) }) // => 0.520
 */
export function relativeHumidityOfAir(air: AirVapour): RelativeHumidity {
  const { temperature, vapourPressure } = optionsOf(air)
  return (numberIn(vapourPressure, VAPOUR, 'vapourPressure') /
    saturationAt(temperature, 'temperature')) as RelativeHumidity
}

/**
 * By how much the vapour pressure of air lies below saturation at its own temperature (VPD of the air).
 *
 * @equation `D = e^\circ(T)\,(1 - RH)`
 * @returns Deficit of vapour pressure. Unit: kPa.
 * @source allen-1998, Eq. 11 and 54
 * @example
 * vapourPressureDeficitOfAir({ temperature: celsius(25), relativeHumidity: percent(70) }) // => 0.950
 */
export function vapourPressureDeficitOfAir(air: AirHumidity): VapourPressureDeficit {
  const { temperature, relativeHumidity } = optionsOf(air)
  return (saturationAt(temperature, 'temperature') *
    (1 - numberIn(relativeHumidity, RELATIVE_HUMIDITY, 'relativeHumidity'))) as VapourPressureDeficit
}

/**
 * By how much the vapour pressure of the air lies below that inside a leaf (VPD of the leaf), which is taken as saturated. A negative
 * value says that water condenses on the leaf.
 *
 * @equation `D_{leaf} = e^\circ(T_{leaf}) - e^\circ(T)\,RH`
 * @returns Deficit from leaf to air; negative where dew forms on the leaf. Unit: kPa.
 * @source allen-1998, Eq. 11, at the temperature of the leaf
 * @example
 * vapourPressureDeficitOfLeaf({ temperature: celsius(26), relativeHumidity: percent(70), leafTemperature: celsius(24) }) // => 0.631
 */
export function vapourPressureDeficitOfLeaf(air: LeafInAir): VapourPressureDeficit {
  return (saturationAt(optionsOf(air).leafTemperature, 'leafTemperature') -
    vapourPressureOfHumidity(air)) as VapourPressureDeficit
}
