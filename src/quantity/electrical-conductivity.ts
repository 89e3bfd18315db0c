import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Electrical conductivity of the whole medium (solids, water and air) at 25 °C. Unit: dS/m. */
export type BulkEC = number &
  Kind<'bulk EC in dS/m at 25 °C, from decisiemensPerMetre() or millisiemensPerCentimetre()'>

/** Electrical conductivity of the water in the pores at 25 °C. Unit: dS/m. */
export type PoreWaterEC = number &
  Kind<'pore-water EC in dS/m at 25 °C, from decisiemensPerMetre() or millisiemensPerCentimetre()'>

/** Electrical conductivity of irrigation water, feed or a standard solution at 25 °C. Unit: dS/m. */
export type SolutionEC = number &
  Kind<'solution EC in dS/m at 25 °C, from decisiemensPerMetre() or millisiemensPerCentimetre()'>

/** Electrical conductivity of drain water at 25 °C. Unit: dS/m. */
export type DrainEC = number &
  Kind<'drain EC in dS/m at 25 °C, from decisiemensPerMetre() or millisiemensPerCentimetre()'>

/** Electrical conductivity of the saturated-paste extract at 25 °C (ECe). Unit: dS/m. */
export type SaturatedExtractEC = number &
  Kind<'saturated-extract EC in dS/m at 25 °C, from decisiemensPerMetre() or millisiemensPerCentimetre()'>

/** Electrical conductivity as measured, not yet corrected to 25 °C. Unit: dS/m. */
export type MeasuredEC = number &
  Kind<'EC in dS/m at the temperature of measurement, from decisiemensPerMetre() or millisiemensPerCentimetre()'>

/** What a unit constructor gives when nothing says which kind is meant; no function takes it. */
export type UnnamedEC = number &
  Kind<'EC of an unnamed water: annotate it as BulkEC, PoreWaterEC, SolutionEC, DrainEC, SaturatedExtractEC or MeasuredEC'>

/** Any kind that is given in dS/m. The place where a value is used says which one it is. */
export type AnyEC = BulkEC | PoreWaterEC | SolutionEC | DrainEC | SaturatedExtractEC | MeasuredEC

const ELECTRICAL_CONDUCTIVITY: Domain = {
  quantity: 'electrical conductivity',
  unit: 'dS/m',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a conductivity of zero or more, corrected to 25 °C',
}

/**
 * Electrical conductivity from a number in dS/m; its kind is that of the place where it is used.
 *
 * ```math
 * \sigma = v
 * ```
 *
 * @param value - Number in dS/m. Unit: dS/m. Range: [0, ∞).
 * @returns Electrical conductivity. Unit: dS/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * decisiemensPerMetre(2) // => 2
 * ```
 */
export function decisiemensPerMetre<Q extends AnyEC | UnnamedEC = UnnamedEC>(value: number): Q {
  return numberIn(value, ELECTRICAL_CONDUCTIVITY) as Q
}

/**
 * The number of dS/m in a quantity that decisiemensPerMetre() makes.
 *
 * ```math
 * v = \sigma
 * ```
 *
 * @param quantity - Electrical conductivity. Unit: dS/m. Range: any.
 * @returns Plain number. Unit: dS/m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inDecisiemensPerMetre(decisiemensPerMetre(2)) // => 2
 * ```
 */
export function inDecisiemensPerMetre(quantity: AnyEC | UnnamedEC): number {
  return quantity
}

/**
 * Electrical conductivity from a number in mS/cm; its kind is that of the place where it is used.
 *
 * ```math
 * \sigma = v
 * ```
 *
 * @param value - Number in mS/cm. Unit: mS/cm. Range: [0, ∞).
 * @returns Electrical conductivity. Unit: dS/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * millisiemensPerCentimetre(2) // => 2
 * ```
 */
export function millisiemensPerCentimetre<Q extends AnyEC | UnnamedEC = UnnamedEC>(value: number): Q {
  return numberIn(value, ELECTRICAL_CONDUCTIVITY) as Q
}

/**
 * The number of mS/cm in a quantity that millisiemensPerCentimetre() makes.
 *
 * ```math
 * v = \sigma
 * ```
 *
 * @param quantity - Electrical conductivity. Unit: dS/m. Range: any.
 * @returns Plain number. Unit: mS/cm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMillisiemensPerCentimetre(millisiemensPerCentimetre(2)) // => 2
 * ```
 */
export function inMillisiemensPerCentimetre(quantity: AnyEC | UnnamedEC): number {
  return quantity
}

/**
 * Electrical conductivity from a number in µS/cm; its kind is that of the place where it is used.
 *
 * ```math
 * \sigma = v / 1000
 * ```
 *
 * @param value - Number in µS/cm. Unit: µS/cm. Range: [0, ∞).
 * @returns Electrical conductivity. Unit: dS/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * microsiemensPerCentimetre(2) // => 0.002
 * ```
 */
export function microsiemensPerCentimetre<Q extends AnyEC | UnnamedEC = UnnamedEC>(value: number): Q {
  return convertedIn(value, value / 1000, 'µS/cm', ELECTRICAL_CONDUCTIVITY) as Q
}

/**
 * The number of µS/cm in a quantity that microsiemensPerCentimetre() makes.
 *
 * ```math
 * v = \sigma \times 1000
 * ```
 *
 * @param quantity - Electrical conductivity. Unit: dS/m. Range: any.
 * @returns Plain number. Unit: µS/cm.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMicrosiemensPerCentimetre(microsiemensPerCentimetre(2)) // => 2
 * ```
 */
export function inMicrosiemensPerCentimetre(quantity: AnyEC | UnnamedEC): number {
  return quantity * 1000
}

/**
 * Electrical conductivity from a number in S/m; its kind is that of the place where it is used.
 *
 * ```math
 * \sigma = v \times 10
 * ```
 *
 * @param value - Number in S/m. Unit: S/m. Range: [0, ∞).
 * @returns Electrical conductivity. Unit: dS/m.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * siemensPerMetre(2) // => 20
 * ```
 */
export function siemensPerMetre<Q extends AnyEC | UnnamedEC = UnnamedEC>(value: number): Q {
  return convertedIn(value, value * 10, 'S/m', ELECTRICAL_CONDUCTIVITY) as Q
}

/**
 * The number of S/m in a quantity that siemensPerMetre() makes.
 *
 * ```math
 * v = \sigma / 10
 * ```
 *
 * @param quantity - Electrical conductivity. Unit: dS/m. Range: any.
 * @returns Plain number. Unit: S/m.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inSiemensPerMetre(siemensPerMetre(2)) // => 2
 * ```
 */
export function inSiemensPerMetre(quantity: AnyEC | UnnamedEC): number {
  return quantity / 10
}
