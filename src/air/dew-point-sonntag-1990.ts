import { rootBetween } from '../numerics/root.js'
import type { Temperature, VapourPressure } from '../quantity/generated/kinds.js'
import { numberIn } from '../quantity/guard.js'
import { VAPOUR_OVER_ICE, VAPOUR_OVER_WATER } from './domains.js'
import {
  saturationVapourPressureOverIceSonntag1990,
  saturationVapourPressureSonntag1990,
} from './saturation-vapour-pressure-sonntag-1990.js'

/**
 * Dew point of air with a vapour pressure, on the curve of Sonntag (1990): its true inverse.
 *
 * @equation `T_{dew} : \; e_s(T_{dew}) = e_a`
 * @param vapourPressure - Pressure of water vapour. Unit: kPa. Range: [1e-5, 101].
 * @returns Dew point; below freezing that of supercooled water. Unit: °C.
 * @source sonntag-1990, solved for the temperature
 * @example
 * dewPointSonntag1990(kilopascals(2.33925)) // => 20.0
 */
export function dewPointSonntag1990(vapourPressure: VapourPressure): Temperature {
  return inverse(saturationVapourPressureSonntag1990, numberIn(vapourPressure, VAPOUR_OVER_WATER), 100)
}

/**
 * Frost point of air with a vapour pressure below that of melting ice, on the curve of Sonntag (1990): what a surface must be colder than
 * for hoar frost. It lies above the dew point of the same air.
 *
 * @equation `T_{frost} : \; e_i(T_{frost}) = e_a`
 * @param vapourPressure - Pressure of water vapour. Unit: kPa. Range: [1e-5, 0.6116].
 * @returns Frost point. Unit: °C.
 * @source sonntag-1990, solved for the temperature
 * @example
 * frostPointSonntag1990(kilopascals(0.25989)) // => -10.0
 */
export function frostPointSonntag1990(vapourPressure: VapourPressure): Temperature {
  return inverse(saturationVapourPressureOverIceSonntag1990, numberIn(vapourPressure, VAPOUR_OVER_ICE), 0.01)
}

/** The logarithm of a curve is almost straight in 1/T, so that Newton's steps, with the slope of Clausius and Clapeyron, find the root fast. */
function inverse(curve: (t: Temperature) => number, vapour: number, warmest: number): Temperature {
  const logarithm = Math.log(vapour)
  return rootBetween(
    (t) => [Math.log(curve(t as Temperature)) - logarithm, 5400 / (t + 273.15) ** 2],
    -100,
    warmest,
  ) as Temperature
}
