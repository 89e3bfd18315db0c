import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Length of time. Unit: s. */
export type Duration = number & Kind<'duration in seconds, from seconds() or nanoseconds()'>

const DURATION: Domain = {
  quantity: 'duration',
  unit: 's',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a duration of zero or more',
}

/**
 * Length of time, from a number in s.
 *
 * ```math
 * t = v
 * ```
 *
 * @param value - Number in s. Unit: s. Range: [0, ∞).
 * @returns Length of time. Unit: s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * seconds(2) // => 2
 * ```
 */
export function seconds(value: number): Duration {
  return numberIn(value, DURATION) as Duration
}

/**
 * The number of s in a quantity that seconds() makes.
 *
 * ```math
 * v = t
 * ```
 *
 * @param quantity - Length of time. Unit: s. Range: any.
 * @returns Plain number. Unit: s.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inSeconds(seconds(2)) // => 2
 * ```
 */
export function inSeconds(quantity: Duration): number {
  return quantity
}

/**
 * Length of time, from a number in ns.
 *
 * ```math
 * t = v / 1e9
 * ```
 *
 * @param value - Number in ns. Unit: ns. Range: [0, ∞).
 * @returns Length of time. Unit: s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * nanoseconds(2) // => 2e-9
 * ```
 */
export function nanoseconds(value: number): Duration {
  return convertedIn(value, value / 1e9, 'ns', DURATION) as Duration
}

/**
 * The number of ns in a quantity that nanoseconds() makes.
 *
 * ```math
 * v = t \times 1e9
 * ```
 *
 * @param quantity - Length of time. Unit: s. Range: any.
 * @returns Plain number. Unit: ns.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inNanoseconds(nanoseconds(2)) // => 2
 * ```
 */
export function inNanoseconds(quantity: Duration): number {
  return quantity * 1e9
}

/**
 * Length of time, from a number in min.
 *
 * ```math
 * t = v \times 60
 * ```
 *
 * @param value - Number in min. Unit: min. Range: [0, ∞).
 * @returns Length of time. Unit: s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * minutes(2) // => 120
 * ```
 */
export function minutes(value: number): Duration {
  return convertedIn(value, value * 60, 'min', DURATION) as Duration
}

/**
 * The number of min in a quantity that minutes() makes.
 *
 * ```math
 * v = t / 60
 * ```
 *
 * @param quantity - Length of time. Unit: s. Range: any.
 * @returns Plain number. Unit: min.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inMinutes(minutes(2)) // => 2
 * ```
 */
export function inMinutes(quantity: Duration): number {
  return quantity / 60
}

/**
 * Length of time, from a number in h.
 *
 * ```math
 * t = v \times 3600
 * ```
 *
 * @param value - Number in h. Unit: h. Range: [0, ∞).
 * @returns Length of time. Unit: s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * hours(2) // => 7200
 * ```
 */
export function hours(value: number): Duration {
  return convertedIn(value, value * 3600, 'h', DURATION) as Duration
}

/**
 * The number of h in a quantity that hours() makes.
 *
 * ```math
 * v = t / 3600
 * ```
 *
 * @param quantity - Length of time. Unit: s. Range: any.
 * @returns Plain number. Unit: h.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inHours(hours(2)) // => 2
 * ```
 */
export function inHours(quantity: Duration): number {
  return quantity / 3600
}

/**
 * Length of time, from a number in d.
 *
 * ```math
 * t = v \times 86400
 * ```
 *
 * @param value - Number in d. Unit: d. Range: [0, ∞).
 * @returns Length of time. Unit: s.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * days(2) // => 172800
 * ```
 */
export function days(value: number): Duration {
  return convertedIn(value, value * 86400, 'd', DURATION) as Duration
}

/**
 * The number of d in a quantity that days() makes.
 *
 * ```math
 * v = t / 86400
 * ```
 *
 * @param quantity - Length of time. Unit: s. Range: any.
 * @returns Plain number. Unit: d.
 * @source BIPM SI Brochure, 9th edition (2019), Table 8
 * @example
 * ```ts
 * inDays(days(2)) // => 2
 * ```
 */
export function inDays(quantity: Duration): number {
  return quantity / 86400
}
