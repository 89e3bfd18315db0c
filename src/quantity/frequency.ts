import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Frequency of a field or signal. Unit: Hz. */
export type Frequency = number & Kind<'frequency in hertz, from hertz() or megahertz()'>

const FREQUENCY: Domain = {
  quantity: 'frequency',
  unit: 'Hz',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give a frequency above zero',
}

/**
 * Frequency of a field or signal, from a number in Hz.
 *
 * ```math
 * f = v
 * ```
 *
 * @param value - Number in Hz. Unit: Hz. Range: (0, ∞).
 * @returns Frequency of a field or signal. Unit: Hz.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * hertz(2) // => 2
 * ```
 */
export function hertz(value: number): Frequency {
  return numberIn(value, FREQUENCY) as Frequency
}

/**
 * The number of Hz in a quantity that hertz() makes.
 *
 * ```math
 * v = f
 * ```
 *
 * @param quantity - Frequency of a field or signal. Unit: Hz. Range: any.
 * @returns Plain number. Unit: Hz.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inHertz(hertz(2)) // => 2
 * ```
 */
export function inHertz(quantity: Frequency): number {
  return quantity
}

/**
 * Frequency of a field or signal, from a number in MHz.
 *
 * ```math
 * f = v \times 1e6
 * ```
 *
 * @param value - Number in MHz. Unit: MHz. Range: (0, ∞).
 * @returns Frequency of a field or signal. Unit: Hz.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * megahertz(2) // => 2000000
 * ```
 */
export function megahertz(value: number): Frequency {
  return convertedIn(value, value * 1e6, 'MHz', FREQUENCY) as Frequency
}

/**
 * The number of MHz in a quantity that megahertz() makes.
 *
 * ```math
 * v = f / 1e6
 * ```
 *
 * @param quantity - Frequency of a field or signal. Unit: Hz. Range: any.
 * @returns Plain number. Unit: MHz.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMegahertz(megahertz(2)) // => 2
 * ```
 */
export function inMegahertz(quantity: Frequency): number {
  return quantity / 1e6
}

/**
 * Frequency of a field or signal, from a number in GHz.
 *
 * ```math
 * f = v \times 1e9
 * ```
 *
 * @param value - Number in GHz. Unit: GHz. Range: (0, ∞).
 * @returns Frequency of a field or signal. Unit: Hz.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * gigahertz(2) // => 2000000000
 * ```
 */
export function gigahertz(value: number): Frequency {
  return convertedIn(value, value * 1e9, 'GHz', FREQUENCY) as Frequency
}

/**
 * The number of GHz in a quantity that gigahertz() makes.
 *
 * ```math
 * v = f / 1e9
 * ```
 *
 * @param quantity - Frequency of a field or signal. Unit: Hz. Range: any.
 * @returns Plain number. Unit: GHz.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inGigahertz(gigahertz(2)) // => 2
 * ```
 */
export function inGigahertz(quantity: Frequency): number {
  return quantity / 1e9
}
