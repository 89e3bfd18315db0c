import { numberIn } from '../../quantity/guard.js'
import { SUNSET_RATIO } from '../domains.js'

/** Pieces of the hourly methods on plain numbers, so that one row and a long series share them. */

/** The sun must stand at least this high, in radians, for measured over clear-sky radiation to mean cloudiness (ASCE-EWRI 2005). */
const MIN_SUN_HEIGHT = 0.3
/** Share of clear-sky radiation that is taken at night where nothing is known: between humid (0.4 to 0.6) and arid (0.7 to 0.8) sites. */
export const NIGHT_SHARE = 0.7

/** Saturation vapour pressure in kPa at a temperature in °C. */
export function saturationAt(t: number): number {
  return 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
}

/** Penman-Monteith with a given numerator and denominator constant, mm per period. */
export function penmanMonteith(
  slope: number,
  gamma: number,
  energy: number,
  t: number,
  wind: number,
  deficit: number,
  numerator: number,
  denominator: number,
): number {
  return (
    (0.408 * slope * energy + ((gamma * numerator) / (t + 273)) * wind * deficit) /
    (slope + gamma * (1 + denominator * wind))
  )
}

/** The cloudiness ratio of one hour: measured where the sun is high enough, else that before sunset, else assumed. */
export function relativeShortwaveOfHour(
  solar: number,
  clearSky: number,
  sunElevation: number,
  beforeSunset: number | undefined,
): { readonly ratio: number; readonly assumed: boolean } {
  const given =
    beforeSunset === undefined ? undefined : numberIn(beforeSunset, SUNSET_RATIO, 'relativeShortwaveBeforeSunset')
  if (sunElevation >= MIN_SUN_HEIGHT && clearSky > 0) return { ratio: solar / clearSky, assumed: false }
  return { ratio: given ?? NIGHT_SHARE, assumed: given === undefined }
}
