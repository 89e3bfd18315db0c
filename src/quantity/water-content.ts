import type { Domain } from './domain.js'
import { numberIn } from './guard.js'
import type { Kind } from './kind.js'

/** Volume of water per volume of medium. Unit: m³/m³. */
export type WaterContent = number &
  Kind<'volumetric water content in m³/m³, from waterContent() or percentWaterContent()', 'point'>

/** Change of volumetric water content. Unit: m³/m³. */
export type WaterContentChange = number &
  Kind<'change of water content in m³/m³, from waterContentChange() or percentagePoints()'>

/** Mass of water per mass of dry medium; in light media it is far above 1. Unit: g/g. */
export type GravimetricWaterContent = number &
  Kind<'gravimetric water content in g/g, from gravimetricWaterContent()', 'point'>

const WATER_CONTENT: Domain = {
  quantity: 'volumetric water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give the volume of water per volume of medium; a number of percent goes through percentWaterContent()',
}
const PERCENT: Domain = {
  quantity: 'volumetric water content',
  unit: '%',
  min: 0,
  max: 100,
  ends: '[]',
  hint: 'give the volume of water in 100 volumes of medium; a fraction goes through waterContent()',
}
const POINTS: Domain = {
  quantity: 'change of water content',
  unit: 'percentage points',
  min: -100,
  max: 100,
  ends: '[]',
  hint: 'give a difference of two water contents in percent',
}
const CHANGE: Domain = {
  quantity: 'change of water content',
  unit: 'm³/m³',
  min: -1,
  max: 1,
  ends: '[]',
  hint: 'give a difference of two water contents; percentage points go through percentagePoints()',
}
const GRAVIMETRIC: Domain = {
  quantity: 'gravimetric water content',
  unit: 'g/g',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give mass of water over dry mass, zero or more',
}

/**
 * Volumetric water content from a fraction.
 *
 * ```math
 * \theta = v
 * ```
 *
 * @param value - Volume of water per volume of medium. Unit: m³/m³. Range: [0, 1].
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the range.
 * @source ISO 11461:2001, definition of water content by volume (memory)
 * @example
 * ```ts
 * waterContent(0.45) // => 0.45
 * ```
 */
export function waterContent(value: number): WaterContent {
  return numberIn(value, WATER_CONTENT) as WaterContent
}

/**
 * The number of m³/m³ in a water content.
 *
 * ```math
 * v = \theta
 * ```
 *
 * @param quantity - Water content. Unit: m³/m³. Range: any.
 * @returns Plain number. Unit: m³/m³.
 * @source ISO 11461:2001, definition of water content by volume (memory)
 * @example
 * ```ts
 * inWaterContent(waterContent(0.45)) // => 0.45
 * ```
 */
export function inWaterContent(quantity: WaterContent): number {
  return quantity
}

/**
 * Volumetric water content from percent by volume.
 *
 * ```math
 * \theta = v / 100
 * ```
 *
 * @param value - Volume of water per volume of medium. Unit: %. Range: [0, 100].
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the range.
 * @source ISO 11461:2001, definition of water content by volume (memory)
 * @example
 * ```ts
 * percentWaterContent(45) // => 0.45
 * ```
 */
export function percentWaterContent(value: number): WaterContent {
  return (numberIn(value, PERCENT) / 100) as WaterContent
}

/**
 * The number of % in a water content.
 *
 * ```math
 * v = 100\,\theta
 * ```
 *
 * @param quantity - Water content. Unit: m³/m³. Range: any.
 * @returns Plain number. Unit: %.
 * @source ISO 11461:2001, definition of water content by volume (memory)
 * @example
 * ```ts
 * inPercentWaterContent(percentWaterContent(45)) // => 45
 * ```
 */
export function inPercentWaterContent(quantity: WaterContent): number {
  return quantity * 100
}

/**
 * Change of water content from a fraction of the volume of medium.
 *
 * ```math
 * \Delta\theta = v
 * ```
 *
 * @param value - Difference of two water contents. Unit: m³/m³. Range: [-1, 1].
 * @returns Change of water content. Unit: m³/m³.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * waterContentChange(0.03) // => 0.03
 * ```
 */
