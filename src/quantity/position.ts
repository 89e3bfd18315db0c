import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Latitude in degrees; south is negative. Unit: °. */
export type Latitude = number & Kind<'latitude in degrees north, from latitude()', 'point'>

/** Longitude in degrees; west is negative. Unit: °. */
export type Longitude = number & Kind<'longitude in degrees east, from longitude()', 'point'>

const LATITUDE: Domain = {
  quantity: 'latitude',
  unit: '°',
  min: -90,
  max: 90,
  ends: '[]',
  hint: 'give decimal degrees, south negative',
}

const LONGITUDE: Domain = {
  quantity: 'longitude',
  unit: '°',
  min: -180,
  max: 180,
  ends: '[]',
  hint: 'give decimal degrees, west negative',
}

/**
 * Latitude in degrees, from a plain number.
 *
 * ```math
 * \varphi = v
 * ```
 *
 * @param value - Latitude in degrees. Unit: °. Range: [-90, 90].
 * @returns Latitude in degrees. Unit: °.
 * @throws `DomainError` outside the range.
 * @source ISO 6709 (memory)
 * @example
 * ```ts
 * latitude(52) // => 52
 * ```
 */
export function latitude(value: number): Latitude {
  return numberIn(value, LATITUDE) as Latitude
}

/**
 * Longitude in degrees, from a plain number.
 *
 * ```math
 * \lambda = v
 * ```
 *
 * @param value - Longitude in degrees. Unit: °. Range: [-180, 180].
 * @returns Longitude in degrees. Unit: °.
 * @throws `DomainError` outside the range.
 * @source ISO 6709 (memory)
 * @example
 * ```ts
 * longitude(4.5) // => 4.5
 * ```
 */
export function longitude(value: number): Longitude {
  return numberIn(value, LONGITUDE) as Longitude
}
