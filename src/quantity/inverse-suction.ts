import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Scale of a retention curve, the inverse of a suction head: the alpha of van Genuchten. Unit: 1/cm. */
export type InverseSuction = number &
  Kind<'inverse suction in 1/cm, from perCentimetre(), perMetre() or perKilopascal()'>

/** Specific water capacity: how much water a medium gives for each centimetre of rising suction. Unit: 1/cm. */
export type WaterCapacity = number & Kind<'specific water capacity in 1/cm, from the capacity of a retention model'>

const INVERSE: Domain = {
  quantity: 'inverse suction',
  unit: '1/cm',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a positive number; tables print 1/cm, 1/m and 1/kPa, which differ by factors of 100 and 10.2',
}

/**
 * Inverse suction, from a number in 1/cm.
 *
 * ```math
 * \alpha = v
 * ```
 *
 * @param value - Number in 1/cm. Unit: 1/cm. Range: [0, ∞).
 * @returns Inverse suction. Unit: 1/cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * perCentimetre(0.08) // => 0.08
 * ```
 */
export function perCentimetre(value: number): InverseSuction {
  return numberIn(value, INVERSE) as InverseSuction
}

/**
 * The number of 1/cm in an inverse suction or in a specific water capacity.
 *
 * ```math
 * v = \alpha
 * ```
 *
 * @param quantity - Inverse suction or specific water capacity. Unit: 1/cm. Range: any.
 * @returns Plain number. Unit: 1/cm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inPerCentimetre(perMetre(8)) // => 0.08
 * ```
 */
export function inPerCentimetre(quantity: InverseSuction | WaterCapacity): number {
  return quantity
}

/**
 * Inverse suction, from a number in 1/m.
 *
 * ```math
 * \alpha = v / 100
 * ```
 *
 * @param value - Number in 1/m. Unit: 1/m. Range: [0, ∞).
 * @returns Inverse suction. Unit: 1/cm.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * perMetre(8) // => 0.08
 * ```
 */
export function perMetre(value: number): InverseSuction {
  return convertedIn(value, value / 100, '1/m', INVERSE) as InverseSuction
}

/**
 * The number of 1/m in an inverse suction or in a specific water capacity.
 *
 * ```math
 * v = 100 \, \alpha
 * ```
 *
 * @param quantity - Inverse suction or specific water capacity. Unit: 1/cm. Range: any.
 * @returns Plain number. Unit: 1/m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inPerMetre(perCentimetre(0.08)) // => 8
 * ```
 */
export function inPerMetre(quantity: InverseSuction | WaterCapacity): number {
  return quantity * 100
}

/**
 * Inverse suction, from a number in 1/kPa, with water of 1000 kg/m³.
 *
 * ```math
 * \alpha = 0.0980665 \, v
 * ```
 *
 * @param value - Number in 1/kPa. Unit: 1/kPa. Range: [0, ∞).
 * @returns Inverse suction. Unit: 1/cm.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8 (conventional centimetre of water)
 * @example
 * ```ts
 * perKilopascal(2) // => 0.196133
 * ```
 */
export function perKilopascal(value: number): InverseSuction {
  return convertedIn(value, value * 0.0980665, '1/kPa', INVERSE) as InverseSuction
}

/**
 * The number of 1/kPa in an inverse suction or in a specific water capacity, with water of 1000 kg/m³.
 *
 * ```math
 * v = \alpha / 0.0980665
 * ```
 *
 * @param quantity - Inverse suction or specific water capacity. Unit: 1/cm. Range: any.
 * @returns Plain number. Unit: 1/kPa.
 * @source NIST Special Publication 811 (2008), Appendix B.8 (conventional centimetre of water)
 * @example
 * ```ts
 * inPerKilopascal(perKilopascal(2)) // => 2
 * ```
 */
export function inPerKilopascal(quantity: InverseSuction | WaterCapacity): number {
  return quantity / 0.0980665
}
