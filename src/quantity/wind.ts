import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Speed of wind or air. Unit: m/s. */
export type WindSpeed = number & Kind<'wind speed in m/s, from metresPerSecond() or kilometresPerHour()'>

const WIND: Domain = {
  quantity: 'wind',
  unit: 'm/s',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a speed of zero or more',
}

/**
 * Speed of wind or air, from a number in m/s.
 *
 * ```math
 * u = v
 * ```
 *
 * @param value - Number in m/s. Unit: m/s. Range: [0, ∞).
 * @returns Speed of wind or air. Unit: m/s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * metresPerSecond(2) // => 2
 * ```
 */
export function metresPerSecond(value: number): WindSpeed {
  return numberIn(value, WIND) as WindSpeed
}

/**
 * The number of m/s in a quantity that metresPerSecond() makes.
 *
 * ```math
 * v = u
 * ```
 *
 * @param quantity - Speed of wind or air. Unit: m/s. Range: any.
 * @returns Plain number. Unit: m/s.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMetresPerSecond(metresPerSecond(2)) // => 2
 * ```
 */
export function inMetresPerSecond(quantity: WindSpeed): number {
  return quantity
}

/**
 * Speed of wind or air, from a number in km/h.
 *
 * ```math
 * u = v / 3.6
 * ```
 *
 * @param value - Number in km/h. Unit: km/h. Range: [0, ∞).
 * @returns Speed of wind or air. Unit: m/s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * kilometresPerHour(2) // => 0.555555555556
 * ```
 */
export function kilometresPerHour(value: number): WindSpeed {
  return convertedIn(value, value / 3.6, 'km/h', WIND) as WindSpeed
}

/**
 * The number of km/h in a quantity that kilometresPerHour() makes.
 *
 * ```math
 * v = u \times 3.6
 * ```
 *
 * @param quantity - Speed of wind or air. Unit: m/s. Range: any.
 * @returns Plain number. Unit: km/h.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inKilometresPerHour(kilometresPerHour(2)) // => 2
 * ```
 */
export function inKilometresPerHour(quantity: WindSpeed): number {
  return quantity * 3.6
}

/**
 * Speed of wind or air, from a number in mi/h.
 *
 * ```math
 * u = v \times 0.44704
 * ```
 *
 * @param value - Number in mi/h. Unit: mi/h. Range: [0, ∞).
 * @returns Speed of wind or air. Unit: m/s.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * milesPerHour(2) // => 0.89408
 * ```
 */
export function milesPerHour(value: number): WindSpeed {
  return convertedIn(value, value * 0.44704, 'mi/h', WIND) as WindSpeed
}

/**
 * The number of mi/h in a quantity that milesPerHour() makes.
 *
 * ```math
 * v = u / 0.44704
 * ```
 *
 * @param quantity - Speed of wind or air. Unit: m/s. Range: any.
 * @returns Plain number. Unit: mi/h.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inMilesPerHour(milesPerHour(2)) // => 2
 * ```
 */
export function inMilesPerHour(quantity: WindSpeed): number {
  return quantity / 0.44704
}

/**
 * Speed of wind or air, from a number in kn.
 *
 * ```math
 * u = v \times 1852 / 3600
 * ```
 *
 * @param value - Number in kn. Unit: kn. Range: [0, ∞).
 * @returns Speed of wind or air. Unit: m/s.
 * @throws `DomainError` outside the range.
 * @source International Hydrographic Conference (1929): 1 nautical mile is 1852 m
 * @example
 * ```ts
 * knots(2) // => 1.02888888889
 * ```
 */
export function knots(value: number): WindSpeed {
  return convertedIn(value, (value * 1852) / 3600, 'kn', WIND) as WindSpeed
}

/**
 * The number of kn in a quantity that knots() makes.
 *
 * ```math
 * v = u / 1852 \times 3600
 * ```
 *
 * @param quantity - Speed of wind or air. Unit: m/s. Range: any.
 * @returns Plain number. Unit: kn.
 * @source International Hydrographic Conference (1929): 1 nautical mile is 1852 m
 * @example
 * ```ts
 * inKnots(knots(2)) // => 2
 * ```
 */
export function inKnots(quantity: WindSpeed): number {
  return (quantity * 3600) / 1852
}