export function waterContentChange(value: number): WaterContentChange {
  return numberIn(value, CHANGE) as WaterContentChange
}

/**
 * The number of m³/m³ in a change of water content.
 *
 * ```math
 * v = \Delta\theta
 * ```
 *
 * @param quantity - Change of water content. Unit: m³/m³. Range: any.
 * @returns Plain number. Unit: m³/m³.
 * @source definition
 * @example
 * ```ts
 * inWaterContentChange(waterContentChange(0.03)) // => 0.03
 * ```
 */
export function inWaterContentChange(quantity: WaterContentChange): number {
  return quantity
}

/**
 * Change of water content from percentage points: from 52 % to 55 % are 3 points.
 *
 * ```math
 * \Delta\theta = v / 100
 * ```
 *
 * @param value - Difference of two water contents. Unit: percentage points. Range: [-100, 100].
 * @returns Change of water content. Unit: m³/m³.
 * @throws `DomainError` outside the range.
 * @source definition
 * @example
 * ```ts
 * percentagePoints(3) // => 0.03
 * ```
 */
export function percentagePoints(value: number): WaterContentChange {
  return (numberIn(value, POINTS) / 100) as WaterContentChange
}

/**
 * The number of percentage points in a change of water content.
 *
 * ```math
 * v = 100\,\Delta\theta
 * ```
 *
 * @param quantity - Change of water content. Unit: m³/m³. Range: any.
 * @returns Plain number. Unit: percentage points.
 * @source definition
 * @example
 * ```ts
 * inPercentagePoints(percentagePoints(3)) // => 3
 * ```
 */
export function inPercentagePoints(quantity: WaterContentChange): number {
  return quantity * 100
}

/**
 * Gravimetric water content from a mass ratio.
 *
 * ```math
 * w = v
 * ```
 *
 * @param value - Mass of water per mass of dry medium. Unit: g/g. Range: [0, ∞).
 * @returns Gravimetric water content. Unit: g/g.
 * @throws `DomainError` outside the range.
 * @source ISO 11465:1993, definition of water content on a dry mass basis
 * @example
 * ```ts
 * gravimetricWaterContent(4.8) // => 4.8
 * ```
 */
export function gravimetricWaterContent(value: number): GravimetricWaterContent {
  return numberIn(value, GRAVIMETRIC) as GravimetricWaterContent
}

/**
 * The number of g/g in a gravimetric water content.
 *
 * ```math
 * v = w
 * ```
 *
 * @param quantity - Gravimetric water content. Unit: g/g. Range: any.
 * @returns Plain number. Unit: g/g.
 * @source ISO 11465:1993, definition of water content on a dry mass basis
 * @example
 * ```ts
 * inGravimetricWaterContent(gravimetricWaterContent(4.8)) // => 4.8
 * ```
 */
export function inGravimetricWaterContent(quantity: GravimetricWaterContent): number {
  return quantity
}

/**
 * A water content raised by a change; a negative change dries it.
 *
 * ```math
 * \theta_2 = \theta_1 + \Delta\theta
 * ```
 *
 * @param from - Water content. Unit: m³/m³. Range: any.
 * @param change - Change of water content. Unit: m³/m³. Range: any.
 * @returns Water content. Unit: m³/m³.
 * @source definition of a scale with points and differences
 * @example
 * ```ts
 * shiftWaterContent(waterContent(0.5), waterContentChange(0.25)) // => 0.75
 * ```
 */
export function shiftWaterContent(from: WaterContent, change: WaterContentChange): WaterContent {
  return (from + change) as WaterContent
}

/**
 * By how much one water content is above another.
 *
 * ```math
 * \Delta\theta = \theta_1 - \theta_2
 * ```
 *
 * @param above - Water content. Unit: m³/m³. Range: any.
 * @param below - Water content. Unit: m³/m³. Range: any.
 * @returns Change of water content. Unit: m³/m³.
 * @source definition of a scale with points and differences
 * @example
 * ```ts
 * waterContentDifference(waterContent(0.75), waterContent(0.5)) // => 0.25
 * ```
 */
export function waterContentDifference(above: WaterContent, below: WaterContent): WaterContentChange {
  return (above - below) as WaterContentChange
}
