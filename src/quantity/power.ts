import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Electrical or radiant power. Unit: W. */
export type Power = number & Kind<'power in watts, from watts() or kilowatts()'>

const POWER: Domain = {
  quantity: 'power',
  unit: 'W',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a power of zero or more',
}

/**
 * Electrical or radiant power, from a number in W.
 *
 * ```math
 * P = v
 * ```
 *
 * @param value - Number in W. Unit: W. Range: [0, ∞).
 * @returns Electrical or radiant power. Unit: W.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * watts(2) // => 2
 * ```
 */
export function watts(value: number): Power {
  return numberIn(value, POWER) as Power
}

/**
 * The number of W in a quantity that watts() makes.
 *
 * ```math
 * v = P
 * ```
 *
 * @param quantity - Electrical or radiant power. Unit: W. Range: any.
 * @returns Plain number. Unit: W.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inWatts(watts(2)) // => 2
 * ```
 */
export function inWatts(quantity: Power): number {
  return quantity
}

/**
 * Electrical or radiant power, from a number in kW.
 *
 * ```math
 * P = v \times 1000
 * ```
 *
 * @param value - Number in kW. Unit: kW. Range: [0, ∞).
 * @returns Electrical or radiant power. Unit: W.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * kilowatts(2) // => 2000
 * ```
 */
export function kilowatts(value: number): Power {
  return convertedIn(value, value * 1000, 'kW', POWER) as Power
}

/**
 * The number of kW in a quantity that kilowatts() makes.
 *
 * ```math
 * v = P / 1000
 * ```
 *
 * @param quantity - Electrical or radiant power. Unit: W. Range: any.
 * @returns Plain number. Unit: kW.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inKilowatts(kilowatts(2)) // => 2
 * ```
 */
export function inKilowatts(quantity: Power): number {
  return quantity / 1000
}
