import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Volume of water, medium or container. Unit: L. */
export type Volume = number & Kind<'volume in litres, from litres() or millilitres()'>

const VOLUME: Domain = {
  quantity: 'volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a volume of zero or more',
}

/**
 * Volume of water, medium or container, from a number in L.
 *
 * ```math
 * V = v
 * ```
 *
 * @param value - Number in L. Unit: L. Range: [0, ∞).
 * @returns Volume of water. Unit: L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * litres(2) // => 2
 * ```
 */
export function litres(value: number): Volume {
  return numberIn(value, VOLUME) as Volume
}

/**
 * The number of L in a quantity that litres() makes.
 *
 * ```math
 * v = V
 * ```
 *
 * @param quantity - Volume of water. Unit: L. Range: any.
 * @returns Plain number. Unit: L.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inLitres(litres(2)) // => 2
 * ```
 */
export function inLitres(quantity: Volume): number {
  return quantity
}

/**
 * Volume of water, medium or container, from a number in mL.
 *
 * ```math
 * V = v / 1000
 * ```
 *
 * @param value - Number in mL. Unit: mL. Range: [0, ∞).
 * @returns Volume of water. Unit: L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millilitres(2) // => 0.002
 * ```
 */
export function millilitres(value: number): Volume {
  return convertedIn(value, value / 1000, 'mL', VOLUME) as Volume
}

/**
 * The number of mL in a quantity that millilitres() makes.
 *
 * ```math
 * v = V \times 1000
 * ```
 *
 * @param quantity - Volume of water. Unit: L. Range: any.
 * @returns Plain number. Unit: mL.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillilitres(millilitres(2)) // => 2
 * ```
 */
export function inMillilitres(quantity: Volume): number {
  return quantity * 1000
}

/**
 * Volume of water, medium or container, from a number in m³.
 *
 * ```math
 * V = v \times 1000
 * ```
 *
 * @param value - Number in m³. Unit: m³. Range: [0, ∞).
 * @returns Volume of water. Unit: L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * cubicMetres(2) // => 2000
 * ```
 */
export function cubicMetres(value: number): Volume {
  return convertedIn(value, value * 1000, 'm³', VOLUME) as Volume
}

/**
 * The number of m³ in a quantity that cubicMetres() makes.
 *
 * ```math
 * v = V / 1000
 * ```
 *
 * @param quantity - Volume of water. Unit: L. Range: any.
 * @returns Plain number. Unit: m³.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inCubicMetres(cubicMetres(2)) // => 2
 * ```
 */
export function inCubicMetres(quantity: Volume): number {
  return quantity / 1000
}

/**
 * Volume of water, medium or container, from a number in US gal.
 *
 * ```math
 * V = v \times 3.785411784
 * ```
 *
 * @param value - Number in US gal. Unit: US gal. Range: [0, ∞).
 * @returns Volume of water. Unit: L.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * usGallons(2) // => 7.570823568
 * ```
 */
export function usGallons(value: number): Volume {
  return convertedIn(value, value * 3.785411784, 'US gal', VOLUME) as Volume
}

/**
 * The number of US gal in a quantity that usGallons() makes.
 *
 * ```math
 * v = V / 3.785411784
 * ```
 *
 * @param quantity - Volume of water. Unit: L. Range: any.
 * @returns Plain number. Unit: US gal.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inUsGallons(usGallons(2)) // => 2
 * ```
 */
export function inUsGallons(quantity: Volume): number {
  return quantity / 3.785411784
}

/**
 * Volume of water, medium or container, from a number in US fl oz.
 *
 * ```math
 * V = v \times 0.0295735295625
 * ```
 *
 * @param value - Number in US fl oz. Unit: US fl oz. Range: [0, ∞).
 * @returns Volume of water. Unit: L.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * usFluidOunces(2) // => 0.059147059125
 * ```
 */
export function usFluidOunces(value: number): Volume {
  return convertedIn(value, value * 0.0295735295625, 'US fl oz', VOLUME) as Volume
}

/**
 * The number of US fl oz in a quantity that usFluidOunces() makes.
 *
 * ```math
 * v = V / 0.0295735295625
 * ```
 *
 * @param quantity - Volume of water. Unit: L. Range: any.
 * @returns Plain number. Unit: US fl oz.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inUsFluidOunces(usFluidOunces(2)) // => 2
 * ```
 */
export function inUsFluidOunces(quantity: Volume): number {
  return quantity / 0.0295735295625
}
