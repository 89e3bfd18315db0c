import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Pressure of air or of water in a line. Unit: kPa. */
export type Pressure = number & Kind<'pressure in kilopascals, from kilopascals() or hectopascals()'>

/** Partial pressure of water vapour. Unit: kPa. */
export type VapourPressure = number & Kind<'vapour pressure in kilopascals, from kilopascals() or hectopascals()'>

/** Deficit of vapour pressure (VPD). Unit: kPa. */
export type VapourPressureDeficit = number &
  Kind<'vapour pressure deficit in kilopascals, from kilopascals() or hectopascals()'>

/** Any kind that is given in kPa. The place where a value is used says which one it is. */
export type AnyPressure = Pressure | VapourPressure | VapourPressureDeficit

const PRESSURE: Domain = {
  quantity: 'pressure',
  unit: 'kPa',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a pressure of zero or more',
}

/**
 * Pressure from a number in kPa; its kind is that of the place where it is used.
 *
 * ```math
 * P = v
 * ```
 *
 * @param value - Number in kPa. Unit: kPa. Range: [0, ∞).
 * @returns Pressure. Unit: kPa.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * kilopascals(2) // => 2
 * ```
 */
export function kilopascals<Q extends AnyPressure = Pressure>(value: number): Q {
  return numberIn(value, PRESSURE) as Q
}

/**
 * The number of kPa in a quantity that kilopascals() makes.
 *
 * ```math
 * v = P
 * ```
 *
 * @param quantity - Pressure. Unit: kPa. Range: any.
 * @returns Plain number. Unit: kPa.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inKilopascals(kilopascals(2)) // => 2
 * ```
 */
export function inKilopascals(quantity: AnyPressure): number {
  return quantity
}

/**
 * Pressure from a number in hPa; its kind is that of the place where it is used.
 *
 * ```math
 * P = v / 10
 * ```
 *
 * @param value - Number in hPa. Unit: hPa. Range: [0, ∞).
 * @returns Pressure. Unit: kPa.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * hectopascals(2) // => 0.2
 * ```
 */
export function hectopascals<Q extends AnyPressure = Pressure>(value: number): Q {
  return convertedIn(value, value / 10, 'hPa', PRESSURE) as Q
}

/**
 * The number of hPa in a quantity that hectopascals() makes.
 *
 * ```math
 * v = P \times 10
 * ```
 *
 * @param quantity - Pressure. Unit: kPa. Range: any.
 * @returns Plain number. Unit: hPa.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inHectopascals(hectopascals(2)) // => 2
 * ```
 */
export function inHectopascals(quantity: AnyPressure): number {
  return quantity * 10
}

/**
 * Pressure from a number in mbar; its kind is that of the place where it is used.
 *
 * ```math
 * P = v / 10
 * ```
 *
 * @param value - Number in mbar. Unit: mbar. Range: [0, ∞).
 * @returns Pressure. Unit: kPa.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * millibars(2) // => 0.2
 * ```
 */
export function millibars<Q extends AnyPressure = Pressure>(value: number): Q {
  return convertedIn(value, value / 10, 'mbar', PRESSURE) as Q
}

/**
 * The number of mbar in a quantity that millibars() makes.
 *
 * ```math
 * v = P \times 10
 * ```
 *
 * @param quantity - Pressure. Unit: kPa. Range: any.
 * @returns Plain number. Unit: mbar.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inMillibars(millibars(2)) // => 2
 * ```
 */
export function inMillibars(quantity: AnyPressure): number {
  return quantity * 10
}

/**
 * Pressure from a number in bar; its kind is that of the place where it is used.
 *
 * ```math
 * P = v \times 100
 * ```
 *
 * @param value - Number in bar. Unit: bar. Range: [0, ∞).
 * @returns Pressure. Unit: kPa.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * bars(2) // => 200
 * ```
 */
export function bars<Q extends AnyPressure = Pressure>(value: number): Q {
  return convertedIn(value, value * 100, 'bar', PRESSURE) as Q
}

/**
 * The number of bar in a quantity that bars() makes.
 *
 * ```math
 * v = P / 100
 * ```
 *
 * @param quantity - Pressure. Unit: kPa. Range: any.
 * @returns Plain number. Unit: bar.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inBars(bars(2)) // => 2
 * ```
 */
export function inBars(quantity: AnyPressure): number {
  return quantity / 100
}

/**
 * Pressure from a number in psi; its kind is that of the place where it is used.
 *
 * ```math
 * P = v \times 6.894757293168361
 * ```
 *
 * @param value - Number in psi. Unit: psi. Range: [0, ∞).
 * @returns Pressure. Unit: kPa.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * poundsPerSquareInch(2) // => 13.7895145863
 * ```
 */
export function poundsPerSquareInch<Q extends AnyPressure = Pressure>(value: number): Q {
  return convertedIn(value, value * 6.894757293168361, 'psi', PRESSURE) as Q
}

/**
 * The number of psi in a quantity that poundsPerSquareInch() makes.
 *
 * ```math
 * v = P / 6.894757293168361
 * ```
 *
 * @param quantity - Pressure. Unit: kPa. Range: any.
 * @returns Plain number. Unit: psi.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inPoundsPerSquareInch(poundsPerSquareInch(2)) // => 2
 * ```
 */
export function inPoundsPerSquareInch(quantity: AnyPressure): number {
  return quantity / 6.894757293168361
}

/**
 * Pressure from a number in m of water; its kind is that of the place where it is used.
 *
 * ```math
 * P = v \times 9.80665
 * ```
 *
 * @param value - Number in m of water. Unit: m of water. Range: [0, ∞).
 * @returns Pressure. Unit: kPa.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * metresOfWater(2) // => 19.6133
 * ```
 */
export function metresOfWater<Q extends AnyPressure = Pressure>(value: number): Q {
  return convertedIn(value, value * 9.80665, 'm of water', PRESSURE) as Q
}

/**
 * The number of m of water in a quantity that metresOfWater() makes.
 *
 * ```math
 * v = P / 9.80665
 * ```
 *
 * @param quantity - Pressure. Unit: kPa. Range: any.
 * @returns Plain number. Unit: m of water.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inMetresOfWater(metresOfWater(2)) // => 2
 * ```
 */
export function inMetresOfWater(quantity: AnyPressure): number {
  return quantity / 9.80665
}
