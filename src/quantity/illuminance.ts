import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Light on an area as the eye weighs it. Unit: lx. */
export type Illuminance = number & Kind<'illuminance in lux, from lux() or footCandles()'>

const ILLUMINANCE: Domain = {
  quantity: 'illuminance',
  unit: 'lx',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give an illuminance of zero or more',
}

/**
 * Light on an area as the eye weighs it, from a number in lx.
 *
 * ```math
 * E = v
 * ```
 *
 * @param value - Number in lx. Unit: lx. Range: [0, ∞).
 * @returns Light on an area as the eye weighs it. Unit: lx.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * lux(2) // => 2
 * ```
 */
export function lux(value: number): Illuminance {
  return numberIn(value, ILLUMINANCE) as Illuminance
}

/**
 * The number of lx in a quantity that lux() makes.
 *
 * ```math
 * v = E
 * ```
 *
 * @param quantity - Light on an area as the eye weighs it. Unit: lx. Range: any.
 * @returns Plain number. Unit: lx.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inLux(lux(2)) // => 2
 * ```
 */
export function inLux(quantity: Illuminance): number {
  return quantity
}

/**
 * Light on an area as the eye weighs it, from a number in fc.
 *
 * ```math
 * E = v \times 10.763910416709722
 * ```
 *
 * @param value - Number in fc. Unit: fc. Range: [0, ∞).
 * @returns Light on an area as the eye weighs it. Unit: lx.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * footCandles(2) // => 21.5278208334
 * ```
 */
export function footCandles(value: number): Illuminance {
  return convertedIn(value, value * 10.763910416709722, 'fc', ILLUMINANCE) as Illuminance
}

/**
 * The number of fc in a quantity that footCandles() makes.
 *
 * ```math
 * v = E / 10.763910416709722
 * ```
 *
 * @param quantity - Light on an area as the eye weighs it. Unit: lx. Range: any.
 * @returns Plain number. Unit: fc.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inFootCandles(footCandles(2)) // => 2
 * ```
 */
export function inFootCandles(quantity: Illuminance): number {
  return quantity / 10.763910416709722
}
