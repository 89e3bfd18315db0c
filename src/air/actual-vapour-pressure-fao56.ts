import type { Temperature, VapourPressure, VapourPressureDeficit } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import { notAbove } from '../quantity/not-above.js'
import { RELATIVE_HUMIDITY, VAPOUR } from './domains.js'
import { saturationAt } from './saturation-vapour-pressure-fao56.js'
import type { HumidityRange, MinTemperature } from './terms.js'

/** Highest and lowest temperature of a day. */
export interface DayTemperatures extends MinTemperature {
  /** Highest temperature of the day. Unit: °C. Range: [-60, 100]. */
  readonly maxTemperature: Temperature
}

/** Temperatures of a day with the humidity at its coldest and at its warmest moment. */
export interface DayHumidity extends HumidityRange, DayTemperatures {}

/**
 * Mean saturation vapour pressure of a day, as the mean of that at its highest and its lowest temperature.
 *
 * @equation `e_s = \frac{e^\circ(T_{max}) + e^\circ(T_{min})}{2}`
 * @returns Mean saturation vapour pressure. Unit: kPa.
 * @throws `DomainError` outside the ranges, `InputError` when the temperatures are swapped.
 * @source allen-1998, Eq. 12
 * @example
 * meanSaturationVapourPressureFao56({ maxTemperature: celsius(24.5), minTemperature: celsius(15) }) // => 2.39
 */
export function meanSaturationVapourPressureFao56(day: DayTemperatures): VapourPressure {
  const { maxTemperature: max, minTemperature: min } = optionsOf(day)
  const sum = saturationAt(max, 'maxTemperature') + saturationAt(min, 'minTemperature')
  notAbove('minTemperature', min, 'maxTemperature', max)
  return (sum / 2) as VapourPressure
}

/**
 * Actual vapour pressure of a day from its highest and lowest relative humidity.
 *
 * @equation `e_a = \frac{e^\circ(T_{min}) RH_{max} + e^\circ(T_{max}) RH_{min}}{2}`
 * @returns Actual vapour pressure. Unit: kPa.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @source allen-1998, Eq. 17
 * @example
 * actualVapourPressureFao56({
 *   maxTemperature: celsius(25), minTemperature: celsius(18), maxHumidity: percent(82), minHumidity: percent(54),
 * }) // => 1.70
 */
export function actualVapourPressureFao56(day: DayHumidity): VapourPressure {
  const max = numberIn(optionsOf(day).maxHumidity, RELATIVE_HUMIDITY, 'maxHumidity')
  const min = numberIn(day.minHumidity, RELATIVE_HUMIDITY, 'minHumidity')
  const sum =
    saturationAt(day.minTemperature, 'minTemperature') * max + saturationAt(day.maxTemperature, 'maxTemperature') * min
  notAbove('minTemperature', day.minTemperature, 'maxTemperature', day.maxTemperature)
  notAbove('minHumidity', min, 'maxHumidity', max)
  return (sum / 2) as VapourPressure
}

/**
 * By how much the vapour pressure of the air lies below saturation (VPD).
 *
 * @equation `D = e_s - e_a`
 * @returns Deficit of vapour pressure; negative where the actual pressure is the higher one. Unit: kPa.
 * @source allen-1998, chapter 3
 * @example
 * vapourPressureDeficit({ saturation: kilopascals(1.997), actual: kilopascals(1.409) }) // => 0.588
 */
export function vapourPressureDeficit(pressures: VapourPressures): VapourPressureDeficit {
  const { saturation, actual } = optionsOf(pressures)
  return (numberIn(saturation, VAPOUR, 'saturation') - numberIn(actual, VAPOUR, 'actual')) as VapourPressureDeficit
}

/** Vapour pressure of the air, and what it would be if it were saturated. */
export interface VapourPressures {
  /** Saturation vapour pressure. Unit: kPa. Range: [0, 102]. */
  readonly saturation: VapourPressure
  /** Actual vapour pressure. Unit: kPa. Range: [0, 102]. */
  readonly actual: VapourPressure
}
