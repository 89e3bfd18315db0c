import type { Domain } from './domain.js'
import { convertedIn, numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Oxygen dissolved in water. Unit: mg/L. */
export type OxygenConcentration = number &
  Kind<'dissolved oxygen in mg/L, from milligramsPerLitreOfOxygen() or millimolesPerLitreOfOxygen()'>

/** Dissolved oxygen per concentration at saturation; above 1 when supersaturated. Unit: 1. */
export type OxygenSaturation = number & Kind<'oxygen as a share of saturation, from percentOfOxygenSaturation()'>

const OXYGEN: Domain = {
  quantity: 'oxygen',
  unit: 'mg/L',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give a concentration of zero or more',
}
const SATURATION: Domain = {
  quantity: 'oxygen saturation',
  unit: '%',
  min: 0,
  max: 1000,
  ends: '[]',
  hint: 'give the percentage of saturation that the meter shows',
}

/**
 * Oxygen dissolved in water, from a number in mg/L.
 *
 * ```math
 * C = v
 * ```
 *
 * @param value - Number in mg/L. Unit: mg/L. Range: [0, ∞).
 * @returns Oxygen dissolved in water. Unit: mg/L.
 * @throws `DomainError` outside the range.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * milligramsPerLitreOfOxygen(2) // => 2
 * ```
 */
export function milligramsPerLitreOfOxygen(value: number): OxygenConcentration {
  return numberIn(value, OXYGEN) as OxygenConcentration
}

/**
 * The number of mg/L in a quantity that milligramsPerLitreOfOxygen() makes.
 *
 * ```math
 * v = C
 * ```
 *
 * @param quantity - Oxygen dissolved in water. Unit: mg/L. Range: any.
 * @returns Plain number. Unit: mg/L.
 * @source BIPM SI Brochure, 9th edition (2019), section 3 (decimal prefixes)
 * @example
 * ```ts
 * inMilligramsPerLitreOfOxygen(milligramsPerLitreOfOxygen(2)) // => 2
 * ```
 */
export function inMilligramsPerLitreOfOxygen(quantity: OxygenConcentration): number {
  return quantity
}

/**
 * Oxygen dissolved in water, from a number in mmol/L.
 *
 * ```math
 * C = v \times 31.998
 * ```
 *
 * @param value - Number in mmol/L. Unit: mmol/L. Range: [0, ∞).
 * @returns Oxygen dissolved in water. Unit: mg/L.
 * @throws `DomainError` outside the range.
 * @source IUPAC standard atomic weight of oxygen, abridged 15.999 (2021): 2 times 15.999 g/mol
 * @example
 * ```ts
 * millimolesPerLitreOfOxygen(2) // => 63.996
 * ```
 */
export function millimolesPerLitreOfOxygen(value: number): OxygenConcentration {
  return convertedIn(value, value * 31.998, 'mmol/L', OXYGEN) as OxygenConcentration
}

/**
 * The number of mmol/L in a quantity that millimolesPerLitreOfOxygen() makes.
 *
 * ```math
 * v = C / 31.998
 * ```
 *
 * @param quantity - Oxygen dissolved in water. Unit: mg/L. Range: any.
 * @returns Plain number. Unit: mmol/L.
 * @source IUPAC standard atomic weight of oxygen, abridged 15.999 (2021): 2 times 15.999 g/mol
 * @example
 * ```ts
 * inMillimolesPerLitreOfOxygen(millimolesPerLitreOfOxygen(2)) // => 2
 * ```
 */
export function inMillimolesPerLitreOfOxygen(quantity: OxygenConcentration): number {
  return quantity / 31.998
}

/**
 * Dissolved oxygen as a share of saturation, from a number in %.
 *
 * ```math
 * s = v / 100
 * ```
 *
 * @param value - Number in %. Unit: %. Range: [0, 1000].
 * @returns Share of saturation. Unit: 1.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * percentOfOxygenSaturation(80) // => 0.8
 * ```
 */
export function percentOfOxygenSaturation(value: number): OxygenSaturation {
  return (numberIn(value, SATURATION) / 100) as OxygenSaturation
}

/**
 * The number of % in a quantity that percentOfOxygenSaturation() makes.
 *
 * ```math
 * v = s \times 100
 * ```
 *
 * @param quantity - Share of saturation. Unit: 1. Range: any.
 * @returns Plain number. Unit: %.
 * @source definition
 * @example
 * ```ts
 * inPercentOfOxygenSaturation(percentOfOxygenSaturation(80)) // => 80
 * ```
 */
export function inPercentOfOxygenSaturation(quantity: OxygenSaturation): number {
  return quantity * 100
}
