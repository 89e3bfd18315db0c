import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Mass. Unit: g. */
export type Mass = number & Kind<'mass in grams, from grams() or kilograms()'>

const MASS: Domain = {
  quantity: 'mass',
  unit: 'g',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a mass of zero or more',
}

/**
 * Mass, from a number in g.
 *
 * ```math
 * m = v
 * ```
 *
 * @param value - Number in g. Unit: g. Range: [0, ∞).
 * @returns Mass. Unit: g.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * grams(2) // => 2
 * ```
 */
export function grams(value: number): Mass {
  return numberIn(value, MASS) as Mass
}

/**
 * The number of g in a quantity that grams() makes.
 *
 * ```math
 * v = m
 * ```
 *
 * @param quantity - Mass. Unit: g. Range: any.
 * @returns Plain number. Unit: g.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inGrams(grams(2)) // => 2
 * ```
 */
export function inGrams(quantity: Mass): number {
  return quantity
}

/**
 * Mass, from a number in kg.
 *
 * ```math
 * m = v \times 1000
 * ```
 *
 * @param value - Number in kg. Unit: kg. Range: [0, ∞).
 * @returns Mass. Unit: g.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * kilograms(2) // => 2000
 * ```
 */
export function kilograms(value: number): Mass {
  return convertedIn(value, value * 1000, 'kg', MASS) as Mass
}

/**
 * The number of kg in a quantity that kilograms() makes.
 *
 * ```math
 * v = m / 1000
 * ```
 *
 * @param quantity - Mass. Unit: g. Range: any.
 * @returns Plain number. Unit: kg.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inKilograms(kilograms(2)) // => 2
 * ```
 */
export function inKilograms(quantity: Mass): number {
  return quantity / 1000
}

/**
 * Mass, from a number in mg.
 *
 * ```math
 * m = v / 1000
 * ```
 *
 * @param value - Number in mg. Unit: mg. Range: [0, ∞).
 * @returns Mass. Unit: g.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * milligrams(2) // => 0.002
 * ```
 */
export function milligrams(value: number): Mass {
  return convertedIn(value, value / 1000, 'mg', MASS) as Mass
}

/**
 * The number of mg in a quantity that milligrams() makes.
 *
 * ```math
 * v = m \times 1000
 * ```
 *
 * @param quantity - Mass. Unit: g. Range: any.
 * @returns Plain number. Unit: mg.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMilligrams(milligrams(2)) // => 2
 * ```
 */
export function inMilligrams(quantity: Mass): number {
  return quantity * 1000
}

/**
 * Mass, from a number in lb.
 *
 * ```math
 * m = v \times 453.59237
 * ```
 *
 * @param value - Number in lb. Unit: lb. Range: [0, ∞).
 * @returns Mass. Unit: g.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * pounds(2) // => 907.18474
 * ```
 */
export function pounds(value: number): Mass {
  return convertedIn(value, value * 453.59237, 'lb', MASS) as Mass
}

/**
 * The number of lb in a quantity that pounds() makes.
 *
 * ```math
 * v = m / 453.59237
 * ```
 *
 * @param quantity - Mass. Unit: g. Range: any.
 * @returns Plain number. Unit: lb.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inPounds(pounds(2)) // => 2
 * ```
 */
export function inPounds(quantity: Mass): number {
  return quantity / 453.59237
}

/**
 * Mass, from a number in oz.
 *
 * ```math
 * m = v \times 28.349523125
 * ```
 *
 * @param value - Number in oz. Unit: oz. Range: [0, ∞).
 * @returns Mass. Unit: g.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * ounces(2) // => 56.69904625
 * ```
 */
export function ounces(value: number): Mass {
  return convertedIn(value, value * 28.349523125, 'oz', MASS) as Mass
}

/**
 * The number of oz in a quantity that ounces() makes.
 *
 * ```math
 * v = m / 28.349523125
 * ```
 *
 * @param quantity - Mass. Unit: g. Range: any.
 * @returns Plain number. Unit: oz.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inOunces(ounces(2)) // => 2
 * ```
 */
export function inOunces(quantity: Mass): number {
  return quantity / 28.349523125
}
