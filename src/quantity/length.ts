import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Length, height, depth or distance. Unit: cm. */
export type Length = number & Kind<'length in centimetres, from centimetres() or millimetres()'>

const LENGTH: Domain = {
  quantity: 'length',
  unit: 'cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a length of zero or more',
}

/**
 * Length, height, depth or distance, from a number in cm.
 *
 * ```math
 * x = v
 * ```
 *
 * @param value - Number in cm. Unit: cm. Range: [0, ∞).
 * @returns Length. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * centimetres(2) // => 2
 * ```
 */
export function centimetres(value: number): Length {
  return numberIn(value, LENGTH) as Length
}

/**
 * The number of cm in a quantity that centimetres() makes.
 *
 * ```math
 * v = x
 * ```
 *
 * @param quantity - Length. Unit: cm. Range: any.
 * @returns Plain number. Unit: cm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inCentimetres(centimetres(2)) // => 2
 * ```
 */
export function inCentimetres(quantity: Length): number {
  return quantity
}

/**
 * Length, height, depth or distance, from a number in mm.
 *
 * ```math
 * x = v / 10
 * ```
 *
 * @param value - Number in mm. Unit: mm. Range: [0, ∞).
 * @returns Length. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millimetres(2) // => 0.2
 * ```
 */
export function millimetres(value: number): Length {
  return convertedIn(value, value / 10, 'mm', LENGTH) as Length
}

/**
 * The number of mm in a quantity that millimetres() makes.
 *
 * ```math
 * v = x \times 10
 * ```
 *
 * @param quantity - Length. Unit: cm. Range: any.
 * @returns Plain number. Unit: mm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillimetres(millimetres(2)) // => 2
 * ```
 */
export function inMillimetres(quantity: Length): number {
  return quantity * 10
}

/**
 * Length, height, depth or distance, from a number in m.
 *
 * ```math
 * x = v \times 100
 * ```
 *
 * @param value - Number in m. Unit: m. Range: [0, ∞).
 * @returns Length. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * metres(2) // => 200
 * ```
 */
export function metres(value: number): Length {
  return convertedIn(value, value * 100, 'm', LENGTH) as Length
}

/**
 * The number of m in a quantity that metres() makes.
 *
 * ```math
 * v = x / 100
 * ```
 *
 * @param quantity - Length. Unit: cm. Range: any.
 * @returns Plain number. Unit: m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMetres(metres(2)) // => 2
 * ```
 */
export function inMetres(quantity: Length): number {
  return quantity / 100
}

/**
 * Length, height, depth or distance, from a number in in.
 *
 * ```math
 * x = v \times 2.54
 * ```
 *
 * @param value - Number in in. Unit: in. Range: [0, ∞).
 * @returns Length. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inches(2) // => 5.08
 * ```
 */
export function inches(value: number): Length {
  return convertedIn(value, value * 2.54, 'in', LENGTH) as Length
}

/**
 * The number of in in a quantity that inches() makes.
 *
 * ```math
 * v = x / 2.54
 * ```
 *
 * @param quantity - Length. Unit: cm. Range: any.
 * @returns Plain number. Unit: in.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inInches(inches(2)) // => 2
 * ```
 */
export function inInches(quantity: Length): number {
  return quantity / 2.54
}

/**
 * Length, height, depth or distance, from a number in ft.
 *
 * ```math
 * x = v \times 30.48
 * ```
 *
 * @param value - Number in ft. Unit: ft. Range: [0, ∞).
 * @returns Length. Unit: cm.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * feet(2) // => 60.96
 * ```
 */
export function feet(value: number): Length {
  return convertedIn(value, value * 30.48, 'ft', LENGTH) as Length
}

/**
 * The number of ft in a quantity that feet() makes.
 *
 * ```math
 * v = x / 30.48
 * ```
 *
 * @param quantity - Length. Unit: cm. Range: any.
 * @returns Plain number. Unit: ft.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inFeet(feet(2)) // => 2
 * ```
 */
export function inFeet(quantity: Length): number {
  return quantity / 30.48
}
