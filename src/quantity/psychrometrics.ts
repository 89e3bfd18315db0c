import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Change of vapour pressure with temperature: the slope of the saturation curve, or the psychrometric constant. Unit: kPa/K. */
export type VapourPressureSlope = number &
  Kind<'change of vapour pressure in kPa per kelvin, from kilopascalsPerKelvin()'>

const SLOPE: Domain = {
  quantity: 'change of vapour pressure',
  unit: 'kPa/K',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}

/**
 * Change of vapour pressure with temperature, from a plain number.
 *
 * ```math
 * \Delta = v
 * ```
 *
 * @param value - Number in kPa/K. Unit: kPa/K. Range: [0, ∞).
 * @returns Change of vapour pressure with temperature. Unit: kPa/K.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * kilopascalsPerKelvin(0.067) // => 0.067
 * ```
 */
export function kilopascalsPerKelvin(value: number): VapourPressureSlope {
  return numberIn(value, SLOPE) as VapourPressureSlope
}
