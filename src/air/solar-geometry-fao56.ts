import type { DayOfYear } from '../quantity/calendar.js'
import { DAY_OF_YEAR, SITE_LATITUDE } from '../quantity/domains.js'
import type { DailyRadiation, Duration, Latitude } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf, wholeNumberIn } from '../quantity/guard.js'

/** Solar constant, MJ m⁻² min⁻¹. */
const SOLAR_CONSTANT = 0.082

/** A place and a day, as the sun sees them. */
export interface SolarDay {
  /** Latitude, south negative. Unit: °. Range: [-90, 90]. */
  readonly latitude: Latitude
  /** Day of the year. Unit: d. Range: integers [1, 366]. */
  readonly day: DayOfYear
}

/** Angles of the sun on a day, in radians, and the inverse relative distance of the earth. */
export interface SolarGeometry {
  /** Inverse relative distance from the earth to the sun. Unit: 1. */
  readonly inverseDistance: number
  /** Latitude. Unit: rad. */
  readonly latitude: number
  /** Declination of the sun. Unit: rad. */
  readonly declination: number
  /** Hour angle of sunset: π in the polar day, 0 in the polar night. Unit: rad. */
  readonly sunsetHourAngle: number
}

/**
 * Angles of the sun on a day at a latitude.
 *
 * Inside the polar circles the product of the tangents leaves the range of the cosine; the hour angle is then that of a sun that never
 * sets, or never rises.
 *
 * @equation `d_r = 1 + 0.033 \cos\left( \tfrac{2\pi}{365} J \right), \quad \delta = 0.409 \sin\left( \tfrac{2\pi}{365} J - 1.39 \right), \quad \omega_s = \arccos(-\tan\varphi \tan\delta)`
 * @returns Distance and angles.
 * @source allen-1998, Eq. 23, 24 and 25
 * @example
 * solarGeometryFao56({ latitude: latitude(-20), day: dayOfYear(246) }).sunsetHourAngle // => 1.527
 */
export function solarGeometryFao56(place: SolarDay): SolarGeometry {
  const phi = (Math.PI / 180) * numberIn(optionsOf(place).latitude, SITE_LATITUDE, 'latitude')
  const turn = ((2 * Math.PI) / 365) * wholeNumberIn(place.day, DAY_OF_YEAR, 'day')
  const declination = 0.409 * Math.sin(turn - 1.39)
  return {
    inverseDistance: 1 + 0.033 * Math.cos(turn),
    latitude: phi,
    declination,
    sunsetHourAngle: Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination)))),
  }
}

/**
 * Radiation of the sun on a horizontal plane above the atmosphere in a day.
 *
 * @equation `R_a = \frac{24 \cdot 60}{\pi} G_{sc} d_r \left[ \omega_s \sin\varphi \sin\delta + \cos\varphi \cos\delta \sin\omega_s \right]`
 * @returns Extraterrestrial radiation. Unit: MJ/m²/d.
 * @source allen-1998, Eq. 21
 * @example
 * extraterrestrialRadiationFao56({ latitude: latitude(-20), day: dayOfYear(246) }) // => 32.2
 */
export function extraterrestrialRadiationFao56(place: SolarDay): DailyRadiation {
  const { inverseDistance, latitude, declination, sunsetHourAngle } = solarGeometryFao56(place)
  const sines = Math.sin(latitude) * Math.sin(declination)
  const cosines = Math.cos(latitude) * Math.cos(declination)
  const radiation =
    ((24 * 60) / Math.PI) *
    SOLAR_CONSTANT *
    inverseDistance *
    (sunsetHourAngle * sines + cosines * Math.sin(sunsetHourAngle))
  // In the polar night the two terms cancel but for rounding.
  return Math.max(0, radiation) as DailyRadiation
}

/**
 * Time from sunrise to sunset.
 *
 * @equation `N = \frac{24}{\pi} \omega_s`
 * @returns Length of the day. Unit: s.
 * @source allen-1998, Eq. 34
 * @example
 * inHours(dayLengthFao56({ latitude: latitude(-20), day: dayOfYear(246) })) // => 11.7
 */
export function dayLengthFao56(place: SolarDay): Duration {
  return ((solarGeometryFao56(place).sunsetHourAngle / Math.PI) * 86400) as Duration
}
