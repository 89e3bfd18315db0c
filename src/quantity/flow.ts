import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Volume flow of an emitter, a valve or a pump. Unit: L/h. */
export type Flow = number & Kind<'flow in litres per hour, from litresPerHour() or litresPerMinute()'>

const FLOW: Domain = {
  quantity: 'flow',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a flow of zero or more',
}

/**
 * Volume flow of an emitter, a valve or a pump, from a number in L/h.
 *
 * ```math
 * q = v
 * ```
 *
 * @param value - Number in L/h. Unit: L/h. Range: [0, ∞).
 * @returns Volume flow of an emitter. Unit: L/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * litresPerHour(2) // => 2
 * ```
 */
export function litresPerHour(value: number): Flow {
  return numberIn(value, FLOW) as Flow
}

/**
 * The number of L/h in a quantity that litresPerHour() makes.
 *
 * ```math
 * v = q
 * ```
 *
 * @param quantity - Volume flow of an emitter. Unit: L/h. Range: any.
 * @returns Plain number. Unit: L/h.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inLitresPerHour(litresPerHour(2)) // => 2
 * ```
 */
export function inLitresPerHour(quantity: Flow): number {
  return quantity
}

/**
 * Volume flow of an emitter, a valve or a pump, from a number in L/min.
 *
 * ```math
 * q = v \times 60
 * ```
 *
 * @param value - Number in L/min. Unit: L/min. Range: [0, ∞).
 * @returns Volume flow of an emitter. Unit: L/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * litresPerMinute(2) // => 120
 * ```
 */
export function litresPerMinute(value: number): Flow {
  return convertedIn(value, value * 60, 'L/min', FLOW) as Flow
}

/**
 * The number of L/min in a quantity that litresPerMinute() makes.
 *
 * ```math
 * v = q / 60
 * ```
 *
 * @param quantity - Volume flow of an emitter. Unit: L/h. Range: any.
 * @returns Plain number. Unit: L/min.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inLitresPerMinute(litresPerMinute(2)) // => 2
 * ```
 */
export function inLitresPerMinute(quantity: Flow): number {
  return quantity / 60
}

/**
 * Volume flow of an emitter, a valve or a pump, from a number in mL/min.
 *
 * ```math
 * q = v \times 0.06
 * ```
 *
 * @param value - Number in mL/min. Unit: mL/min. Range: [0, ∞).
 * @returns Volume flow of an emitter. Unit: L/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * millilitresPerMinute(2) // => 0.12
 * ```
 */
export function millilitresPerMinute(value: number): Flow {
  return convertedIn(value, value * 0.06, 'mL/min', FLOW) as Flow
}

/**
 * The number of mL/min in a quantity that millilitresPerMinute() makes.
 *
 * ```math
 * v = q / 0.06
 * ```
 *
 * @param quantity - Volume flow of an emitter. Unit: L/h. Range: any.
 * @returns Plain number. Unit: mL/min.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inMillilitresPerMinute(millilitresPerMinute(2)) // => 2
 * ```
 */
export function inMillilitresPerMinute(quantity: Flow): number {
  return quantity / 0.06
}

/**
 * Volume flow of an emitter, a valve or a pump, from a number in m³/h.
 *
 * ```math
 * q = v \times 1000
 * ```
 *
 * @param value - Number in m³/h. Unit: m³/h. Range: [0, ∞).
 * @returns Volume flow of an emitter. Unit: L/h.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * cubicMetresPerHour(2) // => 2000
 * ```
 */
export function cubicMetresPerHour(value: number): Flow {
  return convertedIn(value, value * 1000, 'm³/h', FLOW) as Flow
}

/**
 * The number of m³/h in a quantity that cubicMetresPerHour() makes.
 *
 * ```math
 * v = q / 1000
 * ```
 *
 * @param quantity - Volume flow of an emitter. Unit: L/h. Range: any.
 * @returns Plain number. Unit: m³/h.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inCubicMetresPerHour(cubicMetresPerHour(2)) // => 2
 * ```
 */
export function inCubicMetresPerHour(quantity: Flow): number {
  return quantity / 1000
}

/**
 * Volume flow of an emitter, a valve or a pump, from a number in US gal/h.
 *
 * ```math
 * q = v \times 3.785411784
 * ```
 *
 * @param value - Number in US gal/h. Unit: US gal/h. Range: [0, ∞).
 * @returns Volume flow of an emitter. Unit: L/h.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * usGallonsPerHour(2) // => 7.570823568
 * ```
 */
export function usGallonsPerHour(value: number): Flow {
  return convertedIn(value, value * 3.785411784, 'US gal/h', FLOW) as Flow
}

/**
 * The number of US gal/h in a quantity that usGallonsPerHour() makes.
 *
 * ```math
 * v = q / 3.785411784
 * ```
 *
 * @param quantity - Volume flow of an emitter. Unit: L/h. Range: any.
 * @returns Plain number. Unit: US gal/h.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inUsGallonsPerHour(usGallonsPerHour(2)) // => 2
 * ```
 */
export function inUsGallonsPerHour(quantity: Flow): number {
  return quantity / 3.785411784
}

/**
 * Volume flow of an emitter, a valve or a pump, from a number in US gal/min.
 *
 * ```math
 * q = v \times 227.12470704
 * ```
 *
 * @param value - Number in US gal/min. Unit: US gal/min. Range: [0, ∞).
 * @returns Volume flow of an emitter. Unit: L/h.
 * @throws `DomainError` outside the range.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * usGallonsPerMinute(2) // => 454.24941408
 * ```
 */
export function usGallonsPerMinute(value: number): Flow {
  return convertedIn(value, value * 227.12470704, 'US gal/min', FLOW) as Flow
}

/**
 * The number of US gal/min in a quantity that usGallonsPerMinute() makes.
 *
 * ```math
 * v = q / 227.12470704
 * ```
 *
 * @param quantity - Volume flow of an emitter. Unit: L/h. Range: any.
 * @returns Plain number. Unit: US gal/min.
 * @source NIST Special Publication 811 (2008), Appendix B.8
 * @example
 * ```ts
 * inUsGallonsPerMinute(usGallonsPerMinute(2)) // => 2
 * ```
 */
export function inUsGallonsPerMinute(quantity: Flow): number {
  return quantity / 227.12470704
}
