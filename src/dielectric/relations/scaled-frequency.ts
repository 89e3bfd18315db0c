import { answerOf } from '../../quantity/answer.js'
import { RAW_READING, WATER_CONTENT } from '../../quantity/domains.js'
import { DomainError, InputError } from '../../quantity/errors.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { RawReading } from '../../quantity/raw-reading.js'
import { POWER_LAW_EXPONENT, POWER_LAW_FACTOR, SCALED_FREQUENCY } from '../domains.js'
import type { WaterHeld } from '../terms.js'

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
export interface ScaledFrequencyWaterContent extends ScaledFrequencyLaw, WaterHeld {}

/**
 * Reading in a medium on a scale on which the same probe reads 0 in air and 1 in water.
 *
 * It takes out most of the difference between probes of one kind. Take the air reading with nothing near the probe and the water
 * reading in a vessel larger than its field.
 *
 * @equation `S = \frac{F_a - F_m}{F_a - F_w}`
 * @param readings - The three readings.
 * @returns Scaled frequency. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when air and water read the same.
 * @source paltineanu-1997
 * @example
 * scaledFrequency({ air: rawReading(150), medium: rawReading(125), water: rawReading(104) }) // => 0.543478
 */
export function scaledFrequency(readings: AirMediumWater): number {
  const air = numberIn(optionsOf(readings).air, RAW_READING, 'air')
  const span = air - numberIn(readings.water, RAW_READING, 'water')
  if (span === 0)
    throw new InputError('air, water', 'both readings are the same', 'read the probe in air and in water again')
  return (air - numberIn(readings.medium, RAW_READING, 'medium')) / span
}

/**
 * Water content from a scaled frequency by a power law with own coefficients.
 *
 * The coefficients printed for a silt loam are 0.490 and 2.1674 [not confirmed, source not seen]; they are arguments because a growing medium needs its own.
 *
 * @equation `\theta = a\,S^b`
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges, and where the law gives more water than volume.
 * @validity The medium and kind of probe for which the coefficients were fitted.
 * @source paltineanu-1997
 * @example
 * waterContentPaltineanuStarr1997({ scaled: 0.8, factor: 0.49, exponent: 2.1674 }) // => 0.302102
 */
export function waterContentPaltineanuStarr1997(reading: ScaledFrequencyReading): WaterContent {
  const scaled = numberIn(optionsOf(reading).scaled, SCALED_FREQUENCY, 'scaled')
  const factor = numberIn(reading.factor, POWER_LAW_FACTOR, 'factor')
  const exponent = numberIn(reading.exponent, POWER_LAW_EXPONENT, 'exponent')
  const waterContent = factor * scaled ** exponent
  if (waterContent <= 1) return waterContent as WaterContent
  const hint = 'above it the law gives more water than volume'
  throw new DomainError(scaled, { ...SCALED_FREQUENCY, max: (1 / factor) ** (1 / exponent), hint }, 'scaled')
}

/**
 * Scaled frequency at which a power law gives a water content.
 *
 * @equation `S = \left(\frac{\theta}{a}\right)^{1/b}`
 * @returns Scaled frequency. Unit: 1.
 * @validity The medium and kind of probe for which the coefficients were fitted.
 * @source paltineanu-1997, solved for the scaled frequency
 * @example
 * scaledFrequencyPaltineanuStarr1997({ waterContent: waterContent(0.49), factor: 0.49, exponent: 2.1674 }) // => 1
 */
export function scaledFrequencyPaltineanuStarr1997(reading: ScaledFrequencyWaterContent): number {
  const share =
    numberIn(optionsOf(reading).waterContent, WATER_CONTENT, 'waterContent') /
    numberIn(reading.factor, POWER_LAW_FACTOR, 'factor')
  return answerOf(share ** (1 / numberIn(reading.exponent, POWER_LAW_EXPONENT, 'exponent')), 'factor')
}
