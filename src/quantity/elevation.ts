import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Height of a site above sea level. Unit: m. */
export type Elevation = number &
  Kind<'elevation in metres above sea level, from metresAboveSeaLevel() or feetAboveSeaLevel()', 'point'>

const ELEVATION: Domain = {
  quantity: 'elevation',
  unit: 'm',
  min: -500,
  max: 9000,
  ends: '[]',
  hint: 'give the elevation of a place on land, in metres above sea level',
}

const FEET: Domain = {
  quantity: 'elevation',
  unit: 'ft',
  min: -1640,
  max: 29500,
  ends: '[]',
  hint: 'give the elevation of a place on land, in feet above sea level',
}

/**
 * Height of a site above sea level, from a number in m.
 *
 * ```math
 * z = v
 * ```
 *
 * @param value - Number in m. Unit: m. Range: [-500, 9000].
 * @returns Height of a site above sea level. Unit: m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * metresAboveSeaLevel(250) // => 250
 * ```
 */
export function metresAboveSeaLevel(value: number): Elevation {
  return numberIn(value, ELEVATION) as Elevation
}

/**
 * The number of m in a quantity that metresAboveSeaLevel() makes.
 *
 * ```math
 * v = z
 * ```
 *
 * @param quantity - Height of a site above sea level. Unit: m. Range: any.
 * @returns Plain number. Unit: m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMetresAboveSeaLevel(metresAboveSeaLevel(250)) // => 250
 * ```
 */
export function inMetresAboveSeaLevel(quantity: Elevation): number {
  return quantity
}

/**
 * Height of a site above sea level, from a number in ft.
 *
 * ```math
 * z = v \times 0.3048
 * ```
 *
 * @param value - Number in ft. Unit: ft. Range: [-1640, 29500].
 * @returns Height of a site above sea level. Unit: m.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * feetAboveSeaLevel(250) // => 76.2
 * ```
 */
export function feetAboveSeaLevel(value: number): Elevation {
  return (numberIn(value, FEET) * 0.3048) as Elevation
}

/**
 * The number of ft in a quantity that feetAboveSeaLevel() makes.
 *
 * ```math
 * v = z / 0.3048
 * ```
 *
 * @param quantity - Height of a site above sea level. Unit: m. Range: any.
 * @returns Plain number. Unit: ft.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inFeetAboveSeaLevel(feetAboveSeaLevel(250)) // => 250
 * ```
 */
export function inFeetAboveSeaLevel(quantity: Elevation): number {
  return quantity / 0.3048
}
