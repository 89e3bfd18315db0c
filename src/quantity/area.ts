import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Area. Unit: m². */
export type Area = number & Kind<'area in square metres, from squareMetres() or squareCentimetres()'>

const AREA: Domain = {
  quantity: 'area',
  unit: 'm²',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give an area of zero or more',
}

/**
 * Area, from a number in m².
 *
 * ```math
 * A = v
 * ```
 *
 * @param value - Number in m². Unit: m². Range: [0, ∞).
 * @returns Area. Unit: m².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * squareMetres(2) // => 2
 * ```
 */
export function squareMetres(value: number): Area {
  return numberIn(value, AREA) as Area
}

/**
 * The number of m² in a quantity that squareMetres() makes.
 *
 * ```math
 * v = A
 * ```
 *
 * @param quantity - Area. Unit: m². Range: any.
 * @returns Plain number. Unit: m².
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inSquareMetres(squareMetres(2)) // => 2
 * ```
 */
export function inSquareMetres(quantity: Area): number {
  return quantity
}

/**
 * Area, from a number in cm².
 *
 * ```math
 * A = v / 10000
 * ```
 *
 * @param value - Number in cm². Unit: cm². Range: [0, ∞).
 * @returns Area. Unit: m².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * squareCentimetres(2) // => 0.0002
 * ```
 */
export function squareCentimetres(value: number): Area {
  return convertedIn(value, value / 10000, 'cm²', AREA) as Area
}

/**
 * The number of cm² in a quantity that squareCentimetres() makes.
 *
 * ```math
 * v = A \times 10000
 * ```
 *
 * @param quantity - Area. Unit: m². Range: any.
 * @returns Plain number. Unit: cm².
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inSquareCentimetres(squareCentimetres(2)) // => 2
 * ```
 */
export function inSquareCentimetres(quantity: Area): number {
  return quantity * 10000
}

/**
 * Area, from a number in ha.
 *
 * ```math
 * A = v \times 10000
 * ```
 *
 * @param value - Number in ha. Unit: ha. Range: [0, ∞).
 * @returns Area. Unit: m².
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * hectares(2) // => 20000
 * ```
 */
export function hectares(value: number): Area {
  return convertedIn(value, value * 10000, 'ha', AREA) as Area
}

/**
 * The number of ha in a quantity that hectares() makes.
 *
 * ```math
 * v = A / 10000
 * ```
 *
 * @param quantity - Area. Unit: m². Range: any.
 * @returns Plain number. Unit: ha.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inHectares(hectares(2)) // => 2
 * ```
 */
export function inHectares(quantity: Area): number {
  return quantity / 10000
}

/**
 * Area, from a number in ft².
 *
 * ```math
 * A = v \times 0.09290304
 * ```
 *
 * @param value - Number in ft². Unit: ft². Range: [0, ∞).
 * @returns Area. Unit: m².
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * squareFeet(2) // => 0.18580608
 * ```
 */
export function squareFeet(value: number): Area {
  return convertedIn(value, value * 0.09290304, 'ft²', AREA) as Area
}

/**
 * The number of ft² in a quantity that squareFeet() makes.
 *
 * ```math
 * v = A / 0.09290304
 * ```
 *
 * @param quantity - Area. Unit: m². Range: any.
 * @returns Plain number. Unit: ft².
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inSquareFeet(squareFeet(2)) // => 2
 * ```
 */
export function inSquareFeet(quantity: Area): number {
  return quantity / 0.09290304
}
