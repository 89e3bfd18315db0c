import type { Domain } from '../../quantity/domain.js'
import { DomainError, InputError } from '../../quantity/errors.js'
import type { WaterContent } from '../../quantity/generated/water-content.js'
import { numberIn } from '../../quantity/guard.js'
import { optionsOf } from '../../quantity/options-of.js'
import type { RawReading } from '../../quantity/raw-reading.js'

const READING: Domain = {
  quantity: 'raw reading',
  unit: 'raw',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give the finite number that the probe reports',
}
const SCALED: Domain = {
  quantity: 'scaled frequency',
  unit: '1',
  min: 0,
  max: 2,
  ends: '[]',
  hint: '0 is air, 1 is water',
}
const FACTOR: Domain = {
  quantity: 'factor of the power law',
  unit: 'm³/m³',
  min: 0,
  max: 2,
  ends: '(]',
  hint: 'it is the water content at a scaled frequency of 1',
}
const EXPONENT: Domain = {
  quantity: 'exponent of the power law',
  unit: '1',
  min: 0.1,
  max: 10,
  ends: '[]',
  hint: 'fitted exponents lie near 2',
}
const CONTENT: Domain = {
  quantity: 'water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the volume of water per volume of medium',
}

/** One probe's readings, all in the same unit. */
export interface AirMediumWater {
  /** In air. Unit: raw. Range: (-∞, ∞). */
  readonly air: RawReading
  /** In the medium. Unit: raw. Range: (-∞, ∞). */
  readonly medium: RawReading
  /** In water. Unit: raw. Range: (-∞, ∞). */
  readonly water: RawReading
}

/** The two coefficients of the power law, from an own fit. */
export interface ScaledFrequencyLaw {
  /** Water content at a scaled frequency of 1. Unit: m³/m³. Range: (0, 2]. */
  readonly factor: number
  /** Power of the scaled frequency. Unit: 1. Range: [0.1, 10]. */
  readonly exponent: number
}

/** A scaled frequency and the law that converts it. */
export interface ScaledFrequencyReading extends ScaledFrequencyLaw {
  /** 0 in air, 1 in water. Unit: 1. Range: [0, 2]. */
  readonly scaled: number
}

/** A water content and the law that gave it. */
export interface ScaledFrequencyContent extends ScaledFrequencyLaw {
  /** Water content. Unit: m³/m³. Range: [0, 1]. */
  readonly content: WaterContent
}

/**
 * Reading in a medium on a scale on which the same probe reads 0 in air and 1 in water.
 *
 * ```math
 * S = \frac{F_a - F_m}{F_a - F_w}
 * ```
 *
 * It takes out most of the difference between probes of one kind. Take the air reading with nothing near the probe and the water
 * reading in a vessel larger than its field.
 *
 * @param readings - The three readings.
 * @returns Scaled frequency. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when air and water read the same.
 * @source paltineanu-1997
 * @example
 * ```ts
 * scaledFrequency({ air: rawReading(150), medium: rawReading(125), water: rawReading(104) }) // => 0.543478
 * ```
 */
export function scaledFrequency(readings: AirMediumWater): number {
  const air = numberIn(optionsOf(readings).air, READING, 'air')
  const span = air - numberIn(readings.water, READING, 'water')
  if (span === 0)
    throw new InputError('air, water', 'both readings are the same', 'read the probe in air and in water again')
  return (air - numberIn(readings.medium, READING, 'medium')) / span
}

/**
 * Water content from a scaled frequency by a power law with own coefficients.
 *
 * ```math
 * \theta = a\,S^b
 * ```
 *
 * The coefficients printed for a silt loam are 0.490 and 2.1674 [not confirmed, source not seen]; they are arguments because a growing medium needs its own.
 *
 * @param reading - Scaled frequency and the two coefficients.
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the law gives more water than volume.
 * @validity The medium and kind of probe for which the coefficients were fitted.
 * @source paltineanu-1997
 * @example
 * ```ts
 * waterContentPaltineanuStarr1997({ scaled: 0.8, factor: 0.49, exponent: 2.1674 }) // => 0.302102
 * ```
 */
export function waterContentPaltineanuStarr1997(reading: ScaledFrequencyReading): WaterContent {
  const scaled = numberIn(optionsOf(reading).scaled, SCALED, 'scaled')
  const factor = numberIn(reading.factor, FACTOR, 'factor')
  const exponent = numberIn(reading.exponent, EXPONENT, 'exponent')
  const content = factor * scaled ** exponent
  if (content <= 1) return content as WaterContent
  const hint = 'above it the law gives more water than volume'
  throw new DomainError(scaled, { ...SCALED, max: (1 / factor) ** (1 / exponent), hint }, 'scaled')
}

/**
 * Scaled frequency at which a power law gives a water content.
 *
 * ```math
 * S = \left(\frac{\theta}{a}\right)^{1/b}
 * ```
 *
 * @param reading - Water content and the two coefficients.
 * @returns Scaled frequency. Unit: 1.
 * @throws `DomainError` outside the ranges.
 * @validity The medium and kind of probe for which the coefficients were fitted.
 * @source paltineanu-1997, solved for the scaled frequency
 * @example
 * ```ts
 * scaledFrequencyPaltineanuStarr1997({ content: waterContent(0.49), factor: 0.49, exponent: 2.1674 }) // => 1
 * ```
 */
export function scaledFrequencyPaltineanuStarr1997(reading: ScaledFrequencyContent): number {
  const share = numberIn(optionsOf(reading).content, CONTENT, 'content') / numberIn(reading.factor, FACTOR, 'factor')
  return share ** (1 / numberIn(reading.exponent, EXPONENT, 'exponent'))
}
