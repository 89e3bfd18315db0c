import { DAY_OF_YEAR } from '../quantity/domains.js'
import type { Duration, HourlyRadiation, Longitude } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf, wholeNumberIn } from '../quantity/guard.js'
import { CLOCK_TIME, PERIOD_LENGTH, SITE_LONGITUDE } from './domains.js'
import { type SolarDay, type SolarGeometry, solarGeometryFao56 } from './solar-geometry-fao56.js'

/** 12 h of 60 min over π, times the solar constant in MJ m⁻² min⁻¹. A literal, so that nothing runs at import. */
export const HOUR_FACTOR = 18.793015680291003

/** A place and a period of a day, as the sun sees them. */
export interface SolarHour extends SolarDay {
  /** Longitude of the site, west negative. Unit: °. Range: [-180, 180]. */
  readonly longitude: Longitude
  /** Longitude of the middle of the time zone, west negative: 15° for each hour from universal time; that of standard time, not of summer time. Unit: °. Range: [-180, 180]. */
  readonly zoneLongitude: Longitude
  /** Standard clock time of the middle of the period, after midnight. Unit: s. Range: [0, 86400]. */
  readonly middle: Duration
  /** Length of the period; an hour by default. Unit: s. Range: (0, 86400]. */
  readonly duration?: Duration
}

/** Angles of the sun in a period of a day. */
export interface SolarHourGeometry extends SolarGeometry {
  /** Argument of the seasonal correction. Unit: rad. */
  readonly seasonAngle: number
  /** Seasonal correction of solar time, the equation of time. Unit: s. */
  readonly seasonalCorrection: Duration
  /** Solar time angle at the middle of the period; 0 at solar noon, from -π to π. Unit: rad. */
  readonly middleAngle: number
  /** Solar time angle at the start of the period, before any sunrise is looked at. Unit: rad. */
  readonly startAngle: number
  /** Solar time angle at the end of the period, before any sunset is looked at. Unit: rad. */
  readonly endAngle: number
  /** Height of the sun above the horizon at the middle of the period; negative at night. Unit: rad. */
  readonly sunElevation: number
}

/**
 * Angles of the sun in an hour, or a shorter period, of a day.
 *
 * FAO-56 counts longitudes west of Greenwich; here they are east of it, as maps and positioning systems give them.
 *
 * @equation `\omega = \frac{\pi}{12} \left[ t + \frac{L_z - L_m}{15} + S_c - 12 \right], \quad S_c = 0.1645 \sin 2b - 0.1255 \cos b - 0.025 \sin b, \quad b = \frac{2\pi (J - 81)}{364}`
 * @returns Angles and the seasonal correction.
 * @source allen-1998, Eq. 29 to 33
 * @example
 * solarHourFao56({
 *   latitude: latitude(16.22), longitude: longitude(-16.25), zoneLongitude: longitude(-15), day: dayOfYear(274), middle: hours(14.5),
 * }).middleAngle // => 0.682
 */
export function solarHourFao56(place: SolarHour): SolarHourGeometry {
  const { inverseDistance, latitude, declination, sunsetHourAngle } = solarGeometryFao56(place)
  const seasonAngle = (2 * Math.PI * (wholeNumberIn(optionsOf(place).day, DAY_OF_YEAR, 'day') - 81)) / 364
  const correction = seasonalCorrectionHours(seasonAngle)
  const shift =
    (numberIn(place.longitude, SITE_LONGITUDE, 'longitude') -
      numberIn(place.zoneLongitude, SITE_LONGITUDE, 'zoneLongitude')) /
    15
  const middleAngle = aroundNoon(
    (Math.PI / 12) * (numberIn(place.middle, CLOCK_TIME, 'middle') / 3600 + shift + correction - 12),
  )
  const half = (numberIn(optionOr(place.duration, 3600), PERIOD_LENGTH, 'duration') / 86400) * Math.PI
  return {
    inverseDistance,
    latitude,
    declination,
    seasonAngle,
    seasonalCorrection: (correction * 3600) as Duration,
    middleAngle,
    startAngle: middleAngle - half,
    endAngle: middleAngle + half,
    sunsetHourAngle,
    sunElevation: Math.asin(
      Math.sin(latitude) * Math.sin(declination) + Math.cos(latitude) * Math.cos(declination) * Math.cos(middleAngle),
    ),
  }
}

/**
 * Radiation of the sun on a horizontal plane above the atmosphere in an hour or a shorter period.
 *
 * Only the part of the period between sunrise and sunset counts, so that the hours of a day sum to the daily value.
 *
 * @equation `R_a = \frac{12 \cdot 60}{\pi} G_{sc} d_r \left[ (\omega_2 - \omega_1) \sin\varphi \sin\delta + \cos\varphi \cos\delta (\sin\omega_2 - \sin\omega_1) \right]`
 * @returns Extraterrestrial radiation of the whole period; for an hour it is in MJ/m² in that hour. Unit: MJ/m²/h.
 * @source allen-1998, Eq. 28; hours that the sun rises or sets in as asce-2005, Eq. 56
 * @example
 * extraterrestrialRadiationHourFao56({
 *   latitude: latitude(16.22), longitude: longitude(-16.25), zoneLongitude: longitude(-15), day: dayOfYear(274), middle: hours(14.5),
 * }) // => 3.543
 */
export function extraterrestrialRadiationHourFao56(place: SolarHour): HourlyRadiation {
  const sun = solarHourFao56(place)
  const sines = Math.sin(sun.latitude) * Math.sin(sun.declination)
  const cosines = Math.cos(sun.latitude) * Math.cos(sun.declination)
  return radiationBetween(
    HOUR_FACTOR * sun.inverseDistance,
    sines,
    cosines,
    sun.sunsetHourAngle,
    sun.startAngle,
    sun.endAngle,
  ) as HourlyRadiation
}

/** Seasonal correction of solar time in hours from its argument in radians. */
export function seasonalCorrectionHours(b: number): number {
  return 0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b)
}

/** The same angle between -π and π, so that periods around midnight belong to one day. */
export function aroundNoon(angle: number): number {
  return angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI))
}

/** Extraterrestrial radiation between two solar time angles; `scale` is the hour factor times the inverse distance. */
export function radiationBetween(
  scale: number,
  sines: number,
  cosines: number,
  sunset: number,
  start: number,
  end: number,
): number {
  // A period over midnight sees the end of this day and the start of the next.
  const wrapped =
    start < -Math.PI
      ? daylight(scale, sines, cosines, sunset, start + 2 * Math.PI, Math.PI)
      : end > Math.PI
        ? daylight(scale, sines, cosines, sunset, -Math.PI, end - 2 * Math.PI)
        : 0
  return wrapped + daylight(scale, sines, cosines, sunset, Math.max(start, -Math.PI), Math.min(end, Math.PI))
}

function daylight(scale: number, sines: number, cosines: number, sunset: number, start: number, end: number): number {
  const from = Math.max(start, -sunset)
  const to = Math.min(end, sunset)
  if (to <= from) return 0
  const radiation = scale * ((to - from) * sines + cosines * (Math.sin(to) - Math.sin(from)))
  return Math.max(radiation, 0)
}
