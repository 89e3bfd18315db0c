import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Sorptivity: how much water a dry medium draws in over the square root of time. Unit: cm/h^½. */
export type Sorptivity = number & Kind<'sorptivity in cm/h^½, from centimetresPerRootHour() or centimetresPerRootDay()'>

const SORPTIVITY: Domain = {
  quantity: 'sorptivity',
  unit: 'cm/h^½',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a sorptivity of zero or more; tables print it per root of second, minute, hour or day',
}

/**
 * Sorptivity, from a number in cm/h^½.
 *
 * ```math
 * S = v
 * ```
 *
 * @param value - Number in cm/h^½. Unit: cm/h^½. Range: [0, ∞).
 * @returns Sorptivity. Unit: cm/h^½.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * centimetresPerRootHour(2) // => 2
 * ```
 */
export function centimetresPerRootHour(value: number): Sorptivity {
  return numberIn(value, SORPTIVITY) as Sorptivity
}

/**
 * The number of cm/h^½ in a quantity that centimetresPerRootHour() makes.
 *
 * ```math
 * v = S
 * ```
 *
 * @param quantity - Sorptivity. Unit: cm/h^½. Range: any.
 * @returns Plain number. Unit: cm/h^½.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inCentimetresPerRootHour(centimetresPerRootHour(2)) // => 2
 * ```
 */
export function inCentimetresPerRootHour(quantity: Sorptivity): number {
  return quantity
}

/**
 * Sorptivity, from a number in cm/d^½.
 *
 * ```math
 * S = v / \sqrt{24}
 * ```
 *
 * @param value - Number in cm/d^½. Unit: cm/d^½. Range: [0, ∞).
 * @returns Sorptivity. Unit: cm/h^½.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * centimetresPerRootDay(2) // => 0.408248290464
 * ```
 */
export function centimetresPerRootDay(value: number): Sorptivity {
  return convertedIn(value, value / Math.sqrt(24), 'cm/d^½', SORPTIVITY) as Sorptivity
}

/**
 * The number of cm/d^½ in a quantity that centimetresPerRootDay() makes.
 *
 * ```math
 * v = S \sqrt{24}
 * ```
 *
 * @param quantity - Sorptivity. Unit: cm/h^½. Range: any.
 * @returns Plain number. Unit: cm/d^½.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inCentimetresPerRootDay(centimetresPerRootDay(2)) // => 2
 * ```
 */
export function inCentimetresPerRootDay(quantity: Sorptivity): number {
  return quantity * Math.sqrt(24)
}
