import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Mass of water vapour per mass of dry air. Unit: kg/kg. */
export type HumidityRatio = number &
  Kind<'humidity ratio in kg/kg of dry air, from kilogramsPerKilogram() or gramsPerKilogram()'>

const HUMIDITY_RATIO: Domain = {
  quantity: 'humidity ratio',
  unit: 'kg/kg',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give the mass of vapour per mass of dry air, zero or more',
}

/**
 * Mass of water vapour per mass of dry air, from a number in kg/kg.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in kg/kg. Unit: kg/kg. Range: [0, ∞).
 * @returns Mass of water vapour per mass of dry air. Unit: kg/kg.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * kilogramsPerKilogram(2) // => 2
 * ```
 */
export function kilogramsPerKilogram(value: number): HumidityRatio {
  return numberIn(value, HUMIDITY_RATIO) as HumidityRatio
}

/**
 * The number of kg/kg in a quantity that kilogramsPerKilogram() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Mass of water vapour per mass of dry air. Unit: kg/kg. Range: any.
 * @returns Plain number. Unit: kg/kg.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inKilogramsPerKilogram(kilogramsPerKilogram(2)) // => 2
 * ```
 */
export function inKilogramsPerKilogram(quantity: HumidityRatio): number {
  return quantity
}

/**
 * Mass of water vapour per mass of dry air, from a number in g/kg.
 *
 * ```math
 * q = v / 1000
 * ```
 *
 * @param value - Number in g/kg. Unit: g/kg. Range: [0, ∞).
 * @returns Mass of water vapour per mass of dry air. Unit: kg/kg.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * gramsPerKilogram(2) // => 0.002
 * ```
 */
export function gramsPerKilogram(value: number): HumidityRatio {
  return convertedIn(value, value / 1000, 'g/kg', HUMIDITY_RATIO) as HumidityRatio
}

/**
 * The number of g/kg in a quantity that gramsPerKilogram() makes.
 *
 * ```math
 * v = q \times 1000
 * ```
 *
 * @param quantity - Mass of water vapour per mass of dry air. Unit: kg/kg. Range: any.
 * @returns Plain number. Unit: g/kg.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inGramsPerKilogram(gramsPerKilogram(2)) // => 2
 * ```
 */
export function inGramsPerKilogram(quantity: HumidityRatio): number {
  return quantity * 1000
}
