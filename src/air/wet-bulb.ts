import { rootBetween } from '../numerics/root.js'
import { InputError } from '../quantity/errors.js'
import type { Temperature } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { asName, hasRow } from '../quantity/one-of.js'
import { AIR_PRESSURE } from './domains.js'
import { type AirHumidity, vapourPressureOfHumidity } from './humidity-of-air.js'
import {
  saturationVapourPressureFao56,
  slopeOfSaturationVapourPressureFao56,
} from './saturation-vapour-pressure-fao56.js'
import type { AirPressure } from './terms.js'
import { PSYCHROMETER_COEFFICIENT, type PsychrometerVentilation } from './vapour-pressure-from-fao56.js'

/** Air whose wet-bulb temperature is asked for. */
export interface WetBulbInput extends AirPressure, AirHumidity {
  /** How the wet bulb would be ventilated; by a fan unless said otherwise. */
  readonly ventilation?: PsychrometerVentilation
}

/**
 * Temperature that the wet bulb of a psychrometer takes in air: what a wet pad cools the air to at best. The
 * thermodynamic wet bulb of engineers differs from it by about 0.1 K.
 *
 * The bulb is taken to carry liquid water, also below freezing.
 *
 * @equation `T_{wet} : \; e^\circ(T_{wet}) - a_{psy} P\,(T - T_{wet}) = e^\circ(T)\,RH`
 * @returns Wet-bulb temperature. Unit: °C.
 * @throws `DomainError` outside the ranges, `InputError` when the ventilation is unknown.
 * @source allen-1998, Eq. 15 and 16 solved for the wet bulb
 * @example
 * wetBulbTemperature({ temperature: celsius(30), relativeHumidity: percent(40), pressure: kilopascals(101.3) }) // => 20.14
 */
export function wetBulbTemperature(air: WetBulbInput): Temperature {
  requireObject(air, 'air')
  const { temperature, ventilation = 'aspirated' } = air
  if (!hasRow(PSYCHROMETER_COEFFICIENT, ventilation))
    throw new InputError('ventilation', `"${asName(ventilation)}" is unknown`, 'say aspirated, natural or indoors')
  const gamma = PSYCHROMETER_COEFFICIENT[ventilation] * numberIn(air.pressure, AIR_PRESSURE, 'pressure')
  const vapour = vapourPressureOfHumidity(air)
  // Dry air at the coldest end would cool the bulb below the range of the curve; no air of the range cools it by more than 60 K.
  const coldest = Math.max(-100, temperature - 100)
  return rootBetween(
    (t) => [saturation(t) - gamma * (temperature - t) - vapour, slope(t) + gamma],
    coldest,
    temperature,
  ) as Temperature
}

function saturation(t: number): number {
  return t < -60 ? 0.6108 * Math.exp((17.27 * t) / (t + 237.3)) : saturationVapourPressureFao56(t as Temperature)
}

function slope(t: number): number {
  return t < -60 ? (4098 * saturation(t)) / (t + 237.3) ** 2 : slopeOfSaturationVapourPressureFao56(t as Temperature)
}
